#include "core/journal/room/room_entries.h"
#include "core/room/room_repository.h"

#include "tests/core/storage/store_fixture.h"

namespace plumule {
namespace {

class RoomRepositoryTest : public StoreTest
{
protected:
    RoomRepository rooms{database};
};

TEST_F(RoomRepositoryTest, AJournalWithoutARoomIsDamaged)
{
    EXPECT_THROW((void)rooms.room(), StorageFailure);
}

TEST_F(RoomRepositoryTest, KeepsTheRoomExactly)
{
    Room room;
    room.name = "Cellar";
    room.units = UnitSystem::UsCustomary;
    room.currency = "SEK";
    room.morningMinute = 6 * 60 + 15;
    room.eveningMinute = 19 * 60;
    room.trayLength = inches(20);
    rooms.insert(room);
    EXPECT_EQ(rooms.room(), room);
    room.name = "Loft";
    rooms.update(room);
    EXPECT_EQ(rooms.room(), room);
}

TEST_F(RoomRepositoryTest, GivesTheLayoutInWalkingOrder)
{
    Room room;
    rooms.insert(room);
    const Rack a = rooms.addRack("A", 2, 2);
    const Rack b = rooms.addRack("B", 1, 1);
    Rack first = b;
    first.position = -1;
    rooms.update(first);
    const RoomLayout layout = rooms.layout();
    ASSERT_EQ(layout.racks.size(), 2U);
    EXPECT_EQ(layout.racks.front().id, b.id);
    ASSERT_EQ(layout.shelves.size(), 3U);
    EXPECT_EQ(layout.shelves.front().rack, b.id);
    const auto spots = layout.spots();
    ASSERT_EQ(spots.size(), 5U);
    EXPECT_EQ(spots.front().rack, "B");
    EXPECT_EQ(spots.back().shelf, "2");
    for (std::size_t i = 0; i < spots.size(); ++i) {
        EXPECT_EQ(layout.places[i].id, spots[i].place);
    }
    EXPECT_EQ(rooms.find(a.id)->name, "A");
}

TEST_F(RoomRepositoryTest, NewShelvesComeAfterTheLast)
{
    const Rack rack = rooms.addRack("A", 2, 0);
    const Shelf added = rooms.addShelf(rack.id, "top", 3);
    EXPECT_EQ(rooms.shelves(rack.id).back(), added);
    EXPECT_EQ(rooms.places(added.id).size(), 3U);
    EXPECT_EQ(rooms.places(added.id).back().number, 3);
}

TEST_F(RoomRepositoryTest, KeepsTheLightOfAShelfAndItsAbsence)
{
    const Rack rack = rooms.addRack("A", 1, 1);
    Shelf shelf = rooms.shelves(rack.id).front();
    EXPECT_FALSE(shelf.lightMilliwatts.has_value());
    shelf.lightMilliwatts = 72'500;
    shelf.lightMinutes = 16 * 60;
    rooms.update(shelf);
    EXPECT_EQ(rooms.find(shelf.id), shelf);
}

TEST_F(RoomRepositoryTest, ARackGoesWithAllThatStandsInIt)
{
    const Rack rack = rooms.addRack("A", 2, 3);
    rooms.addRack("B", 1, 1);
    rooms.remove(rack.id);
    EXPECT_FALSE(rooms.find(rack.id));
    EXPECT_EQ(database.scalar("SELECT count(*) FROM shelf"), 1);
    EXPECT_EQ(database.scalar("SELECT count(*) FROM place"), 1);
}

TEST_F(RoomRepositoryTest, AnOpenStayTakesAPlaceAndAClosedOneLeavesItUsed)
{
    Room room;
    rooms.insert(room);
    const Rack rack = rooms.addRack("A", 1, 3);
    const auto places = rooms.places(rooms.shelves(rack.id).front().id);
    database.execute("INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0)");
    database.execute("INSERT INTO medium VALUES (1, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', "
                     "'', 0)");
    storeTray("CR001", 1, 1, ", sown_on, state", ", '2026-03-01', 'growing'");
    const auto tray = database.scalar("SELECT id FROM tray");
    database
        .prepare("INSERT INTO stay VALUES (1, ?1, ?2, '2026-03-01', 480, NULL, NULL), "
                 "(2, ?1, ?3, '2026-02-01', 480, '2026-03-01', 480)")
        .bind(tray, places[0].id, places[1].id)
        .run();
    std::vector<int> free;
    for (const Spot& spot : rooms.freeSpots()) {
        free.push_back(spot.number);
    }
    EXPECT_EQ(free, (std::vector<int>{2, 3}));
    EXPECT_TRUE(rooms.wasUsed(places[0].id));
    EXPECT_TRUE(rooms.wasUsed(places[1].id));
    EXPECT_FALSE(rooms.wasUsed(places[2].id));
    EXPECT_TRUE(rooms.wasUsed(rack.id));
}

} // namespace
} // namespace plumule
