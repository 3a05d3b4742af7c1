#include "core/review/season/season_rules.h"

#include "core/review/facts/review_reason.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

Season season(const char* name, Date day)
{
    Season one;
    one.id = SeasonId{1};
    one.name = name;
    one.startsOn = day;
    return one;
}

TEST(SeasonRules, EachRunsUntilTheNextBegins)
{
    const auto spans = seasonsInOrder(
        {season("Autumn", date(2026, 9, 1)), season("Spring", date(2026, 2, 1))}, std::nullopt);
    ASSERT_EQ(spans.size(), 2u);
    EXPECT_EQ(spans[0].season.name, "Spring");
    EXPECT_EQ(spans[0].sownUntil, date(2026, 8, 31));
    EXPECT_FALSE(spans[1].sownUntil);
    const SeasonFilter filter = filterOf(spans[0], date(2026, 10, 1));
    EXPECT_EQ(filter.sownFrom, date(2026, 2, 1));
    EXPECT_EQ(filter.sownUntil, date(2026, 8, 31));
    EXPECT_EQ(filter.to, date(2026, 10, 1)) << "sown in August, cut in September";
}

TEST(SeasonRules, BeforeAnyWasDeclaredOneBeganWithTheFirstSowingThatGaveAHarvest)
{
    const auto spans = seasonsInOrder({}, date(2025, 11, 3));
    ASSERT_EQ(spans.size(), 1u);
    EXPECT_EQ(spans[0].season.name, "2025");
    EXPECT_FALSE(spans[0].season.id.isStored());
    EXPECT_TRUE(seasonsInOrder({}, std::nullopt).empty());
}

TEST(SeasonRules, AreNamedOnceAndBeginOnDaysOfTheirOwn)
{
    const std::vector<Season> others{season("Spring", date(2026, 2, 1))};
    const auto reasonOf = [&](const Season& one) {
        return checkedSeason(one, others, std::nullopt, std::nullopt).error().reason;
    };
    EXPECT_TRUE(reasonOf(season("  ", date(2026, 5, 1))).is(ReviewReason::SeasonNameMissing));
    EXPECT_TRUE(reasonOf(season("Spring", date(2026, 5, 1))).is(ReviewReason::SeasonNameTaken));
    EXPECT_TRUE(reasonOf(season("Summer", date(2026, 2, 1))).is(ReviewReason::SeasonDayTaken));
    Season planned = season("Summer", date(2026, 5, 1));
    planned.plannedTrials = 2;
    EXPECT_TRUE(reasonOf(planned).is(ReviewReason::SeasonPlannedTrials));
    planned.plannedTrials = 3;
    planned.name = " Summer ";
    EXPECT_EQ(checkedSeason(planned, others, std::nullopt, std::nullopt)->name, "Summer");
}

// An answer that was seen must not choose its own series.
TEST(SeasonRules, NothingThatDecidesIsChosenAfterTheHarvest)
{
    const Season spring = season("Spring", date(2026, 2, 1));
    const auto isRefused = [](const Season& one, const std::optional<Season>& before, Date sown) {
        const auto checked = checkedSeason(one, {}, before, sown);
        return !checked && checked.error().reason.is(ReviewReason::SeasonHarvested);
    };
    EXPECT_TRUE(isRefused(spring, std::nullopt, date(2026, 2, 1)));
    EXPECT_FALSE(isRefused(spring, std::nullopt, date(2026, 1, 31)));
    Season changed = spring;
    changed.plannedTrials = 5;
    EXPECT_TRUE(isRefused(changed, spring, date(2026, 2, 20)));
    EXPECT_FALSE(isRefused(changed, spring, date(2026, 1, 20)));
    changed = spring;
    changed.mainMetric = Response::CostPerGram;
    EXPECT_TRUE(isRefused(changed, spring, date(2026, 2, 20)));
    changed = spring;
    changed.name = "Spring again";
    EXPECT_FALSE(isRefused(changed, spring, date(2026, 2, 20)));
}

} // namespace
} // namespace plumule
