#include "tests/core/climate/climate_samples.h"
#include "tests/core/storage/store_fixture.h"

#include "core/climate/climate_repository.h"
#include "core/room/room_repository.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

class ClimateRepositoryTest : public StoreTest
{
protected:
    ClimateRepositoryTest()
    {
        RoomRepository rooms(database);
        rack = rooms.addRack("A", 1, 2);
        shelf = rooms.shelves(rack.id).front().id;
    }
    ClimateLogger logger(const std::string& name, std::optional<ShelfId> at = std::nullopt)
    {
        ClimateLogger made{{}, name, {}, at, {}};
        climate.insert(made);
        return made;
    }
    Rack rack;
    ShelfId shelf;
    ClimateRepository climate{database};
};

TEST_F(ClimateRepositoryTest, GivesHoursBackAsTheyWere)
{
    const ClimateLogger one = logger("one");
    ClimateHour hour = wholeHour(kDay, 7);
    hour.of(Measure::Temperature) = HourReadings{12, -500, -1'200, 21'900};
    hour.of(Measure::Light) = HourReadings{1, 0, 0, 0};
    climate.insert(one.id, hour);
    ASSERT_TRUE(hour.id.isStored());
    EXPECT_THAT(climate.hours({one}, kDay, kDay)[one.id], testing::ElementsAre(hour));
    hour.of(Measure::Temperature).reset();
    hour.of(Measure::Humidity) = steady(55);
    hour.lastMinute = 59;
    climate.update(one.id, hour);
    EXPECT_THAT(climate.hours({one}, kDay, kDay)[one.id], testing::ElementsAre(hour));
    EXPECT_TRUE(climate.hours({one}, kDay + 1, kDay + 9).empty());
    EXPECT_TRUE(climate.hours({}, kDay, kDay).empty());
}

TEST_F(ClimateRepositoryTest, FindsALoggerByItsNameAndPlace)
{
    const ClimateLogger room = logger("one");
    const ClimateLogger onShelf = logger("one", shelf);
    EXPECT_EQ(climate.find({{}, "one", {}, {}, {}})->id, room.id);
    EXPECT_EQ(climate.find({{}, "one", {}, shelf, {}})->id, onShelf.id);
    EXPECT_FALSE(climate.find({{}, "one", rack.id, {}, {}}));
    EXPECT_FALSE(climate.find({{}, "One", {}, {}, {}}));
}

TEST_F(ClimateRepositoryTest, TellsTheDaysOfEveryLogger)
{
    const ClimateLogger one = logger("one");
    const ClimateLogger two = logger("two", shelf);
    for (ClimateHour hour : steadyDay(kDay, 20, 60)) {
        climate.insert(one.id, hour);
    }
    for (ClimateHour hour : steadyDay(kDay + 2, 22, 60)) {
        climate.insert(two.id, hour);
    }
    const RoomClimate told = climate.climate(kDay, kDay + 5);
    EXPECT_EQ(told.loggers.size(), 2U);
    EXPECT_EQ(told.days.at(one.id).at(kDay).temperature->mean, 20);
    EXPECT_EQ(told.days.at(two.id).size(), 1U);
}

TEST_F(ClimateRepositoryTest, KeepsOneLightOfAShelf)
{
    climate.setPpfd(shelf, 180'000);
    climate.setPpfd(shelf, 190'000);
    ASSERT_EQ(climate.ppfds().size(), 1U);
    EXPECT_EQ(climate.climate(kDay, kDay).lampPpfd.at(shelf), 190);
    climate.setPpfd(shelf, std::nullopt);
    climate.setPpfd(shelf, std::nullopt);
    EXPECT_TRUE(climate.ppfds().empty());
}

TEST_F(ClimateRepositoryTest, KeepsAShelfThatALoggerHungAt)
{
    RoomRepository rooms(database);
    EXPECT_FALSE(rooms.wasUsed(shelf));
    const ClimateLogger one = logger("one", shelf);
    EXPECT_TRUE(rooms.wasUsed(shelf));
    EXPECT_TRUE(rooms.wasUsed(rack.id));
}

// A file from elsewhere may hold any whole numbers.
TEST_F(ClimateRepositoryTest, NamesARowThatMakesNoSense)
{
    const ClimateLogger one = logger("one");
    for (const char* fault :
         {"hour = 24", "hour = -1", "first_minute = 56", "last_minute = 60",
          "temperature_readings = 0", "temperature_low_milli = 20001",
          "temperature_mean_milli = NULL", "temperature_readings = 9999999999"}) {
        ClimateHour hour = wholeHour(kDay, 7);
        hour.of(Measure::Temperature) = steady(20);
        climate.insert(one.id, hour);
        database.execute(std::string("UPDATE climate_hour SET ") + fault);
        try {
            (void)climate.hours({one}, kDay, kDay);
            ADD_FAILURE() << fault;
        } catch (const StorageFailure& failure) {
            EXPECT_EQ(static_cast<int>(failure.error().kind), static_cast<int>(ErrorKind::Damaged));
            EXPECT_EQ(failure.error().row->table, "climate_hour") << fault;
        }
        database.execute("DELETE FROM climate_hour");
    }
}

} // namespace
} // namespace plumule
