#include "core/cost/tray_use.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kDay = date(2026, 3, 2);

const std::vector<Place> kPlaces = {{{1}, {10}, 1}, {{2}, {10}, 2}, {{3}, {20}, 1}};

Stay stayOn(PlaceId place, int from, std::optional<int> to)
{
    Stay stay;
    stay.place = place;
    stay.fromOn = kDay + from;
    if (to) {
        stay.toOn = kDay + *to;
        stay.toMinute = 0;
    }
    return stay;
}

LightStage lightFrom(std::optional<int> day)
{
    LightStage light{true, true, std::nullopt};
    if (day) {
        light.start = Moment{kDay + *day, 0};
    }
    return light;
}

using Times = std::vector<LitTime>;

TEST(LitTimes, AreCountedShelfByShelfFromTheStartOfLight)
{
    const auto times =
        litTimes(TrayState::Harvested, lightFrom(4),
                 {stayOn({1}, 0, 6), stayOn({3}, 6, std::nullopt)}, {kDay + 12, 0}, kPlaces);
    EXPECT_EQ(times, (Times{{{10}, 2 * kMinutesPerDay}, {{20}, 6 * kMinutesPerDay}}));
}

TEST(LitTimes, OffTheRacksAreNotLit)
{
    const auto times = litTimes(TrayState::Harvested, lightFrom(4),
                                {stayOn({1}, 0, 5), stayOn({2}, 7, 8)}, {kDay + 12, 0}, kPlaces);
    EXPECT_EQ(times, (Times{{{10}, kMinutesPerDay}, {{10}, kMinutesPerDay}}));
}

TEST(LitTimes, EndWithTheTrayThoughItsStayWasClosedLater)
{
    const auto times =
        litTimes(TrayState::Discarded, lightFrom(4), {stayOn({1}, 0, 20)}, {kDay + 5, 60}, kPlaces);
    EXPECT_EQ(times, (Times{{{10}, kMinutesPerDay + 60}}));
}

TEST(LitTimes, AreNoneAtAllBeforeTheLightBegins)
{
    const std::vector<Stay> stays = {stayOn({1}, 0, std::nullopt)};
    const Moment until{kDay + 3, 0};
    EXPECT_EQ(litTimes(TrayState::Growing, lightFrom({}), stays, until, kPlaces), Times());
    EXPECT_EQ(litTimes(TrayState::Discarded, lightFrom({}), stays, until, kPlaces), Times());
    const LightStage inTheDark{true, false, std::nullopt};
    EXPECT_EQ(litTimes(TrayState::Harvested, inTheDark, stays, until, kPlaces), Times());
}

TEST(LitTimes, AreUnknownWhereTheRecordIsIncomplete)
{
    const std::vector<Stay> stays = {stayOn({1}, 0, std::nullopt)};
    const Moment until{kDay + 12, 0};
    EXPECT_EQ(litTimes(TrayState::Harvested, lightFrom({}), stays, until, kPlaces), std::nullopt);
    EXPECT_EQ(litTimes(TrayState::Harvested, LightStage(), stays, until, kPlaces), std::nullopt);
    EXPECT_EQ(litTimes(TrayState::Harvested, lightFrom(4), {}, until, kPlaces), std::nullopt);
}

} // namespace
} // namespace plumule
