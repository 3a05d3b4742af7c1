#include "tests/core/week/week_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Date kToday = kSaturdayMorning.date;

TEST(Week, GrowingTraysStandTogetherByTaskAndVariety)
{
    WeekRoom room(8);
    room.grow(1, kSaturdayMorning + -2 * kDay);
    room.grow(2, kSaturdayMorning + -2 * kDay);
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.days.size(), 14U);
    EXPECT_EQ(week.days.front().on, kToday);
    const WeekEntry uncover = onlyEntry(week, kToday + 1, WeekTask::Uncover);
    EXPECT_EQ(uncover.count, 2);
    EXPECT_EQ(uncover.proposed, 0);
    EXPECT_EQ(uncover.name, "Broccoli");
    EXPECT_THAT(uncover.codes, ElementsAre("BR001", "BR002"));
    EXPECT_THAT(uncover.shelves, ElementsAre("A1"));
    EXPECT_EQ(onlyEntry(week, kToday + 2, WeekTask::Light).count, 2);
    EXPECT_EQ(onlyEntry(week, kToday + 10, WeekTask::Cut).count, 2);
    EXPECT_EQ(week.total(WeekTask::Cut), 2);
    EXPECT_THAT(week.days[10].cuts, ElementsAre(CutLot{{1}, {1}, kToday - 2, 2}));
    EXPECT_THAT(week.days[3].entries, IsEmpty());
}

TEST(Week, PlacesComeFreeOnTheDayOfTheCutAndTodayOnlyOnceTheyAreEmpty)
{
    WeekRoom room(8);
    room.grow(1, kSaturdayMorning + -2 * kDay);
    TrayRecord& due = room.grow(2, kSaturdayMorning + -12 * kDay);
    begin(due, 1, kSaturdayMorning + -9 * kDay);
    begin(due, 2, kSaturdayMorning + -8 * kDay);
    const Week week = weekFrom(room.facts);
    EXPECT_EQ(onlyEntry(week, kToday, WeekTask::Cut).count, 1);
    EXPECT_EQ(week.days[0].freePlaces, 6);
    EXPECT_EQ(week.days[1].freePlaces, 7);
    EXPECT_EQ(week.days[9].freePlaces, 7);
    EXPECT_EQ(week.days[10].freePlaces, 8);
}

TEST(Week, ARepeatingSowingIsProposedOnItsDaysWithAllThatFollows)
{
    WeekRoom room(20);
    room.repeat(1, 4, kToday + 2, 7);
    room.seed(grams(150));
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.proposals.size(), 2U);
    const Proposal& first = week.proposals[0];
    EXPECT_EQ(first.due, kToday + 2);
    EXPECT_EQ(first.sowAt, (Moment{kToday + 2, 7 * 60}));
    EXPECT_EQ(first.shift, ProposalShift::None);
    EXPECT_EQ(first.cutOn, kToday + 14);
    EXPECT_EQ(first.freePlaces, 20);
    EXPECT_EQ(first.seedNeeded, grams(100));
    EXPECT_EQ(first.seedLeft, grams(150));
    EXPECT_EQ(week.proposals[1].due, kToday + 9);
    EXPECT_EQ(week.proposals[1].seedLeft, grams(50)) << "after the first one";
    EXPECT_EQ(week.proposals[1].freePlaces, 16);
    const WeekEntry sow = onlyEntry(week, kToday + 2, WeekTask::Sow);
    EXPECT_EQ(sow.count, 4);
    EXPECT_EQ(sow.proposed, 4);
    EXPECT_EQ(onlyEntry(week, kToday + 5, WeekTask::Uncover).count, 4);
    EXPECT_EQ(onlyEntry(week, kToday + 6, WeekTask::Light).count, 4);
    EXPECT_EQ(week.total(WeekTask::Sow), 8);
    EXPECT_EQ(week.total(WeekTask::Cut), 0) << "that is after the fourteen days";
}

TEST(Week, SeedIsToBeOrderedAWeekBeforeASowingThatItDoesNotReachTo)
{
    WeekRoom room(40);
    room.repeat(1, 4, kToday + 2, 7);
    room.seed(grams(250));
    const Week week = weekFrom(room.facts);
    // 100 g on days 2 and 9; the third, on day 16, finds 50 g.
    EXPECT_EQ(onlyEntry(week, kToday + 9, WeekTask::Order).name, "Broccoli");
    EXPECT_EQ(onlyEntry(week, kToday + 9, WeekTask::Order).supply, SupplyKind::Seed);
    EXPECT_EQ(week.total(WeekTask::Order), 1);
    room.facts.seed.front().left.reset();
    EXPECT_EQ(weekFrom(room.facts).total(WeekTask::Order), 0) << "what is left is not known";
    EXPECT_EQ(weekFrom(room.facts).proposals[0].seedLeft, std::nullopt);
    room.facts.seed.clear();
    EXPECT_EQ(onlyEntry(weekFrom(room.facts), kToday, WeekTask::Order).name, "Broccoli")
        << "there is none at all";
}

TEST(Week, ASowingGoesToTheFirstDayWithPlacesThroughItsGrowth)
{
    WeekRoom room(5);
    for (int i = 1; i <= 3; ++i) {
        room.grow(i, kSaturdayMorning + -2 * kDay); // cut on day 10
    }
    room.repeat(1, 4, kToday + 2, 30);
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.proposals.size(), 1U);
    const Proposal& moved = week.proposals[0];
    EXPECT_EQ(moved.shift, ProposalShift::Places);
    EXPECT_EQ(moved.freeOnDue, 2);
    EXPECT_EQ(moved.sowAt.date, kToday + 10);
    EXPECT_EQ(moved.freePlaces, 5);
    EXPECT_EQ(onlyEntry(week, kToday + 10, WeekTask::Sow).proposed, 4);
    EXPECT_EQ(week.total(WeekTask::Sow), 4);
}

TEST(Week, WithoutADayThatHasRoomASowingIsSaidAndNotCounted)
{
    WeekRoom room(3);
    room.repeat(1, 4, kToday + 2, 30);
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.proposals.size(), 1U);
    EXPECT_EQ(week.proposals[0].shift, ProposalShift::NoPlaces);
    EXPECT_TRUE(week.proposals[0].standsNowhere());
    EXPECT_EQ(week.total(WeekTask::Sow), 0);
    EXPECT_EQ(week.days[5].freePlaces, 3);
}

TEST(Week, ALaterSowingFindsThePlacesThatAnEarlierOneLeaves)
{
    WeekRoom room(6);
    room.repeat(1, 4, kToday + 3, 30);
    room.repeat(2, 4, kToday + 2, 30);
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.proposals.size(), 2U);
    EXPECT_EQ(week.proposals[0].repeat, RepeatId{2}) << "its day is the earlier one";
    EXPECT_EQ(week.proposals[0].shift, ProposalShift::None);
    EXPECT_EQ(week.proposals[1].shift, ProposalShift::Places);
    EXPECT_EQ(week.proposals[1].sowAt.date, kToday + 14) << "when those are cut";
}

TEST(Week, ADayThatWasLetPassIsProposedForToday)
{
    WeekRoom room(8);
    room.repeat(1, 2, kToday - 3, 14);
    const Week week = weekFrom(room.facts);
    ASSERT_EQ(week.proposals.size(), 2U);
    EXPECT_EQ(week.proposals[0].shift, ProposalShift::Late);
    EXPECT_EQ(week.proposals[0].due, kToday - 3);
    EXPECT_EQ(week.proposals[0].sowAt, kSaturdayMorning);
    EXPECT_EQ(onlyEntry(week, kToday, WeekTask::Sow).proposed, 2);
    room.facts.answered[{1}] = {kToday - 3};
    EXPECT_EQ(weekFrom(room.facts).proposals.size(), 1U);
}

TEST(Week, ASoakIsProposedBeforeTheSowingAndMovesItWhereItIsTooLate)
{
    WeekRoom room(8);
    room.repeat(1, 2, kToday + 3, 30).variety = {2};
    const Week ahead = weekFrom(room.facts);
    ASSERT_EQ(ahead.proposals.size(), 1U);
    EXPECT_EQ(ahead.proposals[0].soakAt, (Moment{kToday + 2, 23 * 60})) << "eight hours before";
    EXPECT_EQ(ahead.proposals[0].sowAt, (Moment{kToday + 3, 7 * 60}));
    EXPECT_EQ(onlyEntry(ahead, kToday + 3, WeekTask::Sow).proposed, 2);
    room.facts.now = {kToday + 3, 20 * 60};
    const Week late = weekFrom(room.facts);
    EXPECT_EQ(late.proposals[0].shift, ProposalShift::Soak);
    EXPECT_EQ(late.proposals[0].sowAt.date, kToday + 4);
}

TEST(Week, PiecesAreWashedOnTheDayOfTheCutAndSownOnTheDayAfter)
{
    WeekRoom room(20);
    room.pieces(3);
    room.facts.pieces[0].needsSanitising = true;
    TrayRecord& tray = room.grow(1, kSaturdayMorning + -2 * kDay);
    tray.medium = room.facts.media.at({2});
    tray.tray.medium = {2};
    tray.tray.piece = PieceId{2};
    room.facts.pieces[1].isInUse = true;
    room.repeat(1, 3, kToday + 4, 60).medium = {2};
    const Week week = weekFrom(room.facts);
    EXPECT_EQ(onlyEntry(week, kToday, WeekTask::Wash).count, 1) << "the one that lies about";
    EXPECT_EQ(onlyEntry(week, kToday + 10, WeekTask::Wash).count, 1);
    ASSERT_EQ(week.proposals.size(), 1U);
    EXPECT_EQ(week.proposals[0].shift, ProposalShift::Pieces);
    EXPECT_EQ(week.proposals[0].sowAt.date, kToday + 11);
    const WeekEntry order = onlyEntry(week, kToday, WeekTask::Order);
    EXPECT_EQ(order.supply, SupplyKind::Pieces);
    EXPECT_EQ(order.name, "Mesh");
    EXPECT_EQ(order.count, 1) << "two of three are there on its day";
}

TEST(Week, ATrialIsSownByItsPlanAndKeepsItsPlaces)
{
    WeekRoom room(10);
    TrialDraft draft;
    draft.trial.code = "T4";
    draft.plan.variety = {1};
    draft.plan.sowOn = kToday + 3;
    draft.plan.sowMinute = 8 * 60;
    draft.plan.traysEach = 4;
    draft.treatments.resize(2);
    draft.treatments[0].medium = {1};
    draft.treatments[1].medium = {1};
    room.facts.plans = {draft};
    room.repeat(1, 3, kToday + 1, 30);
    const Week week = weekFrom(room.facts);
    const WeekEntry sow = onlyEntry(week, kToday + 3, WeekTask::Sow);
    EXPECT_EQ(sow.count, 8);
    EXPECT_EQ(sow.proposed, 0);
    EXPECT_THAT(sow.trials, ElementsAre("T4"));
    EXPECT_EQ(week.days[3].freePlaces, 2);
    ASSERT_EQ(week.proposals.size(), 1U);
    EXPECT_EQ(week.proposals[0].shift, ProposalShift::NoPlaces)
        << "there are ten places on its day, but only two while the trial grows";
}

TEST(Week, NothingIsProposedOfWhatIsRetired)
{
    WeekRoom room(10);
    room.repeat(1, 3, kToday + 1, 7);
    room.facts.media.at({1}).isRetired = true;
    EXPECT_THAT(weekFrom(room.facts).proposals, IsEmpty());
}

TEST(Week, TheSumOfTheDaysIsAskedForAsOneAndNotAddedUp)
{
    WeekRoom room(10);
    const auto due = [&room](std::int64_t id, int daysAgo) {
        room.grow(id, kSaturdayMorning + -daysAgo * kDay);
    };
    due(1, 2);
    due(2, 2);
    due(3, 1);
    std::vector<std::size_t> asked;
    room.facts.forecaster = [&asked](const std::vector<CutLot>& lots) {
        asked.push_back(lots.size());
        ExpectedGrams grams;
        grams.mean = plumule::grams(static_cast<double>(lots.size()));
        return std::optional(grams);
    };
    const Week week = weekFrom(room.facts);
    EXPECT_THAT(asked, ElementsAre(1U, 1U, 2U)) << "each day, then all of them at once";
    EXPECT_EQ(week.days[10].expected->mean, grams(1));
    EXPECT_EQ(week.expected->mean, grams(2));
    EXPECT_FALSE(week.days[0].expected);
}

} // namespace
} // namespace plumule
