// Part of core/harvest/harvest_repository.h: what a weight is held against.
#include "core/harvest/harvest_repository.h"

#include "core/storage/table.h"

namespace plumule {
namespace {

// Enough for a range, and as many marks as are told apart.
constexpr int kMostPast = 60;
constexpr int kMostOfTheRoom = 300;
// As far back as is looked for them, so that a rare cut isn't sought among all trays there were.
constexpr const char* kNewest = "ORDER BY sown_on DESC, code LIMIT 100";

std::string pastColumns(const char* on, const char* net)
{
    return std::string("SELECT tray.id, tray.code, tray.variety_id, medium.marker, ") + on + ", " +
           net + ", tray.seed_mg FROM ";
}

constexpr const char* kCounted =
    "JOIN medium ON medium.id = tray.medium_id "
    "WHERE tray.id <> ?1 AND tray.set_aside_reason IS NULL AND tray.state <> 'discarded' ";

std::vector<PastWeight> pastIn(Statement& statement)
{
    std::vector<PastWeight> past;
    while (statement.step()) {
        past.push_back({statement.get<TrayId>(0), statement.get<std::string>(1),
                        statement.get<VarietyId>(2), statement.get<int>(3), statement.get<Date>(4),
                        statement.get<Mass>(5), statement.get<std::optional<Mass>>(6)});
    }
    return past;
}

constexpr const char* kNewestFirst = "ORDER BY tray.sown_on DESC, tray.id DESC LIMIT ";

// `condition` is on trays alone.
std::string newestTrays(const std::string& condition)
{
    return "(SELECT id FROM tray WHERE " + condition + " " + kNewest +
           ") AS near JOIN tray ON tray.id = near.id ";
}

std::string cutsWhere(const char* condition)
{
    return pastColumns("weighed.on_date", "weighed.net_mg") + newestTrays(condition) +
           "JOIN harvest AS weighed ON weighed.tray_id = tray.id " + kCounted +
           "AND weighed.cut = ?2 " + kNewestFirst + "?3";
}

std::string roomsCuts()
{
    return pastColumns("weighed.on_date", "weighed.net_mg") +
           "(SELECT tray_id, cut, on_date, net_mg FROM harvest ORDER BY on_date DESC LIMIT ?3) "
           "AS weighed JOIN tray ON tray.id = weighed.tray_id " +
           kCounted + "AND weighed.cut = ?2 ORDER BY tray.id DESC";
}

std::string residuesWhere(const char* condition)
{
    return pastColumns("max(weighed.on_date)", "sum(weighed.net_mg)") + newestTrays(condition) +
           "JOIN residue AS weighed ON weighed.tray_id = tray.id " + kCounted +
           "GROUP BY tray.id " + kNewestFirst + "?2";
}

} // namespace

std::vector<PastWeight> HarvestRepository::pastCuts(const Tray& tray, RangeSource from, int cut)
{
    const auto read = [&](const std::string& sql, int most, const auto&... of) {
        Statement statement = m_database.prepare(sql);
        statement.bind(tray.id, cut, most, of...);
        return pastIn(statement);
    };
    switch (from) {
    case RangeSource::VarietyOnMedium:
        return read(cutsWhere("variety_id = ?4 AND medium_id = ?5"), kMostPast, tray.variety,
                    tray.medium);
    case RangeSource::SameTrial:
        return read(cutsWhere("trial_id = ?4 AND +variety_id = ?5"), kMostPast, tray.trial,
                    tray.variety);
    case RangeSource::Variety:
        return read(cutsWhere("variety_id = ?4"), kMostPast, tray.variety);
    case RangeSource::RoomBySeed:
        return read(roomsCuts(), kMostOfTheRoom);
    case RangeSource::Library:
    case RangeSource::Medium:
        break;
    }
    return {};
}

std::vector<PastWeight> HarvestRepository::pastResidues(const Tray& tray, RangeSource from)
{
    const bool isOfVariety = from == RangeSource::VarietyOnMedium;
    Statement statement = m_database.prepare(
        residuesWhere(isOfVariety ? "medium_id = ?3 AND variety_id = ?4" : "medium_id = ?3"));
    if (isOfVariety) {
        statement.bind(tray.id, kMostPast, tray.medium, tray.variety);
    } else {
        statement.bind(tray.id, kMostPast, tray.medium);
    }
    return pastIn(statement);
}

} // namespace plumule
