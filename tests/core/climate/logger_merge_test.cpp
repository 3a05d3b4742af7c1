#include "tests/core/climate/climate_samples.h"

#include "core/climate/logger_merge.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Readings of some minutes of an hour.
ClimateHour part(int first, int last, const HourReadings& temperature)
{
    ClimateHour hour;
    hour.on = kDay;
    hour.hour = 7;
    hour.firstMinute = first;
    hour.lastMinute = last;
    hour.of(Measure::Temperature) = temperature;
    return hour;
}

ClimateHour stored(ClimateHour hour)
{
    hour.id = {5};
    return hour;
}

TEST(HourMergeTest, AddsHoursThatAreNew)
{
    const auto day = steadyDay(kDay, 20, 60);
    const HourMerge merge = mergeHours({}, day);
    EXPECT_EQ(merge.added, day);
    EXPECT_TRUE(merge.changed.empty());
}

TEST(HourMergeTest, FindsAFileThatWasBroughtInBefore)
{
    const auto day = steadyDay(kDay, 20, 60);
    const HourMerge merge = mergeHours(day, day);
    EXPECT_TRUE(merge.isEmpty());
    EXPECT_EQ(merge.same, 24);
}

TEST(HourMergeTest, JoinsTheTwoHalvesOfAnHour)
{
    const auto first = stored(part(0, 25, {6, 20'000, 19'000, 21'000}));
    const auto second = part(30, 55, {3, 23'000, 22'000, 24'000});
    const HourMerge merge = mergeHours({first}, {second});
    ASSERT_EQ(merge.changed.size(), 1U);
    EXPECT_EQ(merge.joined, 1);
    EXPECT_EQ(merge.changed[0].id, first.id);
    EXPECT_EQ(merge.changed[0].firstMinute, 0);
    EXPECT_EQ(merge.changed[0].lastMinute, 55);
    EXPECT_EQ(merge.changed[0].of(Measure::Temperature), (HourReadings{9, 21'000, 19'000, 24'000}));
}

TEST(HourMergeTest, TakesTheFullerHourInPlaceOfItsPart)
{
    const auto partly = part(0, 25, {6, 20'000, 19'000, 21'000});
    const auto whole = part(0, 55, {12, 20'500, 19'000, 22'000});
    const HourMerge fuller = mergeHours({stored(partly)}, {whole});
    EXPECT_EQ(fuller.fuller, 1);
    EXPECT_EQ(fuller.changed.at(0).of(Measure::Temperature), whole.of(Measure::Temperature));
    // The other way round nothing is new.
    const HourMerge less = mergeHours({stored(whole)}, {partly});
    EXPECT_EQ(less.same, 1);
    EXPECT_TRUE(less.isEmpty());
}

TEST(HourMergeTest, LeavesWhatIsStoredWhereTheFileTellsOtherwise)
{
    const auto one = stored(part(0, 55, {12, 20'000, 19'000, 21'000}));
    for (const ClimateHour& other :
         {part(0, 55, {12, 20'001, 19'000, 21'000}), part(0, 55, {6, 24'000, 23'000, 25'000}),
          part(20, 59, {9, 20'000, 19'000, 21'000})}) {
        const HourMerge merge = mergeHours({one}, {other});
        EXPECT_EQ(merge.unlike, 1);
        EXPECT_TRUE(merge.isEmpty());
    }
}

TEST(HourMergeTest, AddsAMeasureThatWasNotBroughtInBefore)
{
    auto dry = stored(part(0, 55, {12, 20'000, 19'000, 21'000}));
    auto both = part(0, 55, {12, 20'000, 19'000, 21'000});
    both.of(Measure::Humidity) = steady(60);
    const HourMerge merge = mergeHours({dry}, {both});
    EXPECT_EQ(merge.joined, 1);
    EXPECT_EQ(merge.changed.at(0).of(Measure::Humidity), steady(60));
    EXPECT_EQ(merge.changed.at(0).of(Measure::Temperature), dry.of(Measure::Temperature));
}

TEST(HourMergeTest, WalksThroughHoursThatInterleave)
{
    auto old = steadyDay(kDay, 20, 60, 12);
    auto fresh = steadyDay(kDay, 20, 60, 24);
    fresh.erase(fresh.begin(), fresh.begin() + 6);
    const HourMerge merge = mergeHours(old, fresh);
    EXPECT_EQ(merge.same, 6);
    EXPECT_EQ(merge.added.size(), 12U);
}

} // namespace
} // namespace plumule
