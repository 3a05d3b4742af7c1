#include "core/room/free_days.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kFirst = date(2026, 11, 28);

TEST(FreeDays, WhatIsTakenIsFreeAgainOnTheDayItEnds)
{
    FreeDays places(10, kFirst, 20);
    places.take(kFirst + 2, kFirst + 5, 4);
    EXPECT_EQ(places.on(kFirst + 1), 10);
    EXPECT_EQ(places.on(kFirst + 2), 6);
    EXPECT_EQ(places.on(kFirst + 4), 6);
    EXPECT_EQ(places.on(kFirst + 5), 10);
}

TEST(FreeDays, TheFewestOfASpanCounts)
{
    FreeDays places(10, kFirst, 20);
    places.take(kFirst + 4, kFirst + 6, 7);
    EXPECT_EQ(places.through(kFirst, kFirst + 4), 10) << "it ends before";
    EXPECT_EQ(places.through(kFirst, kFirst + 5), 3);
    EXPECT_EQ(places.through(kFirst + 6, kFirst + 9), 10);
    EXPECT_EQ(places.through(kFirst + 4, kFirst + 4), 3) << "at least its first day";
}

TEST(FreeDays, DaysBeyondItsEndAreAsItsLast)
{
    FreeDays places(2, kFirst, 5);
    places.take(kFirst - 3, kFirst + 100, 3);
    EXPECT_EQ(places.on(kFirst + 50), -1) << "more is taken than there is";
    EXPECT_EQ(places.through(kFirst + 3, kFirst + 90), -1);
    EXPECT_EQ(places.on(kFirst - 1), -1);
}

} // namespace
} // namespace plumule
