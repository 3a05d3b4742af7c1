#include "core/trace/trace.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kMonday = date(2026, 3, 2);

TracedTray traced(const char* code, Date sown, TrayState state, double yield = 0,
                  const char* variety = "Radish")
{
    TracedTray tray;
    tray.tray.code = code;
    tray.tray.sownOn = sown;
    tray.tray.state = state;
    tray.tray.seed = grams(30);
    tray.variety = variety;
    if (yield > 0) {
        tray.cuts.push_back({{}, {}, 1, sown + 9, 500, grams(yield), true, {}});
    }
    return tray;
}

TEST(Trace, GroupsTraysByTheirDayAndVariety)
{
    const auto sowings = sowingsOf({traced("RD003", kMonday + 2, TrayState::Growing),
                                    traced("RD002", kMonday, TrayState::Harvested, 200),
                                    traced("PE001", kMonday, TrayState::Harvested, 300, "Pea"),
                                    traced("RD001", kMonday, TrayState::Discarded)});
    ASSERT_EQ(sowings.size(), 3U);
    EXPECT_EQ(sowings[0].variety, "Pea");
    ASSERT_EQ(sowings[1].trays.size(), 2U);
    EXPECT_EQ(sowings[1].trays[0].tray.code, "RD001");
    EXPECT_EQ(sowings[1].yield(), grams(200));
    EXPECT_EQ(sowings[2].on, kMonday + 2);
}

TEST(Trace, WhatWasSownIsCutThrownAwayOrGrowing)
{
    auto unweighed = traced("RD004", kMonday, TrayState::Growing, 50); // cut once, grows on
    unweighed.tray.seed.reset();
    const TraceSums sums =
        sumsOf(sowingsOf({traced("RD001", kMonday, TrayState::Harvested, 200),
                          traced("RD002", kMonday, TrayState::Discarded), unweighed}));
    EXPECT_EQ(sums, (TraceSums{3, 1, 1, 1, 1, grams(60), grams(250), 0}));
    EXPECT_EQ(sums.sown, sums.cut + sums.thrownAway + sums.growing);
}

constexpr TrayId kTray{7};

Watering given(int day, WaterKind water, std::optional<double> amount)
{
    Watering one;
    one.tray = kTray;
    one.on = kMonday + day;
    one.water = water;
    one.amount = amount ? std::optional(millilitres(*amount)) : std::nullopt;
    return one;
}

WaterReading read(int day, WaterKind water, std::optional<TrayId> tray)
{
    WaterReading one;
    one.on = kMonday + day;
    one.water = water;
    one.tray = tray;
    one.ph = 5.8;
    return one;
}

TEST(Trace, TellsWatersWithTheirReadings)
{
    WaterRecipe recipe;
    recipe.water = WaterKind::Nutrient;
    recipe.concentrate = "Feed";
    const auto waters =
        watersOf(kTray,
                 {given(0, WaterKind::Plain, 30), given(3, WaterKind::Nutrient, 120),
                  given(4, WaterKind::Nutrient, std::nullopt)},
                 {read(0, WaterKind::Nutrient, {}), read(3, WaterKind::Nutrient, {}),
                  read(9, WaterKind::Nutrient, kTray), read(3, WaterKind::Nutrient, TrayId{8}),
                  read(3, WaterKind::PhSet, {})},
                 {recipe});
    ASSERT_EQ(waters.size(), 2U);
    EXPECT_EQ(waters[0].water, WaterKind::Plain);
    EXPECT_EQ(waters[0].amount, millilitres(30));
    EXPECT_TRUE(waters[0].concentrate.empty());
    EXPECT_EQ(waters[1].concentrate, "Feed");
    EXPECT_EQ(waters[1].times, 2);
    EXPECT_EQ(waters[1].unmeasured, 1);
    EXPECT_EQ(waters[1].first, kMonday + 3);
    EXPECT_EQ(waters[1].last, kMonday + 4);
    ASSERT_EQ(waters[1].readings.size(), 2U) << "of its days, or its own; not another tray's";
    EXPECT_EQ(waters[1].readings[1].on, kMonday + 9);
}

} // namespace
} // namespace plumule
