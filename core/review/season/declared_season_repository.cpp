#include "core/review/season/declared_season_repository.h"

#include "core/storage/table.h"

namespace plumule {

template <>
struct TableOf<Season>
{
    static constexpr const char* name = "season";
    static constexpr auto columns =
        std::tuple{column("name", &Season::name), column("starts_on", &Season::startsOn),
                   column("planned_trials", &Season::plannedTrials),
                   column("main_metric", &Season::mainMetric)};
    static bool isSound(const Season& season)
    {
        return !season.plannedTrials || *season.plannedTrials > 0;
    }
};

std::vector<Season> DeclaredSeasonRepository::all()
{
    return selectRows<Season>(m_database, "ORDER BY starts_on, id");
}

std::optional<Date> DeclaredSeasonRepository::firstHarvestedSowing()
{
    Statement rows = m_database.prepare(
        "SELECT sown_on FROM tray WHERE state = 'harvested' ORDER BY sown_on LIMIT 1");
    return rows.step() ? std::optional(rows.get<Date>(0)) : std::nullopt;
}

std::optional<Date> DeclaredSeasonRepository::lastHarvestedSowing()
{
    Statement rows = m_database.prepare(
        "SELECT sown_on FROM tray WHERE state = 'harvested' ORDER BY sown_on DESC LIMIT 1");
    return rows.step() ? std::optional(rows.get<Date>(0)) : std::nullopt;
}

void DeclaredSeasonRepository::insert(Season& season)
{
    insertRow(m_database, season);
}

void DeclaredSeasonRepository::update(const Season& season)
{
    updateRow(m_database, season);
}

void DeclaredSeasonRepository::remove(SeasonId season)
{
    deleteRow<Season>(m_database, season);
}

} // namespace plumule
