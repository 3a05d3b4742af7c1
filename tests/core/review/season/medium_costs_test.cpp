#include "core/review/season/medium_costs.h"

#include "tests/core/review/facts/season_samples.h"

#include <algorithm>
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

} // namespace
} // namespace plumule
