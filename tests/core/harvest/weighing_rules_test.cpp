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
    facts.expected.low = grams(255);
    facts.expected.high = grams(325);
    facts.lastTares = {grams(42), grams(42), grams(42)};
    return facts;
}

std::vector<Doubt> doubtsAbout(const WeighingDraft& draft, const WeighingFacts& facts)
{
    return doubtsAbout(draft.bowls, facts);
}

TEST(WeighingRules, AddsTheBowlsWithoutTheirTares)
{
    WeighingDraft draft = weighing(200, 42);
    draft.bowls.push_back({grams(173.5), grams(42)});
    EXPECT_EQ(draft.net(), grams(289.5));
}

TEST(WeighingRules, DoubtsNothingAboutAUsualTray)
{
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), usualFacts()), IsEmpty());
}

TEST(WeighingRules, DoubtsAYieldFarFromWhatIsExpected)
{
    EXPECT_THAT(doubtsAbout(weighing(240, 42), usualFacts()), ElementsAre(Doubt::OutsideExpected));
    EXPECT_THAT(doubtsAbout(weighing(370, 42), usualFacts()), ElementsAre(Doubt::OutsideExpected));
    EXPECT_THAT(doubtsAbout(weighing(297, 42), usualFacts()), IsEmpty());
    EXPECT_THAT(doubtsAbout(weighing(367, 42), usualFacts()), IsEmpty());
}

// 3250 g for 325.0: a decimal point that the scale shows and a finger leaves out.
TEST(WeighingRules, KnowsASlippedDecimalPointFromAnOddTray)
{
    for (const auto& [gross, likely] : {std::pair(3250.0, 325.0), std::pair(32500.0, 325.0),
                                        std::pair(32.5, 325.0), std::pair(3.25, 325.0)}) {
        const WeighingDraft draft = weighing(gross, 0);
        EXPECT_THAT(doubtsAbout(draft, usualFacts()).at(0), Doubt::DecimalSlip) << gross;
        const auto slip = slipIn(draft.bowls, usualFacts().expected);
        ASSERT_TRUE(slip) << gross;
        EXPECT_EQ(slip->gross, grams(likely));
        EXPECT_EQ(slip->net, grams(likely));
    }
    // 325 read off a scale in grams, typed where ounces are asked for.
    EXPECT_EQ(slipIn(weighing(325 * kGramsPerOunce, 0).bowls, usualFacts().expected),
              (Slip{0, grams(325), grams(325)}));
    EXPECT_EQ(slipIn(weighing(3250, 38.5).bowls, usualFacts().expected),
              (Slip{0, grams(325), grams(286.5)}));
    EXPECT_FALSE(slipIn(weighing(325, 38.5).bowls, usualFacts().expected));
    EXPECT_FALSE(slipIn(weighing(900, 38.5).bowls, usualFacts().expected));
    EXPECT_FALSE(slipIn(weighing(3250, 38.5).bowls, ExpectedRange{}));
}

TEST(WeighingRules, FindsTheSlipInWhicheverBowlItIs)
{
    WeighingDraft draft = weighing(1820, 38.5);
    draft.bowls.push_back({grams(182), grams(38.5)});
    EXPECT_EQ(slipIn(draft.bowls, usualFacts().expected), (Slip{0, grams(182), grams(287)}));
    std::swap(draft.bowls[0], draft.bowls[1]);
    EXPECT_EQ(slipIn(draft.bowls, usualFacts().expected), (Slip{1, grams(182), grams(287)}));
}

// In a wide range a tenth of an odd weight may lie within, and yet be no likelier.
TEST(WeighingRules, OffersNoSlipThatIsHardlyLikelier)
{
    WeighingFacts facts;
    facts.expected.low = grams(39);
    facts.expected.high = grams(381);
    EXPECT_THAT(doubtsAbout(weighing(400, 0), facts), ElementsAre(Doubt::OutsideExpected));
    EXPECT_THAT(doubtsAbout(weighing(1500, 0), facts), ElementsAre(Doubt::DecimalSlip));
}

TEST(WeighingRules, KnowsBowlsThatAreAsTheyWereStored)
{
    const std::vector<Bowl> stored{{{}, {}, grams(331.5), grams(42)}};
    EXPECT_TRUE(isAsStored({{grams(331.5), grams(42)}}, stored));
    EXPECT_FALSE(isAsStored({{grams(331.4), grams(42)}}, stored));
    EXPECT_FALSE(isAsStored({{grams(331.5), grams(41)}}, stored));
    EXPECT_FALSE(isAsStored({{grams(331.5), grams(42), false}}, stored));
    EXPECT_FALSE(isAsStored({{grams(331.5), grams(42)}, {grams(1), grams(0)}}, stored));
}

TEST(WeighingRules, DoubtsASecondWeighing)
{
    WeighingFacts facts = usualFacts();
    facts.isWeighedAlready = true;
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), facts), ElementsAre(Doubt::AlreadyWeighed));
}

TEST(WeighingRules, DoubtsAReadingThatHadNotSettled)
{
    WeighingDraft draft = weighing(331.5, 42);
    draft.bowls.front().isStable = false;
    EXPECT_THAT(doubtsAbout(draft, usualFacts()), ElementsAre(Doubt::UnstableReading));
}

TEST(WeighingRules, DoubtsATareOfNothingWhereTheLastBowlsHadOne)
{
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), usualFacts()), ElementsAre(Doubt::TareForgotten));
    WeighingFacts neverTared = usualFacts();
    neverTared.lastTares = {grams(0), grams(42)};
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), neverTared), IsEmpty());
    neverTared.lastTares = {};
    EXPECT_THAT(doubtsAbout(weighing(289.5, 0), neverTared), IsEmpty());
}

TEST(WeighingRules, TrustsAScaleThatTookTheTareOffItself)
{
    WeighingDraft draft = weighing(289.5, 0);
    draft.bowls.front().isTaredByScale = true;
    EXPECT_THAT(doubtsAbout(draft, usualFacts()), IsEmpty());
}

TEST(WeighingRules, DoubtsATrayInTheDark)
{
    WeighingFacts facts = usualFacts();
    facts.isInTheDark = true;
    EXPECT_THAT(doubtsAbout(weighing(331.5, 42), facts), ElementsAre(Doubt::NotDueYet));
}

TEST(WeighingRules, LeavesTheDoubtsThatAreNotAccepted)
{
    const std::vector<Doubt> doubts = doubtsAbout(weighing(900, 0), usualFacts());
    EXPECT_THAT(doubts, ElementsAre(Doubt::OutsideExpected, Doubt::TareForgotten));
    EXPECT_THAT(openDoubts(doubts, {}), ElementsAre(Doubt::OutsideExpected, Doubt::TareForgotten));
    EXPECT_THAT(openDoubts(doubts, {Doubt::OutsideExpected}), ElementsAre(Doubt::TareForgotten));
    EXPECT_THAT(
        openDoubts(doubts, {Doubt::OutsideExpected, Doubt::TareForgotten, Doubt::NotDueYet}),
        IsEmpty());
}

TEST(WeighingRules, GivesEveryDoubtATextOfItsOwn)
{
    std::set<std::string> texts;
    for (const Doubt doubt : {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                              Doubt::UnstableReading, Doubt::TareForgotten, Doubt::NotDueYet}) {
        texts.insert(toText(doubt));
    }
    EXPECT_EQ(texts.size(), 6U);
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
