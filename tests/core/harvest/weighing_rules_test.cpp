#include "core/harvest/weighing_rules.h"

#include "core/harvest/harvest_reason.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

WeighingDraft weighing(double gross, double tare)
{
    WeighingDraft draft;
    draft.bowls = {{grams(gross), grams(tare)}};
    return draft;
}

WeighingFacts usualFacts()
{
    WeighingFacts facts;
    facts.expected = {12, grams(255), grams(325)};
    facts.lastTares = {grams(42), grams(42), grams(42)};
    return facts;
}

TEST(WeighingRules, AddsTheBowlsWithoutTheirTares)
{
    WeighingDraft draft = weighing(200, 42);
    draft.bowls.push_back({grams(173.5), grams(42)});
    EXPECT_EQ(draft.net(), grams(289.5));
}

TEST(WeighingRules, DoubtsNothingAboutAUsualTray)
{
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), usualFacts(), false), IsEmpty());
}

TEST(WeighingRules, DoubtsAYieldFarFromWhatIsExpected)
{
    EXPECT_THAT(doubtsAbout(weighing(240, 42), usualFacts(), false),
                ElementsAre(Doubt::OutsideExpected));
    EXPECT_THAT(doubtsAbout(weighing(370, 42), usualFacts(), false),
                ElementsAre(Doubt::OutsideExpected));
    EXPECT_THAT(doubtsAbout(weighing(297, 42), usualFacts(), false), IsEmpty());
    EXPECT_THAT(doubtsAbout(weighing(367, 42), usualFacts(), false), IsEmpty());
}

TEST(WeighingRules, HoldsTheSumOfTheCutsAgainstTheRange)
{
    WeighingFacts facts = usualFacts();
    facts.cutBefore = grams(150);
    EXPECT_THAT(doubtsAbout(weighing(172, 42), facts, false), IsEmpty());
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), facts, false),
                ElementsAre(Doubt::OutsideExpected));
}

TEST(WeighingRules, TakesALightCutForFineWhileMoreIsToCome)
{
    WeighingDraft draft = weighing(200, 42);
    draft.isLast = false;
    EXPECT_THAT(doubtsAbout(draft, usualFacts(), false), IsEmpty());
    draft.bowls.front().gross = grams(400);
    EXPECT_THAT(doubtsAbout(draft, usualFacts(), false), ElementsAre(Doubt::OutsideExpected));
}

TEST(WeighingRules, DoubtsASecondWeighing)
{
    WeighingFacts facts = usualFacts();
    facts.isLastCutWeighed = true;
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), facts, false), ElementsAre(Doubt::AlreadyWeighed));
    EXPECT_THAT(doubtsAbout(weighing(900, 240), facts, true), IsEmpty());
    facts.isResidueWeighed = true;
    EXPECT_THAT(doubtsAbout(weighing(900, 240), facts, true), ElementsAre(Doubt::AlreadyWeighed));
}

TEST(WeighingRules, DoubtsAReadingThatHadNotSettled)
{
    WeighingDraft draft = weighing(331.5, 42);
    draft.bowls.front().isStable = false;
    EXPECT_THAT(doubtsAbout(draft, usualFacts(), false), ElementsAre(Doubt::UnstableReading));
}

TEST(WeighingRules, DoubtsATareOfNothingWhereTheLastBowlsHadOne)
{
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), usualFacts(), false),
                ElementsAre(Doubt::TareForgotten));
    WeighingFacts neverTared = usualFacts();
    neverTared.lastTares = {grams(0), grams(42)};
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), neverTared, false), IsEmpty());
    neverTared.lastTares = {};
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), neverTared, false), IsEmpty());
}

TEST(WeighingRules, TrustsAScaleThatTookTheTareOffItself)
{
    WeighingDraft draft = weighing(289.5, 0);
    draft.bowls.front().isTaredByScale = true;
    EXPECT_THAT(doubtsAbout(draft, usualFacts(), false), IsEmpty());
}

TEST(WeighingRules, DoubtsATrayInTheDark)
{
    WeighingFacts facts = usualFacts();
    facts.isInTheDark = true;
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), facts, false), ElementsAre(Doubt::NotDueYet));
}

TEST(WeighingRules, NamesTheFirstDoubtThatIsNotAccepted)
{
    WeighingDraft draft = weighing(900, 0);
    const std::vector<Doubt> doubts = doubtsAbout(draft, usualFacts(), false);
    EXPECT_THAT(doubts, ElementsAre(Doubt::OutsideExpected, Doubt::TareForgotten));
    EXPECT_EQ(firstOpenDoubt(draft, doubts), Doubt::OutsideExpected);
    draft.accepted = {Doubt::OutsideExpected};
    EXPECT_EQ(firstOpenDoubt(draft, doubts), Doubt::TareForgotten);
    draft.accepted = {Doubt::OutsideExpected, Doubt::TareForgotten, Doubt::NotDueYet};
    EXPECT_EQ(firstOpenDoubt(draft, doubts), std::nullopt);
}

TEST(WeighingRules, GivesEveryDoubtATextOfItsOwn)
{
    std::set<std::string> texts;
    for (const Doubt doubt : {Doubt::OutsideExpected, Doubt::AlreadyWeighed, Doubt::UnstableReading,
                              Doubt::TareForgotten, Doubt::NotDueYet}) {
        texts.insert(toText(doubt));
    }
    EXPECT_EQ(texts.size(), 5U);
}

TEST(WeighingRules, RefusesBowlsThatHoldNothing)
{
    EXPECT_EQ(checkBowls({}).error().kind, ErrorKind::Missing);
    EXPECT_EQ(checkBowls({{grams(42), grams(42)}}).error().reason, HarvestReason::NothingNet);
    EXPECT_EQ(checkBowls({{grams(40), grams(42)}}).error().reason, HarvestReason::NothingNet);
    EXPECT_EQ(checkBowls({{grams(40), grams(-2)}}).error().reason, HarvestReason::TareNegative);
    EXPECT_EQ(checkBowls({{grams(50'001), grams(2)}}).error().reason, HarvestReason::GrossTooHeavy);
    EXPECT_TRUE(checkBowls({{grams(40), grams(42)}, {grams(100), grams(42)}}));
}

TrayStage stageNamed(Stage stage, bool hasStarted)
{
    TrayStage row;
    row.stage = stage;
    if (hasStarted) {
        row.startedOn = date(2026, 3, 1);
        row.startedMinute = 420;
    }
    return row;
}

TEST(WeighingRules, CallsATrayDarkUntilItsLightHasBegun)
{
    EXPECT_TRUE(
        isBeforeLight({stageNamed(Stage::UnderWeight, true), stageNamed(Stage::Light, false)}));
    EXPECT_FALSE(
        isBeforeLight({stageNamed(Stage::UnderWeight, true), stageNamed(Stage::Light, true)}));
    // A variety that is grown in the dark to the end has no light to wait for.
    EXPECT_FALSE(
        isBeforeLight({stageNamed(Stage::UnderWeight, true), stageNamed(Stage::Blackout, true)}));
}

TEST(WeighingRules, TakesATrayOffTheListOnceItWasCutSinceItFellDue)
{
    const Moment due{date(2026, 3, 13), 420};
    EXPECT_FALSE(isCutDue(due, {}, date(2026, 3, 12)));
    EXPECT_TRUE(isCutDue(due, {}, date(2026, 3, 13)));
    EXPECT_TRUE(isCutDue(due, {}, date(2026, 3, 15)));
    Harvest cut;
    cut.isLast = false;
    cut.on = date(2026, 3, 13);
    EXPECT_FALSE(isCutDue(due, {cut}, date(2026, 3, 14)));
    // Moved on by "not yet", it falls due again.
    EXPECT_TRUE(isCutDue({date(2026, 3, 22), 420}, {cut}, date(2026, 3, 22)));
}

} // namespace
} // namespace plumule
