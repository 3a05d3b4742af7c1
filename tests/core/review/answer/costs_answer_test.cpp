#include "core/review/answer/costs_answer.h"

#include "tests/core/review/facts/season_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

Result<CostsAnswer> answerTo(SeasonSamples& season, const WhatIf& whatIf,
                             const Progress& progress = {})
{
    return costsAnswerOf({season.filter, whatIf}, std::move(season.facts), date(2026, 4, 1),
                         progress);
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

} // namespace
} // namespace plumule
