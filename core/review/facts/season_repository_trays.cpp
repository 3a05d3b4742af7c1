// Part of core/review/facts/season_repository.h: which trays there are, and what they gave.
#include "core/review/facts/season_reader.h"
#include "core/storage/id_list.h"
#include "core/tray/tray_ids.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr const char* kTrayColumns =
    "t.id, t.code, t.variety_id, t.seed_lot_id, t.medium_id, t.seed_mg, t.sown_on, t.sown_minute, "
    "t.trial_id, t.state, t.ended_on, t.ended_minute, t.discard_reason, t.set_aside_reason, "
    "t.piece_id, t.block, t.sown_by";
constexpr int kTrayColumnCount = 17;

// With fewer trays than these the span may not show the room's spread: other yields are read too.
constexpr std::size_t kFewTrays = 200;
// More of them make a spread no surer, and a room of many years has no end of them.
constexpr int kMostPast = 2000;

Tray readTray(const Statement& row)
{
    Tray tray;
    tray.id = row.get<TrayId>(0);
    tray.code = row.get<std::string>(1);
    tray.variety = row.get<VarietyId>(2);
    tray.seedLot = row.get<std::optional<SeedLotId>>(3);
    tray.medium = row.get<MediumId>(4);
    tray.seed = row.get<std::optional<Mass>>(5);
    tray.sownOn = row.get<Date>(6);
    tray.sownMinute = row.get<int>(7);
    tray.trial = row.get<std::optional<TrialId>>(8);
    tray.state = row.get<TrayState>(9);
    tray.endedOn = row.get<std::optional<Date>>(10);
    tray.endedMinute = row.get<std::optional<int>>(11);
    tray.discardReason = row.get<std::optional<std::string>>(12);
    tray.setAsideReason = row.get<std::optional<std::string>>(13);
    tray.piece = row.get<std::optional<PieceId>>(14);
    tray.block = row.get<std::optional<int>>(15);
    tray.sownBy = row.get<std::optional<std::string>>(16);
    return tray;
}

SeasonRecord recordOf(Tray tray, const Medium& medium)
{
    SeasonRecord record;
    record.use.medium = &medium;
    record.use.sownOn = tray.sownOn;
    record.use.seedLot = tray.seedLot;
    record.use.seed = tray.seed;
    record.use.isHarvested = tray.state == TrayState::Harvested;
    record.use.hasEnded = tray.state != TrayState::Growing;
    record.tray = std::move(tray);
    return record;
}

std::vector<TrayId> idsIn(Statement rows)
{
    std::vector<TrayId> ids;
    while (rows.step()) {
        ids.push_back(rows.get<TrayId>(0));
    }
    return ids;
}

std::vector<TrayId> traysEndedIn(Database& database, const SeasonSpan& span)
{
    if (span.trials.empty()) {
        Statement rows = database.prepare(
            "SELECT tray_id FROM harvest WHERE on_date BETWEEN ?1 AND ?2 UNION SELECT id FROM tray "
            "WHERE sown_on BETWEEN ?3 AND ?2 AND state = 'discarded' AND ended_on BETWEEN ?1 AND "
            "?2");
        rows.bind(span.from, span.to, span.from - kLongestGrowth);
        return idsIn(std::move(rows));
    }
    Statement rows = database.prepare(
        "SELECT h.tray_id FROM tray AS t JOIN harvest AS h ON h.tray_id = t.id WHERE "
        "t.trial_id IN (SELECT value FROM json_each(?3)) AND h.on_date BETWEEN ?1 AND ?2 UNION "
        "SELECT id FROM tray WHERE trial_id IN (SELECT value FROM json_each(?3)) AND +state = "
        "'discarded' AND ended_on BETWEEN ?1 AND ?2");
    rows.bind(span.from, span.to, idList(span.trials));
    return idsIn(std::move(rows));
}

} // namespace

void SeasonReader::readTraysOf(const SeasonSpan& span)
{
    const std::vector<TrayId> ended = traysEndedIn(m_database, span);
    m_ids = idList(ended);
    // Above that share of the journal reading a table from end to end is twice as fast as finding
    // the rows of each tray.
    m_readsAll = span.trials.empty() && 2 * static_cast<std::int64_t>(ended.size()) >=
                                            m_database.scalar("SELECT count(*) FROM tray");
    readTrays(ended.size());
    readYields();
}

std::optional<Date> SeasonReader::firstSowingOf(const Tray& tray) const
{
    const auto standing =
        tray.trial ? m_facts.standings.find(*tray.trial) : m_facts.standings.end();
    return standing == m_facts.standings.end() ? std::nullopt : standing->second.firstSownOn;
}

Statement SeasonReader::rowsOf(const std::string& columnsFromTable)
{
    const std::string select = "SELECT " + columnsFromTable;
    if (m_readsAll) {
        return m_database.prepare(select);
    }
    Statement rows =
        m_database.prepare(select + " WHERE tray_id IN (SELECT value FROM json_each(?1))");
    rows.bind(m_ids);
    return rows;
}

void SeasonReader::readTrays(std::size_t count)
{
    Statement rows = m_database.prepare(
        std::string("SELECT ") + kTrayColumns +
        " FROM tray AS t WHERE t.id IN (SELECT value FROM json_each(?1)) ORDER BY t.id");
    rows.bind(m_ids);
    m_facts.trays.reserve(count);
    m_indexOf.reserve(count);
    while (rows.step()) {
        readOf(rows.get<TrayId>(0), [&] {
            Tray tray = readTray(rows);
            const Medium& medium = pointedAt(m_facts.media, tray.medium, "tray", tray.id);
            m_indexOf.emplace(tray.id, m_facts.trays.size());
            const auto firstSowing = firstSowingOf(tray);
            m_facts.trays.push_back(recordOf(std::move(tray), medium));
            m_facts.trays.back().trialSownOn = firstSowing;
        });
    }
}

void SeasonReader::setAsideDamaged()
{
    const auto isDamaged = [this](const auto& record) {
        return m_damaged.count(record.tray.id) > 0;
    };
    std::erase_if(m_facts.trays, isDamaged);
    std::erase_if(m_facts.unfinished, isDamaged);
    m_indexOf.clear(); // of places that are other ones now
    for (const TrayId tray : m_damaged) {
        m_facts.damaged.push_back(damagedTray(m_database, damagedRow("tray", tray.value).error())
                                      .value_or(DamagedTray{tray, {}}));
    }
}

void SeasonReader::readYields()
{
    forEachRow("tray_id, net_mg, is_last, on_date FROM harvest",
               [&](std::size_t index, const Statement& row) {
                   SeasonRecord& record = m_facts.trays[index];
                   const auto day = row.get<Date>(3);
                   record.yield += row.get<Mass>(1);
                   record.cutOn.push_back(day);
                   ++record.use.cuts;
                   if (row.get<bool>(2)) {
                       record.lastCut = std::max(record.lastCut.value_or(day), day);
                   }
               });
}

void SeasonReader::readUnfinished(const SeasonSpan& span)
{
    const std::string columns =
        std::string("SELECT ") + kTrayColumns +
        ", EXISTS (SELECT 1 FROM harvest AS h WHERE h.tray_id = t.id), (SELECT s.place_id FROM "
        "stay AS s WHERE s.tray_id = t.id ORDER BY s.from_on DESC, s.from_minute DESC LIMIT 1) "
        "FROM tray AS t WHERE " +
        (span.trials.empty() ? "" : "t.trial_id IN (SELECT value FROM json_each(?4)) AND ");
    const auto readAll = [&](const std::string& condition) {
        Statement rows = m_database.prepare(columns + condition);
        rows.bind(span.from - kLongestGrowth, span.from, span.to);
        if (!span.trials.empty()) {
            rows.bindCell(4, idList(span.trials));
        }
        while (rows.step()) {
            readOf(rows.get<TrayId>(0), [&] {
                const auto place = rows.get<std::optional<PlaceId>>(kTrayColumnCount + 1);
                Tray tray = readTray(rows);
                const auto firstSowing = firstSowingOf(tray);
                m_facts.unfinished.push_back({std::move(tray), rows.get<int>(kTrayColumnCount) != 0,
                                              place ? shelfAt(*place) : std::nullopt, firstSowing});
            });
        }
    };
    // A trial's trays are fewer than those of any state.
    const std::string state = span.trials.empty() ? "t.state" : "+t.state";
    readAll("t.sown_on BETWEEN ?1 AND ?3 AND " + state +
            " = 'discarded' AND t.ended_on BETWEEN ?2 AND ?3");
    readAll(state + " = 'growing' AND t.sown_on <= ?3 ORDER BY t.sown_on");
}

std::optional<Date> SeasonReader::lastCut() const
{
    std::optional<Date> last;
    for (const SeasonRecord& record : m_facts.trays) {
        last = std::max(last, record.lastCut);
    }
    return last;
}

void SeasonReader::readPieceUses()
{
    Statement rows = m_database.prepare(
        "SELECT id, piece_id FROM tray WHERE piece_id IN (SELECT piece_id FROM tray WHERE id IN "
        "(SELECT value FROM json_each(?1))) ORDER BY piece_id, sown_on, sown_minute, id");
    rows.bind(m_ids);
    PieceId piece;
    int use = 0;
    while (rows.step()) {
        PieceId present;
        if (!isRead([&] { present = rows.get<PieceId>(1); })) {
            continue; // of which piece it is, nobody knows
        }
        use = present == piece ? use + 1 : 1;
        piece = present;
        const auto found = m_indexOf.find(rows.get<TrayId>(0));
        if (found != m_indexOf.end()) {
            m_facts.trays[found->second].pieceUse = use;
        }
    }
}

void SeasonReader::readPlannedColumns()
{
    const auto isSquare = [](const auto& entry) { return entry.second == Design::LatinSquare; };
    if (std::none_of(m_facts.designs.begin(), m_facts.designs.end(), isSquare)) {
        return;
    }
    forEachRow("tray_id, trial_id, position FROM (SELECT * FROM planned_tray WHERE tray_id IS NOT "
               "NULL)",
               [&](std::size_t index, const Statement& row) {
                   const auto design = m_facts.designs.find(row.get<TrialId>(1));
                   if (design != m_facts.designs.end() && isSquare(*design)) {
                       m_facts.trays[index].column = row.get<int>(2);
                   }
               });
}

void SeasonReader::readPast(Date from, Date to)
{
    if (m_facts.trays.size() >= kFewTrays) {
        return;
    }
    Statement rows = m_database.prepare(
        "SELECT t.medium_id, t.variety_id, t.trial_id, t.sown_on, (SELECT sum(h.net_mg) FROM "
        "harvest AS h WHERE h.tray_id = t.id AND h.on_date BETWEEN ?1 AND ?2), t.id FROM (SELECT "
        "tray_id FROM harvest WHERE on_date BETWEEN ?1 AND ?2 AND is_last = 1 ORDER BY "
        "on_date DESC LIMIT ?3) AS latest JOIN tray AS t ON t.id = latest.tray_id WHERE t.state = "
        "'harvested' AND t.set_aside_reason IS NULL ORDER BY t.id");
    rows.bind(from, to, kMostPast);
    while (rows.step()) {
        const auto tray = rows.get<TrayId>(5);
        // The room's spread does without those that can't be read.
        if (m_indexOf.count(tray) == 0 && m_damaged.count(tray) == 0) {
            (void)isRead([&] {
                m_facts.past.push_back({rows.get<MediumId>(0), rows.get<VarietyId>(1),
                                        rows.get<std::optional<TrialId>>(2), rows.get<Date>(3),
                                        rows.get<Mass>(4)});
            });
        }
    }
}

} // namespace plumule
