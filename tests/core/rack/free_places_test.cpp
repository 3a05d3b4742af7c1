#include "core/rack/free_places.h"

#include <gtest/gtest.h>

#include <numeric>

namespace plumule {
namespace {

const Date kToday = date(2026, 11, 28);

std::vector<int> freeOf(const std::vector<FreeEvening>& evenings)
{
    std::vector<int> free;
    for (const FreeEvening& evening : evenings) {
        free.push_back(evening.free);
    }
    return free;
}

// 32 places of which 26 are taken: four trays are cut today, five tomorrow … as added up by hand.
TEST(FreePlaces, AreFreeFromTheEveningOfTheCut)
{
    std::vector<std::optional<Date>> cuts;
    for (const auto& [days, trays] :
         {std::pair(0, 4), std::pair(2, 3), std::pair(7, 4), std::pair(9, 15)}) {
        cuts.insert(cuts.end(), static_cast<std::size_t>(trays), kToday + days);
    }
    const auto evenings = freeEvenings(32, cuts, {}, kToday, 11);
    EXPECT_EQ(freeOf(evenings), (std::vector<int>{10, 10, 13, 13, 13, 13, 13, 17, 17, 32, 32}));
    EXPECT_EQ(evenings.front().on, kToday);
    EXPECT_EQ(freeEvenings(32, cuts, {}, kToday).size(), 28u);
}

TEST(FreePlaces, ALateCutComesTodayAndOneThatIsNotKnownNever)
{
    const auto evenings = freeEvenings(5, {kToday - 3, std::nullopt, kToday + 1}, {}, kToday, 3);
    EXPECT_EQ(freeOf(evenings), (std::vector<int>{3, 4, 4}));
}

TEST(FreePlaces, PlannedSowingsAreTakenOffUntilTheirCut)
{
    const std::vector<PlannedSowing> planned = {{"T9", kToday + 1, kToday + 3, 2},
                                                {"T10", kToday + 2, kToday + 4, 3}};
    const auto evenings = freeEvenings(4, {kToday + 2}, planned, kToday, 5);
    EXPECT_EQ(evenings, (std::vector<FreeEvening>{{kToday, 3, 0, 0},
                                                  {kToday + 1, 1, 2, 0},
                                                  {kToday + 2, 0, 4, 1},
                                                  {kToday + 3, 1, 3, 0},
                                                  {kToday + 4, 4, 0, 0}}));
}

TEST(FreePlaces, ASowingWhoseDayWentByComesTodayAndIsCutAsMuchLater)
{
    const auto evenings = freeEvenings(4, {}, {{"T9", kToday - 2, kToday, 1}}, kToday, 3);
    EXPECT_EQ(freeOf(evenings), (std::vector<int>{3, 3, 4}));
}

TEST(FreePlaces, WhateverComesNoPlaceIsCountedTwice)
{
    const std::vector<PlannedSowing> planned = {{"a", kToday, kToday + 5, 40}};
    for (const FreeEvening& evening : freeEvenings(6, {kToday + 1, kToday + 3}, planned, kToday)) {
        EXPECT_GE(evening.free, 0);
        EXPECT_LE(evening.free + evening.planned, 6);
    }
    EXPECT_EQ(freeOf(freeEvenings(0, {kToday}, {}, kToday, 2)), (std::vector<int>{0, 0}));
}

TEST(FreePlaces, TheTightestSpellsAreToldInOrderOfTime)
{
    std::vector<FreeEvening> evenings;
    for (const int free : {5, 5, 2, 2, 7, 0, 9, 9}) {
        evenings.push_back(
            {kToday + static_cast<int>(evenings.size()), free, 0, free == 0 ? 3 : 0});
    }
    EXPECT_EQ(
        tightestSpells(evenings, 2),
        (std::vector<FreeSpell>{{kToday + 2, kToday + 3, 2, 0}, {kToday + 5, kToday + 5, 0, 3}}));
    EXPECT_EQ(tightestSpells(evenings, 9).size(), 5u);
    evenings.resize(2);
    EXPECT_TRUE(tightestSpells(evenings, 2).empty()) << "no evening is fuller than another";
}

} // namespace
} // namespace plumule
