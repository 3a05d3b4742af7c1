#include "core/season/season_repository.h"

#include "core/storage/table.h"

namespace plumule {

template <>
struct TableOf<Season>
{
    static constexpr const char* name = "season";
    static constexpr auto columns = std::tuple{column("name", &Season::name),
                                               column("starts_on", &Season::startsOn),
                                               column("planned_trials", &Season::plannedTrials),
                                               column("main_metric", &Season::mainMetric)};
};

std::vector<Season> SeasonRepository::all()
{
    return selectRows<Season>(m_database, "ORDER BY starts_on, id");
}

std::optional<Season> SeasonRepository::find(SeasonId season)
{
    return findRow<Season>(m_database, season);
}

std::optional<Date> SeasonRepository::firstHarvestedSowing()
{
    Statement rows = m_database.prepare("SELECT min(sown_on) FROM tray WHERE state = 'harvested'");
    return rows.step() ? rows.get<std::optional<Date>>(0) : std::nullopt;
}

std::optional<Date> SeasonRepository::lastHarvestedSowing()
{
    Statement rows = m_database.prepare("SELECT max(sown_on) FROM tray WHERE state = 'harvested'");
    return rows.step() ? rows.get<std::optional<Date>>(0) : std::nullopt;
}

void SeasonRepository::insert(Season& season)
{
    insertRow(m_database, season);
}

void SeasonRepository::update(const Season& season)
{
    updateRow(m_database, season);
}

void SeasonRepository::remove(SeasonId season)
{
    deleteRow<Season>(m_database, season);
}

} // namespace plumule
