#include "core/harvest/harvest_repository.h"

#include "core/storage/id_list.h"
#include "core/storage/table.h"
#include "core/tray/tray_ids.h"

namespace plumule {

template <>
struct TableOf<Harvest>
{
    static constexpr const char* name = "harvest";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Harvest::tray), column("cut", &Harvest::cut),
                   column("on_date", &Harvest::on),   column("minute", &Harvest::minute),
                   column("net_mg", &Harvest::net),   column("is_last", &Harvest::isLast),
                   column("note", &Harvest::note)};
};

template <>
struct TableOf<Bowl>
{
    static constexpr const char* name = "bowl";
    static constexpr auto columns =
        std::tuple{column("harvest_id", &Bowl::harvest), column("gross_mg", &Bowl::gross),
                   column("tare_mg", &Bowl::tare)};
};

template <>
struct TableOf<Residue>
{
    static constexpr const char* name = "residue";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Residue::tray),  column("on_date", &Residue::on),
                   column("minute", &Residue::minute), column("gross_mg", &Residue::gross),
                   column("tare_mg", &Residue::tare),  column("net_mg", &Residue::net)};
};

namespace {

constexpr const char* kOfTheseTrays = "WHERE tray_id IN (SELECT value FROM json_each(?1)) ";

} // namespace

std::optional<Harvest> HarvestRepository::find(HarvestId harvest)
{
    return findRow<Harvest>(m_database, harvest);
}

std::vector<Harvest> HarvestRepository::ofTray(TrayId tray)
{
    return selectRows<Harvest>(m_database, "WHERE tray_id = ?1 ORDER BY cut, id", tray);
}

std::vector<Residue> HarvestRepository::residuesOfTray(TrayId tray)
{
    return selectRows<Residue>(m_database, "WHERE tray_id = ?1 ORDER BY on_date, minute, id", tray);
}

std::map<TrayId, std::vector<Harvest>> HarvestRepository::ofTrays(const std::vector<TrayId>& trays)
{
    std::map<TrayId, std::vector<Harvest>> byTray;
    for (Harvest& row : selectRows<Harvest>(
             m_database, std::string(kOfTheseTrays) + "ORDER BY tray_id, cut, id", idList(trays))) {
        byTray[row.tray].push_back(std::move(row));
    }
    return byTray;
}

std::map<TrayId, std::vector<Residue>>
HarvestRepository::residuesOfTrays(const std::vector<TrayId>& trays)
{
    std::map<TrayId, std::vector<Residue>> byTray;
    for (const Residue& row : selectRows<Residue>(
             m_database, std::string(kOfTheseTrays) + "ORDER BY tray_id, on_date, minute, id",
             idList(trays))) {
        byTray[row.tray].push_back(row);
    }
    return byTray;
}

std::map<TrayId, Mass> HarvestRepository::yieldsOfTrays(const std::vector<TrayId>& trays)
{
    Statement statement =
        m_database.prepare(std::string("SELECT tray_id, sum(net_mg) FROM harvest ") +
                           kOfTheseTrays + "GROUP BY tray_id");
    statement.bind(idList(trays));
    std::map<TrayId, Mass> yields;
    while (statement.step()) {
        yields.emplace(statement.get<TrayId>(0), statement.get<Mass>(1));
    }
    return yields;
}

std::vector<Bowl> HarvestRepository::bowls(HarvestId harvest)
{
    return selectRows<Bowl>(m_database, "WHERE harvest_id = ?1 ORDER BY id", harvest);
}

std::vector<Harvest> HarvestRepository::between(Date from, Date to)
{
    return selectRows<Harvest>(
        m_database, "WHERE on_date BETWEEN ?1 AND ?2 ORDER BY on_date, minute, id", from, to);
}

std::vector<Mass> HarvestRepository::lastTares(int count)
{
    Statement statement = m_database.prepare(
        "SELECT bowl.tare_mg FROM bowl JOIN (SELECT id, on_date, minute FROM harvest "
        "ORDER BY on_date DESC, minute DESC, id DESC LIMIT ?1) AS latest "
        "ON latest.id = bowl.harvest_id "
        "ORDER BY latest.on_date DESC, latest.minute DESC, latest.id DESC, bowl.id DESC LIMIT ?1");
    statement.bind(count);
    std::vector<Mass> tares;
    while (statement.step()) {
        tares.push_back(statement.get<Mass>(0));
    }
    return tares;
}

int HarvestRepository::useOfPiece(const Tray& tray)
{
    Statement statement = m_database.prepare("SELECT count(*) FROM tray WHERE piece_id = ?1 AND "
                                             "(sown_on < ?2 OR (sown_on = ?2 AND (sown_minute < ?3 "
                                             "OR (sown_minute = ?3 AND id <= ?4))))");
    statement.bind(tray.piece, tray.sownOn, tray.sownMinute, tray.id);
    return statement.step() ? statement.get<int>(0) : 0;
}

std::vector<TrayId> HarvestRepository::traysWithoutResidue(Date from, Date to)
{
    Statement statement = m_database.prepare(
        "SELECT tray_id FROM harvest WHERE on_date BETWEEN ?1 AND ?2 AND is_last = 1 "
        "AND NOT EXISTS (SELECT 1 FROM residue WHERE residue.tray_id = harvest.tray_id) "
        "GROUP BY tray_id ORDER BY max(on_date) DESC, max(minute) DESC, max(id) DESC");
    statement.bind(from, to);
    std::vector<TrayId> trays;
    while (statement.step()) {
        trays.push_back(statement.get<TrayId>(0));
    }
    return trays;
}

void HarvestRepository::insert(Harvest& harvest)
{
    insertRow(m_database, harvest);
}

void HarvestRepository::insert(Bowl& bowl)
{
    insertRow(m_database, bowl);
}

void HarvestRepository::insert(Residue& residue)
{
    insertRow(m_database, residue);
}

void HarvestRepository::update(const Harvest& harvest)
{
    updateRow(m_database, harvest);
}

void HarvestRepository::removeBowls(HarvestId harvest)
{
    m_database.prepare("DELETE FROM bowl WHERE harvest_id = ?1").bind(harvest).run();
}

} // namespace plumule
