#include "core/climate/tray_days.h"

#include "tests/core/climate/climate_samples.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;

TEST(TrayDays, SayWhereItStoodAndWhenItWasInLight)
{
    Tray tray;
    tray.sownOn = kDay;
    Stay first;
    first.place = {111};
    first.fromOn = kDay;
    first.toOn = kDay + 1;
    first.toMinute = 600;
    Stay second;
    second.place = {211};
    second.fromOn = kDay + 1;
    second.fromMinute = 600;
    second.toOn = kDay + 3;
    const auto days =
        trayDays(tray, kDay + 4, {second, first}, twoRacks().places, Moment{kDay + 1, 480});
    ASSERT_EQ(days.size(), 5U);
    std::vector<std::optional<ShelfId>> shelves;
    std::vector<bool> lit;
    for (const TrayDay& day : days) {
        shelves.push_back(day.shelf);
        lit.push_back(day.isInLight);
    }
    EXPECT_THAT(shelves,
                ElementsAre(ShelfId{11}, ShelfId{21}, ShelfId{21}, ShelfId{21}, std::nullopt));
    EXPECT_THAT(lit, ElementsAre(false, false, true, true, false));
}

TEST(TrayDays, EndWhereATrayWasForgotten)
{
    Tray tray;
    tray.sownOn = kDay;
    EXPECT_EQ(trayDays(tray, kDay + 30'000, {}, {}, {}).size(), kMostTrayDays + 1U);
    EXPECT_EQ(trayDays(tray, kDay, {}, {}, {}).size(), 1U);
    EXPECT_TRUE(trayDays(tray, kDay - 1, {}, {}, {}).empty());
}

} // namespace
} // namespace plumule
