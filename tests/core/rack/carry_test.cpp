#include "core/rack/carry.h"
#include "tests/core/rack/rack_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Trays 1, 2, 4 and 6 stand on the places of their numbers, tray 8 off the racks; 4 is in a trial.
class CarryTest : public ::testing::Test
{
protected:
    void SetUp() override
    {
        RackFacts facts;
        facts.layout = threeShelves();
        facts.today = date(2026, 3, 3);
        for (const int id : {1, 2, 4, 6, 8}) {
            facts.growing.push_back(trayOf(id, broccoli(), inertMat(), {date(2026, 3, 2), 420}));
        }
        facts.growing[2].trialCode = "T5";
        facts.growing[4].place.reset();
        room = racksFrom(facts);
    }
    [[nodiscard]] Carry carried(const std::vector<TrayId>& trays, std::int64_t at) const
    {
        return carryTo(room, trays, PlaceId{at});
    }
    static std::vector<std::optional<PlaceId>> landings(const Carry& carry)
    {
        std::vector<std::optional<PlaceId>> places;
        for (const CarriedTray& each : carry.trays) {
            places.push_back(each.to);
        }
        return places;
    }

    RoomRacks room;
};

using Places = std::vector<std::optional<PlaceId>>;

TEST_F(CarryTest, OneTrayLandsWhereItIsAsked)
{
    const Carry carry = carried({{1}}, 5);
    EXPECT_EQ(carry, (Carry{{{{1}, PlaceId{1}, PlaceId{5}, std::nullopt}}}));
    EXPECT_TRUE(carry.leadsSomewhere());
    EXPECT_FALSE(carry.isAnyInTheWay());
    EXPECT_EQ(putDown(carry), (std::vector<TrayMove>{{{1}, PlaceId{5}}}));
}

TEST_F(CarryTest, WhereItStandsItLeadsNowhere)
{
    EXPECT_FALSE(carried({{1}}, 1).leadsSomewhere());
    EXPECT_TRUE(putDown(carried({{1}}, 1)).empty());
    EXPECT_FALSE(Carry().leadsSomewhere());
}

TEST_F(CarryTest, SeveralKeepTheirDistancesInWalkingOrder)
{
    EXPECT_EQ(landings(carried({{2}, {1}}, 3)), (Places{PlaceId{3}, PlaceId{4}}));
    EXPECT_EQ(landings(carried({{2}, {4}}, 3)), (Places{PlaceId{3}, PlaceId{5}}));
    EXPECT_EQ(landings(carried({{2}, {4}, {2}}, 7)), (Places{PlaceId{5}, PlaceId{7}}))
        << "held back by the last place";
}

TEST_F(CarryTest, ATrayThatMovesAwayItselfIsNotInTheWay)
{
    const Carry carry = carried({{1}, {2}}, 2);
    EXPECT_EQ(landings(carry), (Places{PlaceId{2}, PlaceId{3}}));
    EXPECT_FALSE(carry.isAnyInTheWay());
    EXPECT_EQ(putDown(carry), (std::vector<TrayMove>{{{1}, PlaceId{2}}, {{2}, PlaceId{3}}}));
}

TEST_F(CarryTest, WhatIsInTheWayGoesWhereTheCarriedCameFrom)
{
    const Carry carry = carried({{1}}, 4);
    EXPECT_TRUE(carry.isAnyInTheWay());
    EXPECT_EQ(swapped(carry), (std::vector<TrayMove>{{{1}, PlaceId{4}}, {{4}, PlaceId{1}}}));
    // 1 and 2 onto 3 and 4: 3 is free, and tray 4 gets the first place that they leave.
    EXPECT_EQ(swapped(carried({{1}, {2}}, 3)),
              (std::vector<TrayMove>{{{1}, PlaceId{3}}, {{2}, PlaceId{4}}, {{4}, PlaceId{1}}}));
}

TEST_F(CarryTest, ATrayFromOffTheRacksLandsAfterTheOthersAndSwapsToOffTheRacks)
{
    EXPECT_EQ(landings(carried({{8}, {2}}, 5)), (Places{PlaceId{5}, PlaceId{6}}));
    EXPECT_EQ(carried({{8}, {2}}, 5).trays[1].tray, TrayId{8});
    EXPECT_EQ(swapped(carried({{8}}, 6)),
              (std::vector<TrayMove>{{{8}, PlaceId{6}}, {{6}, std::nullopt}}));
}

TEST_F(CarryTest, UnknownTraysAndPlacesCarryNothing)
{
    EXPECT_TRUE(carried({{99}}, 1).trays.empty());
    EXPECT_TRUE(carried({{1}}, 99).trays.empty());
    EXPECT_TRUE(carried({}, 1).trays.empty());
}

TEST_F(CarryTest, ATrialIsDisturbedWhereItsTrayChangesTheShelf)
{
    EXPECT_TRUE(trialsDisturbed(room, carried({{4}}, 5)).empty()) << "the same shelf";
    EXPECT_EQ(trialsDisturbed(room, carried({{4}}, 7)), (std::vector<std::string>{"T5"}));
    EXPECT_EQ(trialsDisturbed(room, carried({{1}}, 4)), (std::vector<std::string>{"T5"}))
        << "by making way";
    EXPECT_TRUE(trialsDisturbed(room, carried({{1}}, 5)).empty());
}

} // namespace
} // namespace plumule
