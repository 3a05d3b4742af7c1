#include "core/review/season/medium_costs.h"

#include "core/review/answer/costs_answer.h"
#include "core/review/charts/cost_parts_chart.h"
#include "tests/core/review/facts/season_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

SeasonRecord& lose(SeasonSamples& season, const std::string& code, MediumId medium)
{
    SeasonRecord& record = season.add(code, medium, 0);
    record.tray.state = TrayState::Discarded;
    record.lastCut.reset();
    record.cutOn.clear();
    record.use.isHarvested = false;
    record.use.cuts = 0;
    return record;
}

std::vector<MediumCosts> costsOf(SeasonSamples& season)
{
    priceTrays(season.facts);
    return mediumCosts(season.facts, season.filter);
}

Result<CostsAnswer> answerTo(SeasonSamples& season, const WhatIf& whatIf,
                             const Progress& progress = {})
{
    return costsAnswerOf({season.filter, whatIf}, std::move(season.facts), date(2026, 4, 1),
                         progress);
}

TEST(MediumCosts, AreThoseOfTheSeasonPartByPart)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("A2", kMix, 220);
    season.add("B1", kMesh, 210);
    lose(season, "B2", kMesh);
    const auto media = costsOf(season);
    ASSERT_EQ(media.size(), 2U);
    const SeasonReview review = season.review();
    for (const MediumCosts& each : media) {
        const auto& same = each.medium.id == kMix ? review.media[0] : review.media[1];
        EXPECT_NEAR(*each.today.perGram(), *same.costPerGram, 1e-15);
    }
    EXPECT_EQ(media[0].medium.id, kMix) << "the cheapest first";
    // By hand: 18.00 / 60 and 0.75 a use, over 210 g; the lost tray's as much again.
    EXPECT_NEAR(media[1].today.share(CostPart::Medium)->perGram, 0.30 / 210, 1e-15);
    EXPECT_NEAR(media[1].today.share(CostPart::Washing)->perGram, 0.75 / 210, 1e-15);
    EXPECT_NEAR(media[1].today.share(CostPart::Failed)->perGram, 1.05 / 210, 1e-15);
}

TEST(MediumCosts, NameAMediumOfWhichEveryTrayFailed)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    lose(season, "B1", kMesh);
    const auto media = costsOf(season);
    ASSERT_EQ(media.size(), 2U);
    EXPECT_FALSE(media[1].today.perGram());
    EXPECT_NEAR(media[1].today.failedCost, 1.05, 1e-12);
}

TEST(CostLacks, SayWhichPriceOfHowManyTrays)
{
    SeasonSamples season;
    season.price(PriceItem::Medium, 0.55, kMix);
    season.add("A1", kMix, 200).use.residue = grams(180);
    season.add("A2", kMix, 210).use.residue = grams(180);
    season.facts.cost.prices.push_back(
        {{}, PriceItem::Waste, std::nullopt, date(2026, 6, 1), money(0.12)});
    priceTrays(season.facts);
    const CostLacks lacks = costLacks(season.facts, season.filter);
    const auto waste =
        std::find_if(lacks.prices.begin(), lacks.prices.end(),
                     [](const PriceLack& each) { return each.item == PriceItem::Waste; });
    ASSERT_NE(waste, lacks.prices.end());
    EXPECT_EQ(*waste, (PriceLack{PriceItem::Waste, std::nullopt, date(2026, 6, 1), 2}));
    EXPECT_TRUE(std::none_of(lacks.prices.begin(), lacks.prices.end(),
                             [](const PriceLack& each) { return each.item == PriceItem::Medium; }));
    EXPECT_EQ(lacks.seed, 2);
}

TEST(CostsAnswer, KeepsTodayBesideTheWhatIf)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    season.add("B1", kMesh, 200);
    WhatIf whatIf;
    whatIf.plannedUses[kMesh] = 20;
    const CostsAnswer answer = answerTo(season, whatIf).value();
    ASSERT_EQ(answer.media.size(), 2U);
    const MediumCosts& mesh = answer.media[0];
    EXPECT_EQ(mesh.medium.id, kMesh);
    EXPECT_NEAR(*mesh.today.perGram(), 1.05 / 200, 1e-15);
    EXPECT_NEAR(*mesh.whatIf->perGram(), (18.0 / 20 + 0.75) / 200, 1e-15);
    EXPECT_EQ(answer.harvested, 2);
    ASSERT_EQ(answer.paybacks.size(), 1U);
    EXPECT_EQ(answer.paybacks[0].at, 52);
}

TEST(CostsAnswer, HasNoWhatIfUnlessAsked)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    const CostsAnswer answer = answerTo(season, {}).value();
    EXPECT_FALSE(answer.media.at(0).whatIf);
    EXPECT_TRUE(answer.paybacksIf.empty());
}

TEST(CostsAnswer, TakesSeedTimesAFactor)
{
    SeasonSamples season;
    SeedLot lot;
    lot.id = {5};
    lot.variety = {1};
    lot.price = money(20);
    lot.bought = grams(1000);
    season.facts.cost.lots[lot.id] = lot;
    SeasonRecord& record = season.add("A1", kMix, 100);
    record.use.seedLot = lot.id;
    record.use.seed = grams(30);
    WhatIf whatIf;
    whatIf.seedFactor = 1.5;
    const CostsAnswer answer = answerTo(season, whatIf).value();
    EXPECT_NEAR(*answer.seedPrice, 20, 1e-12);
    EXPECT_NEAR(answer.media[0].today.share(CostPart::Seed)->perGram, 0.60 / 100, 1e-15);
    EXPECT_NEAR(answer.media[0].whatIf->share(CostPart::Seed)->perGram, 0.90 / 100, 1e-15);
}

TEST(CostsAnswer, IsStopped)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("A1", kMix, 200);
    std::stop_source stop;
    stop.request_stop();
    const auto answer = answerTo(season, {}, Progress({}, stop.get_token()));
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().kind, ErrorKind::Cancelled);
}

TEST(CostPartsChart, StacksThePartsOfARow)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(0.75);
    season.add("B1", kMesh, 200);
    WhatIf whatIf;
    whatIf.plannedUses[kMesh] = 20;
    const CostsAnswer answer = answerTo(season, whatIf).value();
    const ChartSpec spec = costPartsChart(answer.media, "EUR");
    EXPECT_EQ(spec.rows, std::vector<std::string>{"Mesh"});
    ASSERT_EQ(spec.series.size(), 3U);
    EXPECT_EQ(spec.series[0].name, "medium");
    EXPECT_EQ(spec.series[1].name, "washing");
    EXPECT_EQ(spec.series[1].intervals[0].low, spec.series[0].intervals[0].high);
    EXPECT_NEAR(spec.series[1].intervals[0].high, *answer.media[0].today.perGram(), 1e-15);
    EXPECT_EQ(spec.series[2].form, SeriesForm::Strokes);
    EXPECT_EQ(spec.series[2].intervals[0].mid, *answer.media[0].whatIf->perGram());
}

} // namespace
} // namespace plumule
