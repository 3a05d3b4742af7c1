#include "core/review/season_repository.h"

#include "core/cost/cost_repository.h"
#include "core/medium/medium_repository.h"
#include "core/storage/database.h"
#include "core/tray/tray_ids.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// No tray grows longer than this; it bounds the index range for trays discarded in the span.
constexpr int kLongestGrowth = 400;

constexpr const char* kTrayColumns =
    "t.id, t.code, t.variety_id, t.seed_lot_id, t.medium_id, t.seed_mg, t.sown_on, t.sown_minute, "
    "t.trial_id, t.state, t.ended_on, t.ended_minute, t.discard_reason, t.set_aside_reason";
constexpr int kTrayColumnCount = 14;

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
    return tray;
}

std::optional<Moment> readMoment(const Statement& row, int column)
{
    const auto day = row.get<std::optional<Date>>(column);
    if (!day) {
        return std::nullopt;
    }
    return Moment{*day, row.get<std::optional<int>>(column + 1).value_or(0)};
}

template <class Key, class Row>
std::map<Key, std::string> namesOf(const std::map<Key, Row>& rows, std::string Row::*name)
{
    std::map<Key, std::string> names;
    for (const auto& [id, row] : rows) {
        names[id] = row.*name;
    }
    return names;
}

// Reads the columns of the trays that were cut; each row finds its tray by merging on the id.
class SeasonReader
{
public:
    SeasonReader(Database& database, SeasonFacts& facts)
        : m_database(database)
        , m_facts(facts)
    {}

    void readCut(Date from, Date to)
    {
        Statement rows = m_database.prepare(
            std::string("SELECT ") + kTrayColumns +
            ", sum(h.net_mg), count(h.id), max(CASE WHEN h.is_last THEN h.on_date END) FROM "
            "(SELECT DISTINCT tray_id FROM harvest WHERE on_date BETWEEN ?1 AND ?2) AS cut "
            "JOIN tray AS t ON t.id = cut.tray_id JOIN harvest AS h ON h.tray_id = t.id "
            "GROUP BY t.id ORDER BY t.id");
        rows.bind(from, to);
        while (rows.step()) {
            SeasonRecord record;
            record.tray = readTray(rows);
            record.yield = rows.get<Mass>(kTrayColumnCount);
            record.cuts = rows.get<int>(kTrayColumnCount + 1);
            record.lastCut = rows.get<std::optional<Date>>(kTrayColumnCount + 2);
            const auto medium = m_facts.media.find(record.tray.medium);
            if (medium == m_facts.media.end()) {
                continue;
            }
            record.use.medium = &medium->second;
            m_facts.cut.push_back(std::move(record));
        }
        startUses();
    }

    void readUnfinished(Date from, Date to)
    {
        const std::string columns =
            std::string("SELECT ") + kTrayColumns +
            ", EXISTS (SELECT 1 FROM harvest AS h WHERE h.tray_id = t.id) FROM tray AS t ";
        const auto readAll = [&](Statement& rows) {
            while (rows.step()) {
                m_facts.unfinished.push_back(
                    {readTray(rows), rows.get<int>(kTrayColumnCount) != 0});
            }
        };
        Statement discarded =
            m_database.prepare(columns + "WHERE t.sown_on BETWEEN ?1 AND ?3 AND t.state = "
                                         "'discarded' AND t.ended_on BETWEEN ?2 AND ?3");
        readAll(discarded.bind(from - kLongestGrowth, from, to));
        Statement growing = m_database.prepare(
            columns + "WHERE t.state = 'growing' AND t.sown_on <= ?1 ORDER BY t.sown_on");
        readAll(growing.bind(to));
    }

    void readStages()
    {
        m_lights.assign(m_facts.cut.size(), {});
        forEachRow("SELECT tray_id, stage, started_on, started_minute FROM tray_stage "
                   "WHERE tray_id IN (SELECT value FROM json_each(?1)) ORDER BY tray_id",
                   [&](std::size_t index, const Statement& row) {
                       LightStage& light = m_lights[index];
                       const auto start = readMoment(row, 2);
                       light.hasStages = true;
                       m_facts.cut[index].use.stageMoves += start ? 1 : 0;
                       if (row.get<Stage>(1) == Stage::Light) {
                           light.isPlanned = true;
                           light.start = start;
                       }
                   });
        for (SeasonRecord& record : m_facts.cut) {
            // The first stage's start is no move.
            record.use.stageMoves = std::max(0, record.use.stageMoves - 1);
        }
    }

    void readStays()
    {
        std::vector<std::vector<Stay>> stays(m_facts.cut.size());
        forEachRow("SELECT tray_id, place_id, from_on, from_minute, to_on, to_minute FROM stay "
                   "WHERE tray_id IN (SELECT value FROM json_each(?1)) ORDER BY tray_id",
                   [&](std::size_t index, const Statement& row) {
                       Stay stay;
                       stay.place = row.get<PlaceId>(1);
                       stay.fromOn = row.get<Date>(2);
                       stay.fromMinute = row.get<int>(3);
                       stay.toOn = row.get<std::optional<Date>>(4);
                       stay.toMinute = row.get<std::optional<int>>(5);
                       stays[index].push_back(stay);
                   });
        for (std::size_t i = 0; i < stays.size(); ++i) {
            SeasonRecord& record = m_facts.cut[i];
            record.use.light =
                litTimes(record.tray.state, m_lights[i], stays[i],
                         endOfLight(record.tray, m_lights[i]), m_facts.cost.layout.places);
        }
    }

    void readWaterings()
    {
        forEachRow("SELECT tray_id, water, count(*), count(amount_ul), total(amount_ul) "
                   "FROM watering WHERE tray_id IN (SELECT value FROM json_each(?1)) "
                   "GROUP BY tray_id, water ORDER BY tray_id",
                   [&](std::size_t index, const Statement& row) {
                       addWaterings(m_facts.cut[index].use, row);
                   });
    }

    void readResidues()
    {
        forEachRow("SELECT tray_id, sum(net_mg) FROM residue "
                   "WHERE tray_id IN (SELECT value FROM json_each(?1)) GROUP BY tray_id",
                   [&](std::size_t index, const Statement& row) {
                       m_facts.cut[index].residue = row.get<Mass>(1);
                       m_facts.cut[index].use.residue = row.get<Mass>(1);
                   });
    }

    void readHeights()
    {
        forEachRow("SELECT tray_id, on_date, minute, reading_um, read_from FROM height "
                   "WHERE tray_id IN (SELECT value FROM json_each(?1)) ORDER BY tray_id, on_date",
                   [&](std::size_t index, const Statement& row) {
                       Height height;
                       height.tray = m_facts.cut[index].tray.id;
                       height.on = row.get<Date>(1);
                       height.minute = row.get<int>(2);
                       height.reading = row.get<Length>(3);
                       height.from = row.get<ReadFrom>(4);
                       m_facts.heights[height.tray].push_back(height);
                   });
    }

private:
    void startUses()
    {
        std::vector<TrayId> ids;
        for (SeasonRecord& record : m_facts.cut) {
            const Tray& tray = record.tray;
            ids.push_back(tray.id);
            record.use.sownOn = tray.sownOn;
            record.use.seedLot = tray.seedLot;
            record.use.seed = tray.seed;
            record.use.isHarvested = tray.state == TrayState::Harvested;
            record.use.hasEnded = tray.state != TrayState::Growing;
            record.use.cuts = record.cuts;
        }
        m_ids = idList(ids);
    }

    // Rows come by tray id, as the trays do, so that one pass finds them all.
    template <class Take>
    void forEachRow(const std::string& sql, Take take)
    {
        Statement rows = m_database.prepare(sql);
        rows.bind(m_ids);
        std::size_t index = 0;
        while (rows.step()) {
            const auto tray = rows.get<TrayId>(0);
            while (index < m_facts.cut.size() && m_facts.cut[index].tray.id < tray) {
                ++index;
            }
            if (index < m_facts.cut.size() && m_facts.cut[index].tray.id == tray) {
                take(index, rows);
            }
        }
    }

    static void addWaterings(TrayUse& use, const Statement& row)
    {
        const auto water = row.get<WaterKind>(1);
        const int count = row.get<int>(2);
        const bool isMeasured = row.get<int>(3) == count;
        const Volume amount = microlitres(static_cast<std::int64_t>(row.get<double>(4)));
        if (!use.waterings) {
            use.waterings = 0;
            use.water = Volume();
            use.nutrient = Volume();
        }
        *use.waterings += count;
        const auto add = [&](std::optional<Volume>& sum) {
            sum = sum && isMeasured ? std::optional(*sum + amount) : std::nullopt;
        };
        add(use.water);
        if (water == WaterKind::Nutrient) {
            add(use.nutrient);
        }
    }

    static Moment endOfLight(const Tray& tray, const LightStage& light)
    {
        const int minute = light.start ? light.start->minute : tray.sownMinute;
        return {tray.endedOn.value_or(tray.sownOn), tray.endedMinute.value_or(minute)};
    }

    Database& m_database;
    SeasonFacts& m_facts;
    std::string m_ids; // a JSON array
    std::vector<LightStage> m_lights;
};

} // namespace

Result<SeasonFacts> SeasonRepository::read(const SeasonFilter& filter, const Progress& progress)
{
    SeasonFacts facts;
    SeasonReader reader(m_database, facts);
    const std::function<void()> steps[] = {
        [&] {
            facts.cost = CostRepository(m_database).facts();
            facts.media = MediumRepository(m_database).byId();
            facts.varieties = namesOf(VarietyRepository(m_database).byId(), &Variety::name);
            facts.trials = namesOf(TrialRepository(m_database).byId(), &Trial::code);
        },
        [&] { reader.readCut(filter.from, filter.to); },
        [&] { reader.readUnfinished(filter.from, filter.to); },
        [&] { reader.readStages(); },
        [&] { reader.readStays(); },
        [&] { reader.readWaterings(); },
        [&] { reader.readResidues(); },
        [&] { reader.readHeights(); },
    };
    double done = 0;
    for (const auto& step : steps) {
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, "season");
        }
        step();
        progress.report(++done / static_cast<double>(std::size(steps)));
    }
    return facts;
}

} // namespace plumule
