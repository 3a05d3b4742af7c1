#include "core/backup/backup_rota.h"

#include <algorithm>
#include <functional>
#include <set>

namespace plumule {
namespace {

// 1970-01-01 was a Thursday.
int weekOf(Date day)
{
    const int sinceMonday = day.days + 3;
    return sinceMonday >= 0 ? sinceMonday / 7 : (sinceMonday - 6) / 7;
}

// The newest of each of the last `count` periods that have any.
template <class PeriodOf>
void keepNewest(const std::vector<Moment>& newestFirst, int count, PeriodOf periodOf,
                std::set<Moment>& kept)
{
    std::set<decltype(periodOf(Date()))> periods;
    for (const Moment& at : newestFirst) {
        if (static_cast<int>(periods.size()) == count) {
            return;
        }
        if (periods.insert(periodOf(at.date)).second) {
            kept.insert(at);
        }
    }
}

} // namespace

std::vector<Moment> backupsToKeep(std::vector<Moment> all)
{
    std::sort(all.begin(), all.end(), std::greater<>());
    std::set<Moment> kept;
    keepNewest(
        all, kDailyBackups, [](Date day) { return day.days; }, kept);
    keepNewest(all, kWeeklyBackups, weekOf, kept);
    keepNewest(
        all, kMonthlyBackups, [](Date day) { return toIso(day).substr(0, 7); }, kept);
    return {kept.rbegin(), kept.rend()};
}

} // namespace plumule
