#include "core/journal/review/season_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/review/facts/review_reason.h"
#include "core/review/season/declared_season_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// As they stand, with the one that nobody declared.
std::vector<Season> seasonsNow(DeclaredSeasonRepository& seasons)
{
    std::vector<Season> now;
    for (SeasonSpanOfDays& span : seasonsInOrder(seasons.all(), seasons.firstHarvestedSowing())) {
        now.push_back(std::move(span.season));
    }
    return now;
}

// The undeclared season is meant by its first day.
std::optional<Season> takeOut(std::vector<Season>& seasons, const Season& meant)
{
    const auto found = std::find_if(seasons.begin(), seasons.end(), [&](const Season& one) {
        return meant.id.isStored() ? one.id == meant.id
                                   : !one.id.isStored() && one.startsOn == meant.startsOn;
    });
    if (found == seasons.end()) {
        return std::nullopt;
    }
    const Season taken = *found;
    seasons.erase(found);
    return taken;
}

} // namespace

Result<std::vector<SeasonSpanOfDays>> SeasonEntries::all()
{
    return m_ledger.ask([](Database& database) {
        DeclaredSeasonRepository seasons(database);
        return seasonsInOrder(seasons.all(), seasons.firstHarvestedSowing());
    });
}

Result<Season> SeasonEntries::save(const Season& season)
{
    const auto what = season.id.isStored() ? Intention::ChangeSeason : Intention::DeclareSeason;
    return m_ledger.record(what, [&](Database& database, Deed& deed) -> Result<Season> {
        DeclaredSeasonRepository seasons(database);
        std::vector<Season> others = seasonsNow(seasons);
        const auto before = takeOut(others, season);
        if (season.id.isStored() && !before) {
            return fail(ErrorKind::NotFound, ReviewReason::SeasonUnknown);
        }
        auto checked = checkedSeason(season, others, before, seasons.lastHarvestedSowing());
        if (!checked) {
            return checked;
        }
        deed.whom = checked->name;
        for (Season& other : others) {
            if (!other.id.isStored()) {
                seasons.insert(other);
            }
        }
        if (checked->id.isStored()) {
            seasons.update(*checked);
        } else {
            seasons.insert(*checked);
        }
        return checked;
    });
}

Done SeasonEntries::remove(SeasonId season)
{
    return m_ledger.record(Intention::RemoveSeason, [&](Database& database, Deed& deed) -> Done {
        DeclaredSeasonRepository seasons(database);
        const std::vector<Season> stored = seasons.all();
        const auto found = std::find_if(stored.begin(), stored.end(),
                                        [&](const Season& one) { return one.id == season; });
        if (found == stored.end()) {
            return fail(ErrorKind::NotFound, ReviewReason::SeasonUnknown);
        }
        deed.whom = found->name;
        const auto last = seasons.lastHarvestedSowing();
        if (last && !(*last < found->startsOn)) {
            return fail(ErrorKind::Conflict, ReviewReason::SeasonHarvested, toIso(*last));
        }
        seasons.remove(season);
        return {};
    });
}

} // namespace plumule
