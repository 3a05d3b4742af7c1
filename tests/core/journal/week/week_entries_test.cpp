#include "core/journal/week/week_entries.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/tray/tray_reason.h"
#include "core/variety/variety_reason.h"
#include "core/week/repeat_rules.h"
#include "core/week/week_reason.h"
#include "tests/core/journal/journal_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

// A room of twelve places on Monday 2 March 2026, 07:30.
class WeekEntriesTest : public JournalTest
{
protected:
    const Date kMonday = date(2026, 3, 2);

    [[nodiscard]] MediumId singleUse()
    {
        const auto media = journal->media().all();
        for (const Medium& medium : *media) {
            if (!medium.isReusable) {
                return medium.id;
            }
        }
        return {};
    }
    [[nodiscard]] MediumId reusable()
    {
        const auto media = journal->media().all();
        for (const Medium& medium : *media) {
            if (medium.isReusable) {
                return medium.id;
            }
        }
        return {};
    }
    [[nodiscard]] Repeat everyMonday(int trays)
    {
        Repeat repeat;
        repeat.variety = varietyNamed("Broccoli");
        repeat.medium = singleUse();
        repeat.trays = trays;
        repeat.weekdays = weekdayBit(0);
        repeat.from = kMonday;
        return repeat;
    }
    RepeatId saved(const Repeat& repeat)
    {
        const auto stored = journal->week().save(repeat);
        EXPECT_TRUE(stored) << (stored ? "" : told(stored.error()));
        return stored ? stored->id : RepeatId();
    }
    [[nodiscard]] std::vector<Proposal> proposals()
    {
        return journal->week().week().value().proposals;
    }
};

TEST_F(WeekEntriesTest, ARepeatingSowingIsKeptChangedAndTakenBack)
{
    expectUndoable([&] { return journal->week().save(everyMonday(4)); });
    auto rows = journal->week().repeats().value();
    ASSERT_THAT(rows, SizeIs(1));
    EXPECT_EQ(rows[0].variety, "Broccoli");
    EXPECT_EQ(rows[0].next, kMonday);
    Repeat changed = rows[0].repeat;
    changed.trays = 6;
    changed.weekdays.reset();
    changed.everyDays = 9;
    changed.until = kMonday + 40;
    expectUndoable([&] { return journal->week().save(changed); });
    EXPECT_EQ(journal->week().repeats().value()[0].repeat, changed);
    EXPECT_TRUE(journal->faults()->empty());
}

TEST_F(WeekEntriesTest, RefusesWhatIsNoRepeatingSowing)
{
    Repeat none = everyMonday(4);
    none.weekdays = 0;
    expectRefused(ErrorKind::Missing, WeekReason::RhythmMissing,
                  [&] { return journal->week().save(none); });
    Repeat strange = everyMonday(4);
    strange.variety = VarietyId{999'999};
    expectRefused(ErrorKind::NotFound, TrayReason::VarietyUnknown,
                  [&] { return journal->week().save(strange); });
    Repeat gone = everyMonday(4);
    gone.id = RepeatId{999'999};
    expectRefused(ErrorKind::NotFound, WeekReason::RepeatUnknown,
                  [&] { return journal->week().save(gone); });
}

TEST_F(WeekEntriesTest, SowsWhatIsProposedAsOneActWithItsAnswer)
{
    const RepeatId repeat = saved(everyMonday(4));
    ASSERT_THAT(proposals(), SizeIs(2));
    expectUndoable([&] { return journal->week().sow(repeat, kMonday); });
    const auto trays = journal->trays().list({}).value();
    ASSERT_THAT(trays, SizeIs(4));
    for (const TrayListRow& row : trays) {
        EXPECT_EQ(row.record.variety, "Broccoli");
        EXPECT_EQ(row.record.tray.medium, singleUse());
        EXPECT_EQ(row.record.tray.sownAt(), clock.now());
        EXPECT_TRUE(row.spot.has_value());
    }
    EXPECT_THAT(journal->room().freeSpots().value(), SizeIs(8));
    ASSERT_THAT(proposals(), SizeIs(1));
    EXPECT_EQ(proposals()[0].due, kMonday + 7);
    expectRefused(ErrorKind::Conflict, WeekReason::DayAnswered,
                  [&] { return journal->week().sow(repeat, kMonday); });
    EXPECT_EQ(journal->nextUndo()->intention, "tray.sow");
}

TEST_F(WeekEntriesTest, SkipsOneDayAndNoOther)
{
    const RepeatId repeat = saved(everyMonday(4));
    expectUndoable([&] { return journal->week().skip(repeat, kMonday); });
    ASSERT_THAT(proposals(), SizeIs(1));
    EXPECT_EQ(proposals()[0].due, kMonday + 7);
    EXPECT_THAT(journal->trays().list({}).value(), IsEmpty());
    expectRefused(ErrorKind::Conflict, WeekReason::DayNotItsOwn,
                  [&] { return journal->week().skip(repeat, kMonday + 1); });
    expectRefused(ErrorKind::NotFound, WeekReason::RepeatUnknown,
                  [&] { return journal->week().skip(RepeatId{999'999}, kMonday); });
}

TEST_F(WeekEntriesTest, OneThatWasAnsweredEndsAndOneThatWasNotIsTakenOut)
{
    const RepeatId kept = saved(everyMonday(2));
    const RepeatId unused = saved(everyMonday(3));
    ASSERT_TRUE(journal->week().sow(kept, kMonday));
    expectUndoable([&] { return journal->week().end(unused); });
    expectUndoable([&] { return journal->week().end(kept); });
    const auto rows = journal->week().repeats().value();
    ASSERT_THAT(rows, SizeIs(1));
    EXPECT_EQ(rows[0].repeat.id, kept);
    EXPECT_EQ(rows[0].next, std::nullopt);
    EXPECT_THAT(proposals(), IsEmpty());
    clock.set({kMonday + 7, 8 * 60});
    EXPECT_THAT(proposals(), IsEmpty());
    expectRefused(ErrorKind::NotFound, WeekReason::RepeatUnknown,
                  [&] { return journal->week().end(unused); });
}

TEST_F(WeekEntriesTest, RefusesToSowWherePlacesAreShort)
{
    const RepeatId repeat = saved(everyMonday(13));
    EXPECT_EQ(proposals()[0].shift, ProposalShift::NoPlaces);
    expectRefused(ErrorKind::Conflict, WeekReason::PlacesShort,
                  [&] { return journal->week().sow(repeat, kMonday); });
}

TEST_F(WeekEntriesTest, SowsOnCleanPiecesAndRefusesWithoutThem)
{
    Repeat onPieces = everyMonday(2);
    onPieces.medium = reusable();
    const RepeatId repeat = saved(onPieces);
    expectRefused(ErrorKind::Conflict, WeekReason::PiecesShort,
                  [&] { return journal->week().sow(repeat, kMonday); });
    ASSERT_TRUE(journal->media().addPieces(reusable(), 2, kMonday));
    ASSERT_TRUE(journal->week().sow(repeat, kMonday));
    const auto trays = journal->trays().list({});
    for (const TrayListRow& row : *trays) {
        EXPECT_TRUE(row.record.tray.piece.has_value());
    }
    EXPECT_TRUE(journal->faults()->empty());
}

TEST_F(WeekEntriesTest, SowsFromTheOldestLotThatReaches)
{
    const VarietyId broccoli = varietyNamed("Broccoli");
    const Mass needed = *journal->varieties().protocol(broccoli)->variety.seedPerTray * 3;
    const auto lot = [&](const char* number, Date bought, Mass mass) {
        SeedLot one;
        one.variety = broccoli;
        one.lotNumber = number;
        one.boughtOn = bought;
        one.bought = mass;
        return journal->varieties().saveLot(one)->id;
    };
    const SeedLotId small = lot("A", kMonday - 90, grams(1));
    const SeedLotId large = lot("B", kMonday - 60, needed * 10);
    const RepeatId repeat = saved(everyMonday(3));
    EXPECT_EQ(proposals()[0].seedLeft, needed * 10 + grams(1));
    ASSERT_TRUE(journal->week().sow(repeat, kMonday));
    const auto trays = journal->trays().list({}).value();
    ASSERT_THAT(trays, SizeIs(3));
    EXPECT_EQ(trays[0].record.tray.seedLot, large);
    EXPECT_NE(trays[0].record.tray.seedLot, small);
}

TEST_F(WeekEntriesTest, WhatARepeatingSowingHangsOnCantBeRemoved)
{
    Variety fresh;
    fresh.name = "Cress, curled";
    fresh.codePrefix = "CC";
    Protocol protocol;
    protocol.variety = fresh;
    ProtocolStage light;
    light.stage = Stage::Light;
    light.lengthMinutes = 6 * kMinutesPerDay;
    protocol.stages = {light};
    const auto stored = journal->varieties().save(protocol);
    ASSERT_TRUE(stored) << told(stored.error());
    Repeat repeat = everyMonday(1);
    repeat.variety = stored->variety.id;
    saved(repeat);
    expectRefused(ErrorKind::InUse, VarietyReason::InUse,
                  [&] { return journal->varieties().remove(stored->variety.id); });
}

} // namespace
} // namespace plumule
