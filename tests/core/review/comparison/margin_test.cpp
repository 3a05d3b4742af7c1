#include "core/review/comparison/margin.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

class MarginSamples : public ComparisonSamples
{
public:
    Margin margin(const ComparisonAsk& ask)
    {
        return marginFor(facts, comparedTrays(facts, filter, ask), ask);
    }
    double onScale(const Margin& margin, stats::CellScale scale)
    {
        return marginOnScale(margin, scale, comparedTrays(facts, filter, {}));
    }
};

ComparisonAsk askFor(Response response, std::optional<double> percent = std::nullopt)
{
    ComparisonAsk ask;
    ask.response = response;
    ask.marginPercent = percent;
    return ask;
}

TEST(Margin, IsATenthUnlessSomeoneSaidOtherwise)
{
    MarginSamples samples;
    samples.addTrays(kMix, {100, 120});
    const Margin margin = samples.margin(askFor(Response::YieldPerTray));
    EXPECT_EQ(margin.percent, 10);
    EXPECT_EQ(margin.from, MarginFrom::Default);
}

// 20 g and 30 g of trays that weigh 120 g on the mean: the smaller one counts, 16.7 %.
TEST(Margin, IsTheSmallestOfTheTraysTrials)
{
    MarginSamples samples;
    samples.addTrays(kMix, {100, 120}, {1}, TrialId{1});
    samples.addTrays(kMesh, {140}, {1}, TrialId{2});
    samples.facts.margins = {{TrialId{1}, grams(30)}, {TrialId{2}, grams(20)}};
    const Margin margin = samples.margin(askFor(Response::YieldPerTray));
    EXPECT_EQ(margin.from, MarginFrom::Trials);
    EXPECT_NEAR(margin.percent, 100 * 20 / 120.0, 1e-12);
    EXPECT_EQ(samples.margin(askFor(Response::YieldPerTray, 5)).percent, 5)
        << "what is asked for goes before";
    EXPECT_EQ(samples.margin(askFor(Response::YieldPerTray, 5)).from, MarginFrom::Asked);
    EXPECT_EQ(samples.margin(askFor(Response::YieldPerTray, 0)).from, MarginFrom::Trials)
        << "a margin of nothing is none";
    EXPECT_EQ(samples.margin(askFor(Response::YieldPerTray, -3)).from, MarginFrom::Trials);
}

TEST(Margin, OfATrialIsInGramsAndSaysNothingOfOtherMetrics)
{
    MarginSamples samples;
    samples.addTrays(kMix, {100, 120}, {1}, TrialId{1});
    samples.facts.margins = {{TrialId{1}, grams(30)}};
    EXPECT_EQ(samples.margin(askFor(Response::DaysToHarvest)).from, MarginFrom::Default);
    EXPECT_EQ(samples.margin(askFor(Response::CostPerGram)).from, MarginFrom::Default);
    samples.facts.margins = {{TrialId{9}, grams(30)}};
    EXPECT_EQ(samples.margin(askFor(Response::YieldPerTray)).from, MarginFrom::Default)
        << "none of these trays is of that trial";
}

TEST(Margin, IsALogOrAShareOfTheMean)
{
    MarginSamples samples;
    samples.addTrays(kMix, {100, 140});
    const Margin margin{25, MarginFrom::Asked};
    EXPECT_NEAR(samples.onScale(margin, stats::CellScale::Log), std::log(1.25), 1e-15);
    EXPECT_NEAR(samples.onScale(margin, stats::CellScale::LogOfRatio), std::log(1.25), 1e-15);
    EXPECT_NEAR(samples.onScale(margin, stats::CellScale::Linear), 30, 1e-12);
}

} // namespace
} // namespace plumule
