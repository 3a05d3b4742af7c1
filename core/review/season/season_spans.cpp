#include "core/review/season/season_spans.h"

#include <algorithm>
#include <chrono>
#include <map>

namespace plumule {
namespace {

std::chrono::year_month_day civilOf(Date day)
{
    return std::chrono::year_month_day{std::chrono::sys_days{std::chrono::days{day.days}}};
}

int monthsOf(Split split)
{
    switch (split) {
    case Split::Quarters:
        return 3;
    case Split::HalfYears:
        return 6;
    case Split::Years:
    case Split::YearBefore:
        break;
    }
    return 12;
}

// The first day of the calendar part that the day is in, and that of the next one.
std::pair<Date, Date> partOf(Date day, int months)
{
    const auto civil = civilOf(day);
    const int year = static_cast<int>(civil.year());
    const unsigned width = static_cast<unsigned>(months);
    const unsigned first = (static_cast<unsigned>(civil.month()) - 1) / width * width + 1;
    const bool isLast = first + width > 12;
    return {date(year, first, 1), isLast ? date(year + 1, 1, 1) : date(year, first + width, 1)};
}

// The 29th of February becomes the 28th.
Date aYearBefore(Date day)
{
    auto civil = civilOf(day) - std::chrono::years{1};
    if (!civil.ok()) {
        civil = civil.year() / civil.month() / std::chrono::last;
    }
    return {static_cast<std::int32_t>(std::chrono::sys_days{civil}.time_since_epoch().count())};
}

SeasonFilter spanOf(SeasonFilter filter, Date from, Date to)
{
    filter.from = from;
    filter.to = to;
    return filter;
}

std::string rowName(const Medium& medium, const SeasonFilter& filter)
{
    return medium.name + " · " + toIso(filter.from) + "–" + toIso(filter.to);
}

void addRow(ChartSpec& spec, const MediumSeason& season, const SeasonFilter& filter)
{
    const double row = static_cast<double>(spec.rows.size());
    spec.rows.push_back(rowName(season.medium, filter));
    ChartSeries series;
    series.name = spec.rows.back();
    series.marker = season.medium.marker;
    const MeanInterval& yield = season.yield;
    if (yield.lower && yield.upper) {
        series.form = SeriesForm::Intervals;
        series.intervals.push_back({row, *yield.lower, yield.mean, *yield.upper});
    } else {
        for (const SeasonTray& tray : season.trays) {
            series.points.push_back({row, tray.yieldGrams, tray.code, tray.tray.value, false});
        }
    }
    spec.series.push_back(std::move(series));
}

} // namespace

std::vector<SeasonFilter> spansOf(const SeasonFilter& filter, Split split)
{
    if (filter.to < filter.from) {
        return {};
    }
    if (split == Split::YearBefore) {
        return {spanOf(filter, aYearBefore(filter.from), aYearBefore(filter.to)), filter};
    }
    std::vector<SeasonFilter> spans;
    for (Date from = filter.from; from <= filter.to;) {
        const Date next = partOf(from, monthsOf(split)).second;
        spans.push_back(spanOf(filter, from, std::min(next - 1, filter.to)));
        from = next;
    }
    return spans;
}

ChartSpec seasonsChart(const std::vector<SeasonBeside>& seasons)
{
    std::map<MediumId, std::vector<std::pair<const MediumSeason*, const SeasonFilter*>>> media;
    for (const SeasonBeside& season : seasons) {
        for (const MediumSeason& medium : season.review.media) {
            media[medium.medium.id].emplace_back(&medium, &season.filter);
        }
    }
    ChartSpec spec;
    spec.key = "seasons_beside";
    spec.form = ChartForm::DotRows;
    spec.x.key = "yield";
    spec.x.unit = "g";
    for (const auto& [id, rows] : media) {
        for (const auto& [medium, filter] : rows) {
            addRow(spec, *medium, *filter);
        }
    }
    return spec;
}

} // namespace plumule
