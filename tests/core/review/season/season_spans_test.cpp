#include "core/journal/review/review_answers.h"
#include "core/review/season/season_spans.h"

#include "tests/core/review/facts/season_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<std::string> spansBetween(Date from, Date to, Split split)
{
    SeasonFilter filter;
    filter.from = from;
    filter.to = to;
    std::vector<std::string> texts;
    for (const SeasonFilter& span : spansOf(filter, split)) {
        texts.push_back(toIso(span.from) + "/" + toIso(span.to));
    }
    return texts;
}

TEST(SeasonSpans, SplitByTheCalendarWithinTheSpan)
{
    const struct
    {
        Date from;
        Date to;
        Split split;
        std::vector<std::string> spans;
    } cases[] = {
        {date(2025, 2, 10),
         date(2025, 8, 5),
         Split::Quarters,
         {"2025-02-10/2025-03-31", "2025-04-01/2025-06-30", "2025-07-01/2025-08-05"}},
        {date(2025, 10, 1),
         date(2026, 1, 1),
         Split::Quarters,
         {"2025-10-01/2025-12-31", "2026-01-01/2026-01-01"}},
        {date(2025, 2, 10),
         date(2026, 1, 31),
         Split::HalfYears,
         {"2025-02-10/2025-06-30", "2025-07-01/2025-12-31", "2026-01-01/2026-01-31"}},
        {date(2024, 1, 1),
         date(2025, 12, 31),
         Split::Years,
         {"2024-01-01/2024-12-31", "2025-01-01/2025-12-31"}},
        {date(2025, 3, 3),
         date(2026, 3, 2),
         Split::YearBefore,
         {"2024-03-03/2025-03-02", "2025-03-03/2026-03-02"}},
        {date(2024, 1, 1),
         date(2024, 2, 29),
         Split::YearBefore,
         {"2023-01-01/2023-02-28", "2024-01-01/2024-02-29"}},
        {date(2025, 3, 3), date(2025, 3, 2), Split::Years, {}},
    };
    for (const auto& one : cases) {
        EXPECT_EQ(spansBetween(one.from, one.to, one.split), one.spans);
    }
}

TEST(SeasonSpans, KeepTheOtherChoices)
{
    SeasonFilter filter;
    filter.from = date(2025, 1, 1);
    filter.to = date(2025, 12, 31);
    filter.varieties = {VarietyId{2}};
    filter.shelves = {ShelfId{3}};
    for (const SeasonFilter& span : spansOf(filter, Split::HalfYears)) {
        EXPECT_EQ(span.varieties, filter.varieties);
        EXPECT_EQ(span.shelves, filter.shelves);
    }
}

TEST(SeasonSpans, AreShownBesideEachOtherByMedium)
{
    SeasonSamples earlier;
    earlier.add("A1", kMix, 200);
    earlier.add("A2", kMix, 210);
    earlier.add("B1", kMesh, 300);
    SeasonSamples later;
    later.add("A3", kMix, 220);
    later.add("A4", kMix, 240);
    const ChartSpec chart =
        seasonsChart({{{date(2025, 1, 1), date(2025, 3, 31), {}, {}, {}, {}, {}}, earlier.review()},
                      {{date(2026, 1, 1), date(2026, 3, 31), {}, {}, {}, {}, {}}, later.review()}});
    EXPECT_EQ(chart.key, "seasons_beside");
    EXPECT_EQ(chart.form, ChartForm::DotRows);
    EXPECT_EQ(chart.rows, (std::vector<std::string>{"Loose mix · 2025-01-01–2025-03-31",
                                                    "Loose mix · 2026-01-01–2026-03-31",
                                                    "Mesh · 2025-01-01–2025-03-31"}));
    ASSERT_EQ(chart.series.size(), 3u);
    ASSERT_EQ(chart.series[1].intervals.size(), 1u);
    EXPECT_DOUBLE_EQ(chart.series[1].intervals[0].mid, 230);
    EXPECT_DOUBLE_EQ(chart.series[1].intervals[0].x, 1);
    EXPECT_EQ(chart.series[1].marker, 3);
    ASSERT_EQ(chart.series[2].points.size(), 1u) << "one tray has no interval";
    EXPECT_DOUBLE_EQ(chart.series[2].points[0].y, 300);
}

TEST(SeasonFilters, ChooseByTrialAndShelf)
{
    SeasonSamples season;
    season.add("A1", kMix, 200).tray.trial = TrialId{7};
    season.add("A2", kMix, 210).shelf = ShelfId{3};
    season.add("A3", kMix, 220).shelf = ShelfId{4};
    Tray growing;
    growing.medium = kMix;
    growing.state = TrayState::Growing;
    growing.code = "A4";
    season.facts.unfinished.push_back({growing, false, ShelfId{3}, std::nullopt});
    season.filter.shelves = {ShelfId{3}};
    EXPECT_EQ(season.review().trays, 1);
    EXPECT_EQ(season.review().leftOut.size(), 1u);
    season.filter.shelves = {ShelfId{3}, ShelfId{4}};
    EXPECT_EQ(season.review().trays, 2);
    season.filter.shelves = {ShelfId{5}};
    EXPECT_EQ(season.review().trays, 0);
    EXPECT_TRUE(season.review().leftOut.empty());
    season.filter.shelves.clear();
    season.filter.trials = {TrialId{7}, TrialId{8}};
    EXPECT_EQ(season.review().trays, 1);
    EXPECT_TRUE(season.review().leftOut.empty());
}

} // namespace
} // namespace plumule
