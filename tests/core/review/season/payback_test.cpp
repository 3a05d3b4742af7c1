#include "core/review/season/payback.h"

#include "core/review/charts/season_charts.h"
#include "tests/core/review/facts/season_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<Payback> paybacksOf(SeasonSamples& season)
{
    const auto found = paybackOf(season.facts, season.review());
    EXPECT_TRUE(found);
    return found.value_or(std::vector<Payback>());
}

// 18.00 a mesh against 1.10 a filling with 0.75 a washing: 18 / 0.35, the 52nd use.
TEST(Payback, IsCertainWhereAllTraysAreAlike)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    for (int i = 0; i < 5; ++i) {
        season.add("A" + std::to_string(i), kMix, 200);
        season.add("B" + std::to_string(i), kMesh, 200);
    }
    const auto paybacks = paybacksOf(season);
    ASSERT_EQ(paybacks.size(), 1u);
    const Payback& payback = paybacks[0];
    EXPECT_EQ(payback.medium.name, "Mesh");
    EXPECT_EQ(payback.against.name, "Loose mix");
    EXPECT_EQ(payback.at, 52);
    EXPECT_EQ(payback.low, 52);
    EXPECT_EQ(payback.high, 52);
    EXPECT_EQ(payback.neverShare, 0);
    ASSERT_EQ(payback.curve.size(), season.review().media[1].costCurve.size());
    for (const CostBand& band : payback.curve) {
        EXPECT_NEAR(band.cost, (18.0 / band.uses + 0.75) / 200, 1e-12);
        EXPECT_NEAR(band.low, band.cost, 1e-12);
        EXPECT_NEAR(band.high, band.cost, 1e-12);
    }
}

// Two trays of the mesh, 100 and 300 g, drawn with replacement: both the small one with the chance
// 1/4, one of each with 1/2, both the large one with 1/4. The line is 0.0055 a gram:
// 18 / (0.0055·100 − 0.75) is never, 18 / (1.10 − 0.75) is 52, 18 / (1.65 − 0.75) is 20.
TEST(Payback, KnowsHowOftenItNeverDoes)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("A2", kMix, 200);
    season.add("B1", kMesh, 100);
    season.add("B2", kMesh, 300);
    const Payback payback = paybacksOf(season).at(0);
    EXPECT_EQ(payback.at, 52);
    EXPECT_EQ(payback.low, 20);
    EXPECT_EQ(payback.high, std::nullopt);
    EXPECT_NEAR(payback.neverShare, 0.25, 3 * std::sqrt(0.25 * 0.75 / 2000));
    const CostBand& tenth = payback.curve.at(9);
    EXPECT_NEAR(tenth.low, (1.8 + 0.75) / 300, 1e-12);
    EXPECT_NEAR(tenth.cost, (1.8 + 0.75) / 200, 1e-12);
    EXPECT_NEAR(tenth.high, (1.8 + 0.75) / 100, 1e-12);
}

TEST(Payback, OfTheSingleUseMediumsTraysToo)
{
    // The mix gave 150 or 250 g: at 200 g of mesh a tray's worth of mix costs 1.47, 1.10 or 0.88.
    SeasonSamples season;
    season.priceAsInTheHandbook(0.375);
    season.add("A1", kMix, 150);
    season.add("A2", kMix, 250);
    season.add("B1", kMesh, 200);
    season.add("B2", kMesh, 200);
    const Payback payback = paybacksOf(season).at(0);
    EXPECT_EQ(payback.at, 25) << "18 / (1.10 − 0.375)";
    EXPECT_EQ(payback.low, 17) << "18 / (1.4667 − 0.375)";
    EXPECT_EQ(payback.high, 36) << "18 / (0.88 − 0.375)";
}

TEST(Payback, TakesAPartOfTheCostOverTheTraysItIsKnownOf)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.price(PriceItem::Waste, 1);
    season.add("A1", kMix, 200).use.residue = grams(0);
    season.add("A2", kMix, 200).use.residue = grams(0);
    season.add("B1", kMesh, 200).use.residue = grams(100);
    season.add("B2", kMesh, 200);
    season.add("B3", kMesh, 200).use.residue = grams(100);
    const Payback payback = paybacksOf(season).at(0);
    // Residue is 0.10 a use in every draw that knows of one: 18 / (1.10 − 0.10 − 0.75) = 72.
    EXPECT_EQ(payback.at, 72);
    EXPECT_EQ(payback.high, 72);
}

TEST(Payback, IsTheSameEachTime)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.375);
    for (int i = 0; i < 12; ++i) {
        season.add("A" + std::to_string(i), kMix, 180 + 5 * i);
        season.add("B" + std::to_string(i), kMesh, 240 - 7 * i);
    }
    const Payback once = paybacksOf(season).at(0);
    const Payback again = paybacksOf(season).at(0);
    EXPECT_EQ(once.curve, again.curve);
    EXPECT_EQ(once.low, again.low);
    EXPECT_EQ(once.neverShare, again.neverShare);
    ASSERT_TRUE(once.low && once.at && once.high);
    EXPECT_LT(*once.low, *once.at);
    EXPECT_LT(*once.at, *once.high);
}

TEST(Payback, NeedsPricesAndSomethingToBeCheaperThan)
{
    SeasonSamples unpriced;
    unpriced.add("A1", kMix, 200);
    unpriced.add("B1", kMesh, 200);
    EXPECT_TRUE(paybacksOf(unpriced).empty());
    SeasonSamples alone;
    alone.priceAsInTheHandbook(0.75);
    alone.add("B1", kMesh, 200);
    EXPECT_TRUE(paybacksOf(alone).empty());
}

TEST(Payback, StopsWithinItsDrawsAndTellsHowFarItIs)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("B1", kMesh, 200);
    std::stop_source source;
    std::vector<double> told;
    const Progress progress(
        [&](double fraction) {
            told.push_back(fraction);
            if (fraction > 0.6) {
                source.request_stop();
            }
        },
        source.get_token());
    const auto stopped = paybackOf(season.facts, season.review(), progress);
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_LT(told.back(), 0.7);
}

TEST(Payback, IsShownAsABandWithItsMark)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("B1", kMesh, 200);
    const SeasonReview review = season.review();
    const ChartSpec chart = paybackChart(paybacksOf(season), review);
    EXPECT_EQ(chart.key, "cost_by_uses");
    ASSERT_EQ(chart.series.size(), 2u);
    EXPECT_EQ(chart.series[0].form, SeriesForm::Line);
    EXPECT_EQ(chart.series[1].form, SeriesForm::Band);
    EXPECT_TRUE(chart.series[1].points.empty());
    EXPECT_EQ(chart.series[1].intervals.size(), review.media[1].costCurve.size());
    ASSERT_EQ(chart.marks.size(), 1u);
    EXPECT_EQ(chart.marks[0], (ChartMark{"pays_back", "Mesh", 52, true}));
    EXPECT_EQ(paybackChart({}, review), costByUsesChart(review));
}

} // namespace
} // namespace plumule
