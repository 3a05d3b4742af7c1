#include "core/journal/review/review_answers.h"
#include "core/review/season/what_if.h"

#include "tests/core/review/facts/season_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

class WhatIfTest : public testing::Test
{
protected:
    WhatIfTest()
    {
        season.priceAsInTheHandbook(0.75);
        season.add("A1", kMix, 200);
        season.add("A2", kMesh, 200);
    }
    [[nodiscard]] SeasonReview reviewIf(const WhatIf& whatIf)
    {
        apply(whatIf, season.facts);
        return season.review();
    }
    SeasonSamples season;
};

TEST_F(WhatIfTest, OfNothingChangesNothing)
{
    EXPECT_TRUE(WhatIf().isEmpty());
    const SeasonReview review = reviewIf({});
    EXPECT_NEAR(*review.media[0].costPerGram, 1.10 / 200, 1e-12);
    EXPECT_NEAR(*review.media[1].costPerGram, (18.0 / 60 + 0.75) / 200, 1e-12);
    EXPECT_EQ(review.media[1].paysBackAt, 52);
}

TEST_F(WhatIfTest, TakesPricesAsIfTheyHadAlwaysHeld)
{
    // A dearer price that begins later than the sowing does not hold yet.
    season.facts.cost.prices.push_back(
        {{}, PriceItem::Washing, std::nullopt, date(2026, 3, 1), money(9)});
    WhatIf whatIf;
    whatIf.prices[PriceItem::Washing] = money(0.10);
    whatIf.mediumPrices[kMesh] = money(9);
    EXPECT_FALSE(whatIf.isEmpty());
    const SeasonReview review = reviewIf(whatIf);
    EXPECT_NEAR(*review.media[1].costPerGram, (9.0 / 60 + 0.10) / 200, 1e-12);
    EXPECT_NEAR(*review.media[0].costPerGram, 1.10 / 200, 1e-12);
    // 9 / (1.10 − 0.10) by hand.
    EXPECT_EQ(review.media[1].paysBackAt, 9);
}

TEST_F(WhatIfTest, SpreadsAPieceOverOtherUses)
{
    WhatIf whatIf;
    whatIf.plannedUses[kMesh] = 20;
    whatIf.plannedUses[kMix] = 5; // a loose mix is used once, whatever is said
    whatIf.plannedUses[MediumId{99}] = 5;
    const SeasonReview review = reviewIf(whatIf);
    EXPECT_NEAR(*review.media[1].costPerGram, (18.0 / 20 + 0.75) / 200, 1e-12);
    EXPECT_NEAR(*review.media[0].costPerGram, 1.10 / 200, 1e-12);
    EXPECT_EQ(review.media[1].paysBackAt, 52) << "the use at which it pays is the same";
}

TEST_F(WhatIfTest, GivesAPriceToWhatHadNone)
{
    season.facts.trays[1].use.residue = grams(500);
    WhatIf whatIf;
    whatIf.prices[PriceItem::Waste] = money(0.2);
    EXPECT_NEAR(*reviewIf(whatIf).media[1].meanCost.waste, 0.1, 1e-12);
}

} // namespace
} // namespace plumule
