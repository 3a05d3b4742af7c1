#include "core/room/room_rules.h"

#include "core/room/room_reason.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(RoomRules, SlotsAndUnitsSurviveTheirText)
{
    for (const Slot slot : {Slot::Morning, Slot::Evening}) {
        Slot read{};
        EXPECT_TRUE(fromText(toText(slot), read));
        EXPECT_EQ(read, slot);
    }
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        UnitSystem read{};
        EXPECT_TRUE(fromText(toText(units), read));
        EXPECT_EQ(read, units);
    }
    Slot slot{};
    EXPECT_FALSE(fromText("noon", slot));
}

TEST(RoomRules, TheEveningRoundBeginsHalfWayBetweenTheTimes)
{
    Room room;
    room.morningMinute = 7 * 60;
    room.eveningMinute = 18 * 60;
    EXPECT_EQ(slotAt(room, 0), Slot::Morning);
    EXPECT_EQ(slotAt(room, 12 * 60 + 29), Slot::Morning);
    EXPECT_EQ(slotAt(room, 12 * 60 + 30), Slot::Evening);
    EXPECT_EQ(slotAt(room, 23 * 60 + 59), Slot::Evening);
}

// Nominal 10 x 20 in is 254 x 508 mm, 0.129032 m2 (units.csv).
TEST(RoomRules, ATrayHasTheNominalArea)
{
    EXPECT_NEAR(Room{}.trayArea(), 0.129032, 1e-9);
}

RoomLayout layoutInDisorder()
{
    RoomLayout layout;
    layout.racks = {{{1}, "A", 0}, {{2}, "B", 1}};
    layout.shelves = {
        {{12}, {1}, "2", 0, {}, {}}, {{11}, {1}, "1", 1, {}, {}}, {{21}, {2}, "1", 0, {}, {}}};
    layout.places = {{{211}, {21}, 1}, {{112}, {11}, 2}, {{111}, {11}, 1}, {{121}, {12}, 1}};
    return layout;
}

TEST(RoomRules, SpotsAreWalkedRackByRackShelfByShelf)
{
    const auto spots = layoutInDisorder().spots();
    ASSERT_EQ(spots.size(), 4U);
    std::string walked;
    for (const Spot& spot : spots) {
        walked += spot.rack + spot.shelf + "." + std::to_string(spot.number) + "#" +
                  std::to_string(spot.rank) + " ";
    }
    EXPECT_EQ(walked, "A2.1#0 A1.1#1 A1.2#2 B1.1#3 ");
    EXPECT_EQ(spots[1].place, PlaceId{111});
    EXPECT_EQ(spots[3].rackId, RackId{2});
}

TEST(RoomRules, CountsThePlacesOfAShelf)
{
    EXPECT_EQ(layoutInDisorder().placesOn({11}), 2);
    EXPECT_EQ(layoutInDisorder().placesOn({99}), 0);
}

Room soundRoom()
{
    Room room;
    room.name = "Cellar";
    return room;
}

Reason faultOf(const Done& done)
{
    return done ? Reason() : done.error().reason;
}

TEST(RoomRules, ARoomNeedsANameTimesInOrderAndATrayWithASize)
{
    EXPECT_TRUE(checkRoom(soundRoom()));
    Room room = soundRoom();
    room.name = "  ";
    EXPECT_EQ(faultOf(checkRoom(room)), RoomReason::NameMissing);
    room = soundRoom();
    room.currency.clear();
    EXPECT_EQ(faultOf(checkRoom(room)), RoomReason::CurrencyMissing);
    room = soundRoom();
    room.morningMinute = room.eveningMinute;
    EXPECT_EQ(faultOf(checkRoom(room)), RoomReason::RoundTimes);
    room = soundRoom();
    room.eveningMinute = kMinutesPerDay;
    EXPECT_EQ(faultOf(checkRoom(room)), RoomReason::RoundTimes);
    room = soundRoom();
    room.trayWidth = Length{};
    EXPECT_EQ(faultOf(checkRoom(room)), RoomReason::TraySize);
}

TEST(RoomRules, LightIsNotNegativeNorLongerThanADay)
{
    Shelf shelf;
    EXPECT_TRUE(checkLight(shelf));
    shelf.lightMilliwatts = 60'000;
    shelf.lightMinutes = kMinutesPerDay;
    EXPECT_TRUE(checkLight(shelf));
    shelf.lightMinutes = kMinutesPerDay + 1;
    EXPECT_EQ(faultOf(checkLight(shelf)), RoomReason::LightMinutes);
    shelf.lightMilliwatts = -1;
    EXPECT_EQ(faultOf(checkLight(shelf)), RoomReason::LightPower);
}

TEST(RoomRules, CountsHaveLimits)
{
    EXPECT_TRUE(checkShelfCount(0));
    EXPECT_FALSE(checkShelfCount(-1));
    EXPECT_FALSE(checkShelfCount(kMostShelves + 1));
    EXPECT_TRUE(checkPlaceCount(kMostPlaces));
    EXPECT_FALSE(checkPlaceCount(-1));
}

TEST(RoomRules, RacksAreLetteredOnAndOn)
{
    EXPECT_EQ(rackNameAt(0), "A");
    EXPECT_EQ(rackNameAt(25), "Z");
    EXPECT_EQ(rackNameAt(26), "AA");
    EXPECT_EQ(rackNameAt(27), "AB");
    EXPECT_EQ(rackNameAt(26 + 26 * 26), "AAA");
}

TEST(RoomRules, NamesDifferByMoreThanCaseAndBlanks)
{
    EXPECT_TRUE(isSameName(" North ", "north"));
    EXPECT_FALSE(isSameName("North", "North 2"));
    EXPECT_TRUE(isSameName("", " "));
}

} // namespace
} // namespace plumule
