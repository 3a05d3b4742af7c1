#include "core/forecast/forecast_repository.h"

#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/storage/database.h"
#include "core/variety/variety_repository.h"

#include <unordered_map>

namespace plumule {
namespace {

std::optional<Moment> momentAt(const Statement& row, int column)
{
    const auto day = row.get<std::optional<Date>>(column);
    const auto minute = row.get<std::optional<int>>(column + 1);
    return day ? std::optional(Moment{*day, minute.value_or(0)}) : std::nullopt;
}

// Rows of one tray mostly follow each other, and those of trays that are not read are passed over.
class ByTray
{
public:
    explicit ByTray(std::vector<TrayFact>& trays)
    {
        for (TrayFact& tray : trays) {
            m_trays.emplace(tray.tray, &tray);
        }
    }
    [[nodiscard]] TrayFact* of(TrayId tray) const
    {
        const auto found = m_trays.find(tray);
        return found == m_trays.end() ? nullptr : found->second;
    }

private:
    std::unordered_map<TrayId, TrayFact*> m_trays;
};

} // namespace

ForecastFacts ForecastRepository::read(Moment now)
{
    ForecastFacts facts;
    facts.now = now;
    facts.trayArea = RoomRepository(m_database).room().trayArea();
    facts.media = MediumRepository(m_database).byId();
    for (const auto& [id, variety] : VarietyRepository(m_database).byId()) {
        facts.varieties[id] = variety.name;
    }
    readTrays(facts);
    readStages(facts);
    readCuts(facts);
    return facts;
}

// What was harvested and never weighed tells nothing.
void ForecastRepository::readTrays(ForecastFacts& facts)
{
    Statement rows = m_database.prepare(
        "SELECT id, code, variety_id, medium_id, sown_on, sown_minute, ended_on, ended_minute, "
        "state = 'discarded', set_aside_reason IS NOT NULL FROM tray "
        "WHERE state <> 'harvested' OR EXISTS (SELECT 1 FROM harvest WHERE tray_id = tray.id) "
        "ORDER BY sown_on, sown_minute, id");
    while (rows.step()) {
        TrayFact tray;
        tray.tray = rows.get<TrayId>(0);
        tray.code = rows.get<std::string>(1);
        tray.variety = rows.get<VarietyId>(2);
        tray.medium = rows.get<MediumId>(3);
        tray.sownAt = {rows.get<Date>(4), rows.get<int>(5)};
        if (rows.get<bool>(8)) {
            tray.discardedAt = momentAt(rows, 6).value_or(tray.sownAt);
        }
        tray.isSetAside = rows.get<bool>(9);
        facts.trays.push_back(std::move(tray));
    }
}

void ForecastRepository::readStages(ForecastFacts& facts)
{
    const ByTray trays(facts.trays);
    Statement rows =
        m_database.prepare("SELECT tray_id, stage, length_min, delay_min, started_on, "
                           "started_minute FROM tray_stage ORDER BY tray_id, position");
    while (rows.step()) {
        if (TrayFact* tray = trays.of(rows.get<TrayId>(0))) {
            tray->stages.push_back(
                {rows.get<Stage>(1), rows.get<int>(2), rows.get<int>(3), momentAt(rows, 4)});
        }
    }
}

void ForecastRepository::readCuts(ForecastFacts& facts)
{
    const ByTray trays(facts.trays);
    Statement rows = m_database.prepare(
        "SELECT tray_id, on_date, minute, net_mg FROM harvest ORDER BY tray_id, cut DESC");
    while (rows.step()) {
        if (TrayFact* tray = trays.of(rows.get<TrayId>(0))) {
            tray->cutAt = momentAt(rows, 1);
            tray->cut = rows.get<Mass>(3);
            tray->discardedAt.reset();
        }
    }
}

} // namespace plumule
