#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/room/room_reason.h"
#include "tests/support/told.h"

namespace plumule {
namespace {

class RoomEntriesTest : public JournalTest
{
protected:
    RoomLayout layout() { return journal->room().layout().value(); }

    TrayId sowAt(PlaceId place)
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Radish");
        draft.medium = mediumNamed("Coir mix");
        draft.places = {place};
        draft.at = clock.now();
        const auto sown = journal->trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        return sown ? sown->front() : TrayId{};
    }
};

TEST_F(RoomEntriesTest, ANewJournalHasTheRoomOfItsPlan)
{
    const RoomLayout room = layout();
    EXPECT_EQ(room.room.name, "Test room");
    ASSERT_EQ(room.racks.size(), 2U);
    EXPECT_EQ(room.racks[1].name, "B");
    EXPECT_EQ(room.shelves.size(), 4U);
    EXPECT_EQ(room.places.size(), 12U);
    EXPECT_EQ(journal->room().freeSpots()->size(), 12U);
    EXPECT_FALSE(journal->nextUndo()) << "the beginning is no intention";
}

TEST_F(RoomEntriesTest, ChangesTheRoomAndTidiesItsName)
{
    Room room = layout().room;
    room.name = "  Cellar ";
    room.morningMinute = 6 * 60;
    room.units = UnitSystem::UsCustomary;
    expectUndoable([&] { return journal->room().changeRoom(room); });
    EXPECT_EQ(layout().room.name, "Cellar");
    EXPECT_EQ(layout().room.units, UnitSystem::UsCustomary);
    EXPECT_EQ(journal->nextUndo()->intention, "room.change");
    EXPECT_EQ(journal->nextUndo()->subject, "Cellar");
}

TEST_F(RoomEntriesTest, RefusesARoomWhoseMorningIsAfterItsEvening)
{
    Room room = layout().room;
    std::swap(room.morningMinute, room.eveningMinute);
    expectRefused(ErrorKind::Invalid, RoomReason::RoundTimes,
                  [&] { return journal->room().changeRoom(room); });
}

TEST_F(RoomEntriesTest, AddsARackOfEqualShelves)
{
    expectUndoable([&] { return journal->room().addRack("C", 3, 2); });
    EXPECT_EQ(layout().racks.back().name, "C");
    EXPECT_EQ(layout().places.size(), 18U);
    EXPECT_EQ(layout().spots().back().shelf, "3");
}

TEST_F(RoomEntriesTest, RefusesARackWithoutANameOrWithATakenOne)
{
    expectRefused(ErrorKind::Missing, RoomReason::RackNameMissing,
                  [&] { return journal->room().addRack(" ", 1, 1); });
    expectRefused(ErrorKind::Duplicate, RoomReason::RackNameTaken,
                  [&] { return journal->room().addRack("a ", 1, 1); });
    expectRefused(ErrorKind::Invalid, RoomReason::ShelfCount,
                  [&] { return journal->room().addRack("C", -1, 1); });
    expectRefused(ErrorKind::Invalid, RoomReason::PlaceCount,
                  [&] { return journal->room().addRack("C", 1, 101); });
}

TEST_F(RoomEntriesTest, RacksAreRenamedAndReordered)
{
    Rack rack = layout().racks[1];
    rack.name = "North";
    rack.position = -1;
    expectUndoable([&] { return journal->room().changeRack(rack); });
    EXPECT_EQ(layout().spots().front().rack, "North");
    rack.name = "A";
    expectRefused(ErrorKind::Duplicate, RoomReason::RackNameTaken,
                  [&] { return journal->room().changeRack(rack); });
    rack.id = {99};
    expectRefused(ErrorKind::NotFound, RoomReason::RackUnknown,
                  [&] { return journal->room().changeRack(rack); });
}

TEST_F(RoomEntriesTest, AnUnusedRackIsRemovedWithItsShelves)
{
    const RackId rack = layout().racks[1].id;
    expectUndoable([&] { return journal->room().removeRack(rack); });
    EXPECT_EQ(layout().racks.size(), 1U);
    EXPECT_EQ(layout().places.size(), 6U);
    expectRefused(ErrorKind::NotFound, RoomReason::RackUnknown,
                  [&] { return journal->room().removeRack(rack); });
}

TEST_F(RoomEntriesTest, WhatTraysHaveStoodOnStays)
{
    const Spot spot = layout().spots().front();
    const Shelf shelf = layout().shelves.front();
    const TrayId tray = sowAt(spot.place);
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now() + 60));
    expectRefused(ErrorKind::InUse, RoomReason::RackInUse,
                  [&] { return journal->room().removeRack(spot.rackId); });
    expectRefused(ErrorKind::InUse, RoomReason::ShelfInUse,
                  [&] { return journal->room().removeShelf(spot.shelfId); });
    expectRefused(ErrorKind::InUse, RoomReason::PlaceInUse, [&] {
        return journal->room().changeRoom(layout().room, {{shelf, 0}});
    });
    EXPECT_TRUE(journal->room().changeRoom(layout().room, {{shelf, 1}})) << "the unused end may go";
}

TEST_F(RoomEntriesTest, AGrowingTrayTakesItsPlace)
{
    const Spot spot = layout().spots().at(4);
    sowAt(spot.place);
    const auto free = journal->room().freeSpots().value();
    EXPECT_EQ(free.size(), 11U);
    for (const Spot& other : free) {
        EXPECT_NE(other.place, spot.place);
    }
}

TEST_F(RoomEntriesTest, AddsAShelfToARack)
{
    const RackId rack = layout().racks[0].id;
    expectUndoable([&] { return journal->room().addShelf(rack, "top", 5); });
    EXPECT_EQ(layout().placesOn(layout().shelves.at(2).id), 5);
    EXPECT_EQ(journal->nextUndo()->subject, "A top");
    expectRefused(ErrorKind::Duplicate, RoomReason::ShelfNameTaken,
                  [&] { return journal->room().addShelf(rack, "TOP", 1); });
    expectRefused(ErrorKind::NotFound, RoomReason::RackUnknown,
                  [&] { return journal->room().addShelf({99}, "x", 1); });
}

TEST_F(RoomEntriesTest, LightOfAShelfIsKept)
{
    Shelf shelf = layout().shelves[2];
    shelf.lightMilliwatts = 60'000;
    shelf.lightMinutes = 16 * 60;
    const auto change = [&] { return journal->room().changeRoom(layout().room, {{shelf, 4}}); };
    expectUndoable(change);
    EXPECT_EQ(layout().shelves[2], shelf);
    shelf.lightMinutes = 25 * 60;
    expectRefused(ErrorKind::Invalid, RoomReason::LightMinutes, change);
    shelf.lightMinutes = 0;
    shelf.name = "2";
    expectRefused(ErrorKind::Duplicate, RoomReason::ShelfNameTaken, change);
}

TEST_F(RoomEntriesTest, AnUnusedShelfIsRemoved)
{
    const ShelfId shelf = layout().shelves[1].id;
    expectUndoable([&] { return journal->room().removeShelf(shelf); });
    EXPECT_EQ(layout().places.size(), 9U);
}

TEST_F(RoomEntriesTest, PlacesAreAddedAndTakenAtTheEnd)
{
    const Shelf shelf = layout().shelves[0];
    const auto give = [&](int places) {
        return journal->room().changeRoom(layout().room, {{shelf, places}});
    };
    expectUndoable([&] { return give(5); });
    EXPECT_EQ(layout().placesOn(shelf.id), 5);
    EXPECT_EQ(layout().spots().at(4).number, 5);
    expectUndoable([&] { return give(2); });
    EXPECT_EQ(layout().placesOn(shelf.id), 2);
    expectRefused(ErrorKind::Invalid, RoomReason::PlaceCount, [&] { return give(-1); });
    EXPECT_TRUE(give(2)) << "already so";
}

TEST_F(RoomEntriesTest, TheRoomAndItsShelvesChangeAsOneActOrNotAtAll)
{
    const RoomLayout before = layout();
    Room room = before.room;
    room.name = "Cellar";
    Shelf first = before.shelves[0];
    first.lightMilliwatts = 40'000;
    Shelf second = before.shelves[1];
    second.lightMinutes = 25 * 60;
    expectRefused(ErrorKind::Invalid, RoomReason::LightMinutes, [&] {
        return journal->room().changeRoom(room, {{first, 5}, {second, 3}});
    });
    EXPECT_EQ(layout(), before);
    second.lightMinutes = 16 * 60;
    ASSERT_TRUE(journal->room().changeRoom(room, {{first, 5}, {second, 2}}));
    EXPECT_EQ(layout().room.name, "Cellar");
    EXPECT_EQ(layout().placesOn(first.id), 5);
    EXPECT_EQ(layout().placesOn(second.id), 2);
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(layout(), before);
}

TEST_F(RoomEntriesTest, UndoRefusesWhereATrayWasPutThereSince)
{
    ASSERT_TRUE(journal->room().addRack("C", 1, 1));
    const HistoryId added = journal->nextUndo()->id;
    sowAt(layout().spots().back().place);
    const std::string before = dump();
    const auto undone = journal->undo(added);
    ASSERT_FALSE(undone);
    EXPECT_EQ(static_cast<int>(undone.error().kind), static_cast<int>(ErrorKind::ChangedSince));
    EXPECT_EQ(dump(), before);
}

} // namespace
} // namespace plumule
