#include "core/journal/review/review_answers.h"
#include "core/review/season/payback.h"

#include "core/review/charts/season_charts.h"
#include "tests/core/review/facts/season_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<Payback> paybacksOf(SeasonSamples& season)
{
    return paybackOf(season.facts, season.review());
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
    EXPECT_TRUE(payback.hasBand);
    ASSERT_EQ(payback.curve.size(), season.review().media[1].costCurve.size());
    for (const CostBand& band : payback.curve) {
        EXPECT_NEAR(band.cost, (18.0 / band.uses + 0.75) / 200, 1e-12);
        EXPECT_NEAR(band.low, band.cost, 1e-12);
        EXPECT_NEAR(band.high, band.cost, 1e-12);
    }
}

// Mesh 190, 200, 210 g against mix 180, 200, 220 g, 18.00 a mesh, 0.75 a washing, 1.10 a filling:
// log ρ ± t(0.975; 4)·√((10² + 20²)/3)/200 = ± 2.7764·0.06455, so uses 18 / (1.10·e^±0.1792 −
// 0.75).
TEST(Payback, HasAnIntervalFromBothMediasTrays)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    for (const double off : {-1.0, 0.0, 1.0}) {
        season.add("A" + std::to_string(off), kMix, 200 + 20 * off);
        season.add("B" + std::to_string(off), kMesh, 200 + 10 * off);
    }
    const Payback payback = paybacksOf(season).at(0);
    const double half = 2.7764451 * std::sqrt(500.0 / 3) / 200;
    EXPECT_EQ(payback.at, 52);
    EXPECT_EQ(payback.low, int(std::ceil(18 / (1.10 * std::exp(half) - 0.75))));
    EXPECT_EQ(payback.high, int(std::ceil(18 / (1.10 * std::exp(-half) - 0.75))));
    const CostBand& tenth = payback.curve.at(9);
    // Its own grams alone: t(0.975; 2) = 4.3027, sd 10 of three.
    EXPECT_NEAR(tenth.high / tenth.cost, std::exp(4.3026527 * 10 / (std::sqrt(3.0) * 200)), 1e-6);
    EXPECT_NEAR(tenth.low * tenth.high, tenth.cost * tenth.cost, 1e-12);
}

TEST(Payback, MayNeverComeAtItsUpperBound)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    for (const double grams : {120.0, 200.0, 280.0}) {
        season.add("A" + std::to_string(grams), kMix, 200);
        season.add("B" + std::to_string(grams), kMesh, grams);
    }
    const Payback payback = paybacksOf(season).at(0);
    EXPECT_EQ(payback.at, 52);
    EXPECT_LT(payback.low.value(), 52);
    EXPECT_EQ(payback.high, std::nullopt);
}

TEST(Payback, HasNoBandUnderThreeTraysOfEach)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.375);
    season.add("A1", kMix, 150);
    season.add("A2", kMix, 250);
    season.add("B1", kMesh, 200);
    season.add("B2", kMesh, 200);
    const Payback payback = paybacksOf(season).at(0);
    EXPECT_EQ(payback.at, 25) << "18 / (1.10 − 0.375)";
    EXPECT_FALSE(payback.hasBand);
    EXPECT_FALSE(payback.low || payback.high);
}

TEST(Payback, TakesAPartOfTheCostOverTheTraysItIsKnownOf)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.price(PriceItem::Waste, 1);
    season.add("A1", kMix, 200).use.residue = grams(0);
    season.add("A2", kMix, 200).use.residue = grams(0);
    season.add("A3", kMix, 200).use.residue = grams(0);
    season.add("B1", kMesh, 200).use.residue = grams(100);
    season.add("B2", kMesh, 200);
    season.add("B3", kMesh, 200).use.residue = grams(100);
    const Payback payback = paybacksOf(season).at(0);
    // Residue is 0.10 a use where it is known of one: 18 / (1.10 − 0.10 − 0.75) = 72.
    EXPECT_EQ(payback.at, 72);
    EXPECT_EQ(payback.high, 72);
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

TEST(CurveLacks, NameThePriceThatACurveWaitsFor)
{
    SeasonSamples season;
    season.price(PriceItem::Medium, 0.55, MediumId{1});
    season.add("A1", kMix, 200);
    season.add("B1", kMesh, 200);
    auto lacks = curveLacks(season.facts, season.review());
    ASSERT_EQ(lacks.size(), 1u);
    EXPECT_EQ(lacks[0].medium.name, "Mesh");
    EXPECT_EQ(lacks[0].prices, (std::vector<MissingPrice>{{PriceItem::Medium, std::nullopt},
                                                          {PriceItem::Washing, std::nullopt}}));
    season.price(PriceItem::Medium, 18, MediumId{2});
    lacks = curveLacks(season.facts, season.review());
    ASSERT_EQ(lacks.size(), 1u);
    EXPECT_EQ(lacks[0].prices, (std::vector<MissingPrice>{{PriceItem::Washing, std::nullopt}}));
}

TEST(CurveLacks, SayFromWhenAPriceHoldsThatCameTooLate)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("B1", kMesh, 200);
    const Date later = season.facts.trays.front().tray.sownOn + 1;
    for (Price& price : season.facts.cost.prices) {
        if (price.medium == MediumId{1} || price.item == PriceItem::Washing) {
            price.from = later;
        }
    }
    const auto lacks = curveLacks(season.facts, season.review());
    ASSERT_EQ(lacks.size(), 2u);
    EXPECT_EQ(lacks[0].medium.name, "Loose mix");
    EXPECT_EQ(lacks[0].prices, (std::vector<MissingPrice>{{PriceItem::Medium, later}}));
    EXPECT_EQ(lacks[1].prices, (std::vector<MissingPrice>{{PriceItem::Washing, later}}));
}

TEST(CurveLacks, AreNoneWhereAllIsPricedOrNothingIsUsedAgain)
{
    SeasonSamples priced;
    priced.priceAsInTheHandbook(0.75);
    priced.add("A1", kMix, 200);
    priced.add("B1", kMesh, 200);
    EXPECT_TRUE(curveLacks(priced.facts, priced.review()).empty());
    SeasonSamples single;
    single.add("A1", kMix, 200);
    EXPECT_TRUE(curveLacks(single.facts, single.review()).empty());
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
