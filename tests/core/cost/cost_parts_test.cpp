#include "core/cost/cost_parts.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numeric>
#include <random>
#include <set>

namespace plumule {
namespace {

TrayCost knownCost()
{
    TrayCost cost;
    cost.seed = 0.50;
    cost.medium = 1.10;
    cost.washing = 0.0;
    cost.nutrient = 0.07;
    cost.water = 0.01;
    cost.light = 0.35;
    cost.labour = 4.20;
    cost.packaging = 0.32;
    cost.waste = 0.05;
    return cost;
}

double perGram(const CostBreakdown& costs, CostPart part)
{
    return costs.share(part)->perGram;
}

TEST(CostParts, AddUpToTheCostOfAGramOfAllTrays)
{
    CostSums sums;
    sums.addHarvested(knownCost(), 200, {});
    sums.addHarvested(knownCost(), 240, {});
    const CostBreakdown costs = sums.breakdown();
    EXPECT_EQ(costs.harvested, 2);
    EXPECT_DOUBLE_EQ(*costs.perGram(), 2 * knownCost().total() / 440);
    EXPECT_DOUBLE_EQ(perGram(costs, CostPart::Labour), 8.40 / 440);
    EXPECT_DOUBLE_EQ(perGram(costs, CostPart::Water), 2 * 0.08 / 440) << "nutrient and water";
    EXPECT_DOUBLE_EQ(perGram(costs, CostPart::Failed), 0);
}

TEST(CostParts, CarryWhatFailedTraysCost)
{
    CostSums sums;
    sums.addHarvested(knownCost(), 200, {});
    TrayCost lost = knownCost();
    lost.packaging = 0.0;
    lost.waste.reset();
    sums.addFailed(lost, {});
    const CostBreakdown costs = sums.breakdown();
    EXPECT_EQ(costs.failed, 1);
    EXPECT_DOUBLE_EQ(perGram(costs, CostPart::Failed), lost.total() / 200);
    EXPECT_DOUBLE_EQ(*costs.perGram(), (knownCost().total() + lost.total()) / 200);
    EXPECT_EQ(costs.share(CostPart::Failed)->lacking, 1);
}

TEST(CostParts, HaveNoGramWhereEveryTrayFailed)
{
    CostSums sums;
    sums.addFailed(knownCost(), {});
    const CostBreakdown costs = sums.breakdown();
    EXPECT_FALSE(costs.perGram());
    EXPECT_TRUE(costs.shares.empty());
    EXPECT_DOUBLE_EQ(costs.failedCost, knownCost().total());
}

TEST(CostParts, TellAPriceThatIsMissingFromAnAmountThatIsNotNoted)
{
    TrayCost cost = knownCost();
    cost.waste.reset();
    cost.light.reset();
    cost.labour.reset();
    cost.washing.reset();
    CostSums sums;
    sums.addHarvested(cost, 200, {PriceItem::Waste, PriceItem::Labour});
    const CostBreakdown costs = sums.breakdown();
    EXPECT_EQ(costs.share(CostPart::Waste)->unpriced, 1);
    EXPECT_EQ(costs.share(CostPart::Light)->lacking, 1);
    EXPECT_EQ(costs.share(CostPart::Light)->unpriced, 0);
    EXPECT_EQ(costs.share(CostPart::Washing)->unpriced, 1) << "washing is work too";
    EXPECT_EQ(costs.share(CostPart::Seed)->lacking, 0);
}

TEST(CostParts, LeaveOutATrayOfWhichNoCostIsKnown)
{
    CostSums sums;
    sums.addHarvested(TrayCost(), 300, {PriceItem::Labour});
    sums.addHarvested(knownCost(), 200, {});
    EXPECT_DOUBLE_EQ(*sums.breakdown().perGram(), knownCost().total() / 200);
    EXPECT_EQ(sums.breakdown().harvested, 2);
    EXPECT_DOUBLE_EQ(sums.breakdown().grams, 200);
}

// 1.4 + 1.4 + 1.4 = 4.2: 1, 1 and 1 would be 3. The largest remainders go up.
TEST(RoundedToSum, GivesWhatIsLeftToTheLargestRemainders)
{
    const std::vector<double> thirds{1.4, 1.4, 1.4};
    EXPECT_EQ(roundedToSum(thirds, 1), (std::vector<std::int64_t>{2, 1, 1}));
    const std::vector<double> halves{0.5, 0.25, 0.25};
    EXPECT_EQ(roundedToSum(halves, 0.25), (std::vector<std::int64_t>{2, 1, 1}));
    EXPECT_TRUE(roundedToSum({}, 1).empty());
}

TEST(RoundedToSum, AlwaysAddsUpAndIsNeverAWholeUnitOff)
{
    std::mt19937 lot(20'261'128);
    std::uniform_real_distribution<double> amount(0, 20);
    for (int draw = 0; draw < 500; ++draw) {
        std::vector<double> values(9);
        for (double& value : values) {
            value = amount(lot);
        }
        const auto rounded = roundedToSum(values, 0.01);
        const double sum = std::accumulate(values.begin(), values.end(), 0.0);
        EXPECT_EQ(std::accumulate(rounded.begin(), rounded.end(), std::int64_t{0}),
                  std::llround(sum / 0.01));
        for (std::size_t i = 0; i < values.size(); ++i) {
            EXPECT_LT(std::abs(double(rounded[i]) * 0.01 - values[i]), 0.01);
        }
    }
}

TEST(CostPart, HasAWordOfItsOwn)
{
    std::set<std::string> words;
    for (const CostPart part : kPartsOfCost) {
        words.insert(toText(part));
    }
    EXPECT_EQ(words.size(), kPartsOfCost.size());
}

} // namespace
} // namespace plumule
