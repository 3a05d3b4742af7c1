#include "core/watering/watering_rules.h"

#include "core/watering/round_key.h"
#include "core/watering/watering_reason.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

void expectFault(const Done& checked, ErrorKind kind, Reason reason)
{
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().kind, kind);
    EXPECT_EQ(checked.error().reason, reason);
}

// 1 US fl oz per US gallon: 29.5735295625 mL / 3.785411784 L = 7.8125 mL/L (NIST SP 811, Appendix
// B).
TEST(WateringRulesTest, AFluidOuncePerGallonIsAHundredAndTwentyEighth)
{
    EXPECT_NEAR(millilitresPerLitreFrom(1), 7.8125, 1e-9);
    EXPECT_NEAR(millilitresPerLitreFrom(1.5), 11.72, 0.005);
    EXPECT_EQ(millilitresPerLitreFrom(0), 0);
}

TEST(WateringRulesTest, ConcentrateIsLitresTimesDose)
{
    EXPECT_EQ(concentrateFor(litres(1.62), millilitres(8)), millilitres(12.96));
    EXPECT_EQ(concentrateFor(Volume(), millilitres(8)), Volume());
}

TEST(WateringRulesTest, AReadingNeedsAValueAndAPlausibleOne)
{
    WaterReading reading;
    expectFault(checkReading(reading), ErrorKind::Missing, WateringReason::ReadingMissing);
    for (const double ph : {0.0, 5.8, 14.0}) {
        reading.ph = ph;
        EXPECT_TRUE(checkReading(reading)) << ph;
    }
    for (const double ph : {-0.1, 14.1}) {
        reading.ph = ph;
        expectFault(checkReading(reading), ErrorKind::Invalid, WateringReason::ReadingPh);
    }
    reading.ph.reset();
    reading.ec = 1400;
    EXPECT_TRUE(checkReading(reading));
    for (const double ec : {-1.0, 20'001.0}) {
        reading.ec = ec;
        expectFault(checkReading(reading), ErrorKind::Invalid, WateringReason::ReadingEc);
    }
}

TEST(WateringRulesTest, ARecipeHasNoNegativeDoseAndNoBandUpsideDown)
{
    WaterRecipe recipe;
    recipe.dosePerLitre = millilitres(8);
    recipe.phLow = 5.5;
    recipe.phHigh = 6.0;
    recipe.ecLow = 1200;
    EXPECT_TRUE(checkRecipe(recipe));
    recipe.phHigh = 5.4;
    expectFault(checkRecipe(recipe), ErrorKind::Invalid, WateringReason::RecipePh);
    recipe.phHigh = 6;
    recipe.ecHigh = 1100;
    expectFault(checkRecipe(recipe), ErrorKind::Invalid, WateringReason::RecipeEc);
    recipe.ecHigh = 21'000;
    expectFault(checkRecipe(recipe), ErrorKind::Invalid, WateringReason::RecipeEc);
    recipe.ecHigh = 1600;
    recipe.dosePerLitre = millilitres(-1);
    expectFault(checkRecipe(recipe), ErrorKind::Invalid, WateringReason::RecipeDose);
}

TEST(WateringRulesTest, WhatWasGivenIsNotNegativeAndHasAMethod)
{
    Watering given;
    EXPECT_TRUE(checkGiven(given)) << "an unmeasured misting";
    given.amount = millilitres(0);
    EXPECT_TRUE(checkGiven(given));
    given.amount = millilitres(-1);
    expectFault(checkGiven(given), ErrorKind::Invalid, WateringReason::Amount);
    given.amount.reset();
    given.minute = kMinutesPerDay;
    expectFault(checkGiven(given), ErrorKind::Invalid, WateringReason::Minute);
    given.minute = 0;
    given.method = WateringMethod::None;
    expectFault(checkGiven(given), ErrorKind::Invalid, WateringReason::MethodMissing);
}

TEST(RoundKeyTest, RoundsFollowEachOtherThroughTheDays)
{
    const Date day = date(2026, 2, 28);
    const RoundKey morning{day, Slot::Morning};
    const RoundKey evening{day, Slot::Evening};
    EXPECT_EQ(roundAfter(morning), evening);
    EXPECT_EQ(roundAfter(evening), (RoundKey{date(2026, 3, 1), Slot::Morning}));
    EXPECT_EQ(roundBefore(roundAfter(evening)), evening);
    EXPECT_EQ(roundBefore(evening), morning);
    EXPECT_LT(morning, evening);
    EXPECT_LT(evening, roundAfter(evening));
}

TEST(RoundKeyTest, AMomentBelongsToTheRoundThatIsWalkedThen)
{
    const Room room;
    const Date day = date(2026, 3, 2);
    EXPECT_EQ(roundOf(room, {day, 12 * 60 + 29}), (RoundKey{day, Slot::Morning}));
    EXPECT_EQ(roundOf(room, {day, 12 * 60 + 30}), (RoundKey{day, Slot::Evening}));
    EXPECT_EQ(timeOf(room, {day, Slot::Evening}), Moment(day, 18 * 60));
}

TEST(RoundKeyTest, WhatIsDueIsShownInTheFirstRoundNotThreeHoursBeforeIt)
{
    const Room room;
    const Date day = date(2026, 3, 2);
    EXPECT_EQ(roundShowing(room, {day, 0}), (RoundKey{day, Slot::Morning}));
    EXPECT_EQ(roundShowing(room, {day, 10 * 60}), (RoundKey{day, Slot::Morning}));
    EXPECT_EQ(roundShowing(room, {day, 10 * 60 + 1}), (RoundKey{day, Slot::Evening}));
    EXPECT_EQ(roundShowing(room, {day, 21 * 60}), (RoundKey{day, Slot::Evening}));
    EXPECT_EQ(roundShowing(room, {day, 21 * 60 + 1}), (RoundKey{day + 1, Slot::Morning}));
}

} // namespace
} // namespace plumule
