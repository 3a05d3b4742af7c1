#include "core/review/season/season_rules.h"

#include "core/base/number_text.h"
#include "core/review/facts/review_reason.h"

#include <algorithm>

namespace plumule {

namespace {

// Whether something sown on that day or later was harvested already.
bool isDecided(Date day, std::optional<Date> lastHarvestedSowing)
{
    return lastHarvestedSowing && !(*lastHarvestedSowing < day);
}

bool choosesAfterwards(const Season& season, const std::optional<Season>& before,
                       std::optional<Date> lastHarvestedSowing)
{
    if (!before) {
        return isDecided(season.startsOn, lastHarvestedSowing);
    }
    const Date earlier = std::min(season.startsOn, before->startsOn);
    const bool isOtherwise = season.startsOn != before->startsOn ||
                             season.plannedTrials != before->plannedTrials ||
                             season.mainMetric != before->mainMetric;
    return isOtherwise && isDecided(earlier, lastHarvestedSowing);
}

} // namespace

std::vector<SeasonSpanOfDays> seasonsInOrder(std::vector<Season> stored,
                                             std::optional<Date> firstSowing)
{
    if (stored.empty() && firstSowing) {
        Season first;
        first.name = toIso(*firstSowing).substr(0, 4);
        first.startsOn = *firstSowing;
        stored.push_back(first);
    }
    std::stable_sort(stored.begin(), stored.end(),
                     [](const Season& a, const Season& b) { return a.startsOn < b.startsOn; });
    std::vector<SeasonSpanOfDays> spans;
    for (std::size_t i = 0; i < stored.size(); ++i) {
        const auto until =
            i + 1 < stored.size() ? std::optional(stored[i + 1].startsOn - 1) : std::nullopt;
        spans.push_back({stored[i], until});
    }
    return spans;
}

Result<Season> checkedSeason(Season season, const std::vector<Season>& others,
                             const std::optional<Season>& before,
                             std::optional<Date> lastHarvestedSowing)
{
    season.name = std::string(trimmed(season.name));
    if (season.name.empty()) {
        return fail(ErrorKind::Missing, ReviewReason::SeasonNameMissing);
    }
    for (const Season& other : others) {
        if (other.name == season.name) {
            return fail(ErrorKind::Duplicate, ReviewReason::SeasonNameTaken, season.name);
        }
        if (other.startsOn == season.startsOn) {
            return fail(ErrorKind::Duplicate, ReviewReason::SeasonDayTaken, other.name);
        }
    }
    if (season.plannedTrials && (*season.plannedTrials < kFewestPlannedTrials ||
                                 *season.plannedTrials > kMostPlannedTrials)) {
        return fail(ErrorKind::Invalid, ReviewReason::SeasonPlannedTrials, kFewestPlannedTrials,
                    kMostPlannedTrials);
    }
    if (choosesAfterwards(season, before, lastHarvestedSowing)) {
        return fail(ErrorKind::Conflict, ReviewReason::SeasonHarvested,
                    toIso(*lastHarvestedSowing));
    }
    return season;
}

SeasonFilter filterOf(const SeasonSpanOfDays& span, Date today)
{
    SeasonFilter filter;
    filter.from = span.season.startsOn;
    filter.to = std::max(today, span.season.startsOn);
    filter.sownFrom = span.season.startsOn;
    filter.sownUntil = span.sownUntil;
    return filter;
}

} // namespace plumule
