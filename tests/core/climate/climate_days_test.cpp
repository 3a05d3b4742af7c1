#include "tests/core/climate/climate_samples.h"

#include "core/climate/climate_days.h"
#include "core/climate/climate_sums.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

// A lamp of 200 µmol/m²/s for 14 hours of the day, the rest dark.
std::vector<ClimateHour> litDay(Date on, int hours = 24)
{
    auto day = steadyDay(on, 20, 60, hours);
    for (ClimateHour& hour : day) {
        hour.of(Measure::Light) = steady(hour.hour >= 6 && hour.hour < 20 ? 200 : 0);
    }
    return day;
}

TEST(ClimateDays, HaveTheMeanOfTheirHoursWithTheLeastAndGreatestReading)
{
    auto hours = steadyDay(kDay, 20, 60);
    for (int hour = 0; hour < 12; ++hour) {
        hours[static_cast<std::size_t>(hour)].of(Measure::Temperature) =
            HourReadings{12, 22'000, 18'500, 23'100};
    }
    const auto days = daysOf(hours, std::nullopt);
    ASSERT_EQ(days.size(), 1U);
    EXPECT_EQ(days[0].on, kDay);
    EXPECT_EQ(days[0].hours, 24);
    EXPECT_EQ(days[0].temperature, (DayMean{21, 18.5, 23.1}));
    EXPECT_EQ(days[0].humidity, (DayMean{60, 60, 60}));
    EXPECT_NEAR(*days[0].vpd, (vapourPressureDeficit(20, 60) + vapourPressureDeficit(22, 60)) / 2,
                1e-12);
    EXPECT_FALSE(days[0].dli);
    EXPECT_FALSE(days[0].lux);
}

// The deficit is worked out of the hour's means. Within an hour the air moves by little: even half
// an hour at 19 and half at 21 °C make a difference of 0.002 kPa.
TEST(ClimateDays, LoseNextToNothingByHoursMeans)
{
    const double exact = (vapourPressureDeficit(19, 60) + vapourPressureDeficit(21, 60)) / 2;
    EXPECT_NEAR(vapourPressureDeficit(20, 60), exact, 0.002);
}

TEST(ClimateDays, HaveNoMeanOfTooFewHours)
{
    const auto enough = daysOf(steadyDay(kDay, 20, 60, kHoursForMean), std::nullopt);
    EXPECT_TRUE(enough[0].temperature);
    EXPECT_TRUE(enough[0].vpd);
    const auto few = daysOf(steadyDay(kDay, 20, 60, kHoursForMean - 1), std::nullopt);
    ASSERT_EQ(few.size(), 1U);
    EXPECT_EQ(few[0].hours, kHoursForMean - 1);
    EXPECT_FALSE(few[0].temperature);
    EXPECT_FALSE(few[0].humidity);
    EXPECT_FALSE(few[0].vpd);
}

TEST(ClimateDays, HaveNoDeficitWhereOneOfTheTwoIsMissing)
{
    auto hours = steadyDay(kDay, 20, 60);
    for (int hour = 0; hour < 7; ++hour) {
        hours[static_cast<std::size_t>(hour)].of(Measure::Humidity).reset();
    }
    const ClimateDay day = daysOf(hours, std::nullopt).at(0);
    EXPECT_TRUE(day.temperature);
    EXPECT_FALSE(day.humidity);
    EXPECT_FALSE(day.vpd);
}

TEST(ClimateDays, AddTheirLightUpWhereAllButOneHourIsKnown)
{
    EXPECT_NEAR(*daysOf(litDay(kDay), LightUnit::Ppfd).at(0).dli, dailyLight(200, 14), 1e-9);
    EXPECT_TRUE(daysOf(litDay(kDay, 23), LightUnit::Ppfd).at(0).dli);
    EXPECT_FALSE(daysOf(litDay(kDay, 22), LightUnit::Ppfd).at(0).dli);
}

TEST(ClimateDays, NeverTurnLuxIntoLightOfPlants)
{
    const ClimateDay day = daysOf(litDay(kDay), LightUnit::Lux).at(0);
    EXPECT_FALSE(day.dli);
    EXPECT_NEAR(*day.lux, 200.0 * 14 / 24, 1e-9);
}

ClimateDay dayWith(double celsius)
{
    ClimateDay day;
    day.on = kDay;
    day.hours = 24;
    day.temperature = DayMean{celsius, celsius, celsius};
    return day;
}

class NearestLogger : public testing::Test
{
protected:
    NearestLogger()
    {
        add({{1}, "room", {}, {}, {}}, 19);
        add({{2}, "rack", RackId{1}, {}, {}}, 20);
        add({{3}, "shelf", {}, ShelfId{11}, {}}, 21);
    }
    void add(const ClimateLogger& logger, double celsius)
    {
        climate.loggers.push_back(logger);
        climate.days[logger.id][kDay] = dayWith(celsius);
    }
    [[nodiscard]] double at(std::optional<ShelfId> shelf) const
    {
        return climateAt(climate, layout, shelf, kDay).temperature->mean;
    }
    RoomLayout layout = twoRacks();
    RoomClimate climate;
};

TEST_F(NearestLogger, IsTheShelfsElseTheRacksElseTheRooms)
{
    EXPECT_EQ(at(ShelfId{11}), 21);
    EXPECT_EQ(at(ShelfId{12}), 20);
    EXPECT_EQ(at(ShelfId{21}), 19);
    EXPECT_EQ(at(std::nullopt), 19);
}

TEST_F(NearestLogger, LeavesWhatItDoesNotKnowToTheNext)
{
    climate.days[ClimateLoggerId{3}][kDay].temperature.reset();
    climate.days[ClimateLoggerId{3}][kDay].vpd = 0.9;
    const ClimateDay day = climateAt(climate, layout, ShelfId{11}, kDay);
    EXPECT_EQ(day.temperature->mean, 20);
    EXPECT_EQ(day.vpd, 0.9);
    climate.days[ClimateLoggerId{2}].clear();
    EXPECT_EQ(at(ShelfId{11}), 19);
}

TEST_F(NearestLogger, TellsNoLightOfElsewhere)
{
    climate.days[ClimateLoggerId{1}][kDay].dli = 30;
    EXPECT_FALSE(climateAt(climate, layout, ShelfId{11}, kDay).dli);
    climate.days[ClimateLoggerId{2}][kDay].dli = 10;
    EXPECT_EQ(climateAt(climate, layout, ShelfId{11}, kDay).dli, 10);
    EXPECT_FALSE(climateAt(climate, layout, ShelfId{21}, kDay).dli);
}

TEST_F(NearestLogger, LeavesTheLightToTheLampWhereNoneMeasuredIt)
{
    climate.lampPpfd[ShelfId{21}] = 150;
    const ClimateDay day = climateAt(climate, layout, ShelfId{21}, kDay);
    EXPECT_NEAR(*day.dli, 150 * 14 * 0.0036, 1e-12);
    EXPECT_TRUE(day.isLightOfLamp);
    climate.days[ClimateLoggerId{3}][kDay].dli = 10;
    climate.lampPpfd[ShelfId{11}] = 150;
    EXPECT_EQ(climateAt(climate, layout, ShelfId{11}, kDay).dli, 10);
    layout.shelves[2].lightMinutes.reset();
    EXPECT_FALSE(climateAt(climate, layout, ShelfId{21}, kDay).dli);
}

TEST_F(NearestLogger, KnowsATraysDaysOnlyWhereItWasInLight)
{
    climate.lampPpfd[ShelfId{11}] = 150;
    const std::vector<TrayDay> days = {{kDay, ShelfId{11}, false}, {kDay, ShelfId{11}, true}};
    const auto told = climateOf(climate, layout, days);
    EXPECT_FALSE(told[0].dli);
    EXPECT_TRUE(told[1].dli);
    EXPECT_TRUE(told[0].temperature);
}

TEST(GrowthClimateTest, NeedsThreeQuartersOfTheDays)
{
    std::vector<ClimateDay> days(4);
    days[0] = dayWith(20);
    days[1] = dayWith(22);
    EXPECT_EQ(growthClimate(days, 0), GrowthClimate{});
    days[2] = dayWith(24);
    EXPECT_EQ(growthClimate(days, 0).temperature, 22);
    days[3].dli = 9;
    EXPECT_EQ(growthClimate(days, 1).dli, 9);
    EXPECT_FALSE(growthClimate(days, 2).dli);
    EXPECT_FALSE(growthClimate(days, 1).vpd);
    EXPECT_EQ(growthClimate({}, 0), GrowthClimate{});
}

} // namespace
} // namespace plumule
