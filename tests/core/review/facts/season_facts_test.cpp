#include "core/journal/review/review_answers.h"
#include "tests/core/review/facts/season_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using testing::ElementsAre;

Height heightOn(Date day, double millimetresRead, ReadFrom from)
{
    Height height;
    height.on = day;
    height.reading = millimetres(millimetresRead);
    height.from = from;
    return height;
}

TEST(Season, GathersHarvestedTraysByMedium)
{
    SeasonSamples season;
    season.add("RD001", kMix, 250).tray.trial = TrialId{7};
    season.add("RD002", kMesh, 300);
    season.add("RD003", kMix, 260).tray.variety = {2};
    const SeasonReview review = season.review();
    ASSERT_EQ(review.media.size(), 2u);
    EXPECT_EQ(review.media[0].medium.name, "Loose mix");
    EXPECT_EQ(review.media[0].yield.n, 2);
    EXPECT_DOUBLE_EQ(review.media[0].yield.mean, 255);
    EXPECT_EQ(review.media[0].trays[0].code, "RD001");
    EXPECT_EQ(review.media[0].trays[0].trial, "T7");
    EXPECT_EQ(review.media[0].trays[0].variety, "Radish");
    EXPECT_EQ(review.media[0].trays[1].variety, "Pea");
    EXPECT_EQ(review.media[0].trays[1].trial, std::nullopt);
    EXPECT_EQ(review.trays, 3);
    EXPECT_EQ(review.varieties, 2);
    EXPECT_EQ(review.trials, 1);
    EXPECT_EQ(review.currency, "EUR");
    EXPECT_THAT(review.tooFew, ElementsAre("Mesh"));
}

TEST(Season, TellsWhatATrayGave)
{
    SeasonSamples season;
    SeasonRecord& record = season.add("RD001", kMix, 250);
    record.tray.seed = grams(25);
    record.use.residue = grams(900);
    const SeasonReview review = season.review();
    const SeasonTray& tray = review.media[0].trays[0];
    EXPECT_DOUBLE_EQ(tray.yieldGrams, 250);
    EXPECT_DOUBLE_EQ(tray.gramsPerSeedGram.value(), 10);
    EXPECT_EQ(tray.days, 13);
    EXPECT_EQ(tray.harvestedOn, date(2026, 2, 14));
    EXPECT_DOUBLE_EQ(tray.residueGrams.value(), 900);
    EXPECT_EQ(tray.cost, std::nullopt);
}

TEST(Season, SaysWhyATrayIsLeftOut)
{
    SeasonSamples season;
    season.add("D", kMix, 250).tray.setAsideReason = "tipped over";
    season.add("C", kMix, 250).lastCut = season.filter.to + 1;
    UnfinishedRecord discarded;
    discarded.tray.code = "A";
    discarded.tray.medium = kMesh;
    discarded.tray.variety = {1};
    discarded.tray.state = TrayState::Discarded;
    discarded.tray.discardReason = "mould";
    discarded.tray.endedOn = date(2026, 2, 9);
    UnfinishedRecord growing = discarded;
    growing.tray.code = "B";
    growing.tray.state = TrayState::Growing;
    UnfinishedRecord cutOnce = growing;
    cutOnce.tray.code = "E";
    cutOnce.isCut = true;
    season.facts.unfinished = {cutOnce, growing, discarded};
    const SeasonReview review = season.review();
    EXPECT_EQ(review.trays, 0);
    EXPECT_TRUE(review.media.empty());
    ASSERT_EQ(review.leftOut.size(), 5u);
    const auto& out = review.leftOut;
    EXPECT_EQ(out[0].code, "A");
    EXPECT_EQ(out[0].why, LeftOut::Discarded);
    EXPECT_EQ(out[0].reason, "mould");
    EXPECT_EQ(out[0].medium, "Mesh");
    EXPECT_EQ(out[1].why, LeftOut::StillGrowing);
    EXPECT_EQ(out[2].why, LeftOut::CutAgainLater);
    EXPECT_EQ(out[3].why, LeftOut::SetAside);
    EXPECT_EQ(out[3].reason, "tipped over");
    EXPECT_EQ(out[4].why, LeftOut::CutAgainLater);
}

TEST(Season, ShowsOnlyTheVarietiesAndTheTrialAskedFor)
{
    SeasonSamples season;
    season.add("RD001", kMix, 250);
    season.add("PE001", kMix, 400).tray.variety = {2};
    season.facts.trays.back().tray.trial = TrialId{7};
    UnfinishedRecord growing;
    growing.tray.variety = {1};
    season.facts.unfinished = {growing};
    season.filter.varieties = {VarietyId{2}};
    EXPECT_EQ(season.review().trays, 1);
    EXPECT_TRUE(season.review().leftOut.empty());
    season.filter.varieties.clear();
    season.filter.trials = {TrialId{7}};
    EXPECT_EQ(season.review().media[0].trays[0].code, "PE001");
    season.filter.trials = {TrialId{8}};
    EXPECT_EQ(season.review().trays, 0);
}

TEST(Season, AveragesHeightsFirstWithinATrayThenOverTrays)
{
    SeasonSamples season;
    const Date day5 = date(2026, 2, 6);
    // Rim readings lie 10 mm under the surface's: 40 and 50 from the rim are 50 and 60.
    season.add("A", kMix, 250).heights = {heightOn(day5, 40, ReadFrom::Rim),
                                          heightOn(day5, 50, ReadFrom::Rim),
                                          heightOn(day5 + 2, 80, ReadFrom::Surface)};
    season.add("B", kMix, 250).heights = {heightOn(day5, 45, ReadFrom::Surface)};
    const SeasonReview review = season.review();
    const auto& heights = review.media[0].heights;
    ASSERT_EQ(heights.size(), 2u);
    EXPECT_EQ(heights[0].day, 5);
    EXPECT_EQ(heights[0].height.n, 2);
    EXPECT_DOUBLE_EQ(heights[0].height.mean, (55 + 45) / 2.0);
    EXPECT_EQ(heights[1].day, 7);
    EXPECT_EQ(heights[1].height.n, 1);
    EXPECT_EQ(heights[1].height.lower, std::nullopt);
}

TEST(Season, LeavesOutRimReadingsWhereTheMediumsDepthIsUnknown)
{
    SeasonSamples season;
    season.add("A", kMesh, 250).heights = {heightOn(date(2026, 2, 6), 40, ReadFrom::Rim)};
    EXPECT_TRUE(season.review().media[0].heights.empty());
}

TEST(Season, CostPerGramIsTheSumOfCostsOverTheSumOfGrams)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A", kMix, 100);
    season.add("B", kMix, 300);
    const SeasonReview review = season.review();
    EXPECT_NEAR(review.media[0].trays[0].cost.value(), 1.10, 1e-12);
    EXPECT_NEAR(review.media[0].costPerGram.value(), 2.20 / 400, 1e-12);
    EXPECT_NEAR(review.media[0].meanCost.medium.value(), 1.10, 1e-12);
    EXPECT_EQ(review.media[0].meanCost.seed, std::nullopt);
}

TEST(Season, PaysBackAtTheUsesOfTheHandbookExample)
{
    // References handbook, section 6 (computed there).
    for (const auto& [cleaning, use] : {std::pair{0.75, 52}, std::pair{0.375, 25}}) {
        SeasonSamples season;
        season.priceAsInTheHandbook(cleaning);
        season.add("A", kMix, 250);
        season.add("B", kMesh, 250);
        const SeasonReview review = season.review();
        EXPECT_EQ(review.media[0].paysBackAt, std::nullopt);
        EXPECT_EQ(review.media[1].paysBackAt, use);
    }
}

TEST(Season, TheCurveCrossesTheSingleUseLineWhereThePiecePaysBack)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.price(PriceItem::Packaging, 0.3);
    season.add("A", kMix, 240);
    season.add("B", kMesh, 260);
    const SeasonReview review = season.review();
    const auto& line = review.media[0].costCurve;
    const auto& curve = review.media[1].costCurve;
    ASSERT_EQ(curve.size(), 60u);
    ASSERT_EQ(line.size(), curve.size());
    EXPECT_NEAR(curve[0].costPerGram, (18 + 0.75 + 0.3) / 260, 1e-12);
    EXPECT_NEAR(curve[9].costPerGram, (18 + (0.75 + 0.3) * 10) / 2600, 1e-12);
    const int use = review.media[1].paysBackAt.value();
    const auto below = [&](int n) {
        const auto index = static_cast<std::size_t>(n - 1);
        return curve[index].costPerGram <= line[index].costPerGram;
    };
    EXPECT_TRUE(below(use));
    EXPECT_FALSE(below(use - 1));
    EXPECT_NEAR(line.front().costPerGram, 1.4 / 240, 1e-12);
    EXPECT_EQ(line.front().costPerGram, line.back().costPerGram);
}

TEST(Season, ThereIsNoCurveThatForgetsTheWashing)
{
    SeasonSamples season;
    season.price(PriceItem::Medium, 0.55, kMix);
    season.price(PriceItem::Medium, 18, kMesh);
    season.add("A", kMix, 250);
    season.add("B", kMesh, 250);
    const SeasonReview review = season.review();
    EXPECT_TRUE(review.media[1].costCurve.empty());
    EXPECT_EQ(review.media[1].paysBackAt, std::nullopt);
    EXPECT_EQ(review.media[0].costCurve.size(), 60u);
}

TEST(Season, CurvesGoOnToThePaybackAndEndSomewhere)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.95);
    season.add("A", kMix, 250);
    season.add("B", kMesh, 250);
    EXPECT_EQ(season.review().media[1].paysBackAt, 120);
    EXPECT_EQ(season.review().media[1].costCurve.size(), 120u);
    season.facts.cost.prices.clear();
    season.priceAsInTheHandbook(1.0999);
    EXPECT_EQ(season.review().media[1].paysBackAt, 180'000);
    EXPECT_EQ(season.review().media[1].costCurve.size(), 500u);
}

} // namespace
} // namespace plumule
