#include "core/review/season_repository.h"

#include "core/cost/cost_repository.h"
#include "core/medium/medium_repository.h"
#include "core/storage/database.h"
#include "core/tray/tray_ids.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>
#include <unordered_map>

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

// Reads the columns of the trays that were cut, table by table.
class SeasonReader
{
public:
    SeasonReader(Database& database, SeasonFacts& facts)
        : m_database(database)
        , m_facts(facts)
    {}

    void readCut(Date from, Date to)
    {
        std::vector<TrayId> cut;
        {
            Statement rows = m_database.prepare(
                "SELECT DISTINCT tray_id FROM harvest WHERE on_date BETWEEN ?1 AND ?2");
            rows.bind(from, to);
            while (rows.step()) {
                cut.push_back(rows.get<TrayId>(0));
            }
        }
        m_ids = idList(cut);
        // Above that share of the journal reading a table from end to end is twice as fast as
        // finding the rows of each tray.
        m_readsAll = 2 * static_cast<std::int64_t>(cut.size()) >=
                     m_database.scalar("SELECT count(*) FROM tray");
        readTrays();
        readYields();
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
        forEachRow("tray_id, stage, started_on, started_minute FROM tray_stage",
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
        forEachRow("tray_id, place_id, from_on, from_minute, to_on, to_minute FROM stay",
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
        forEachRow("tray_id, water = 'nutrient', amount_ul FROM watering",
                   [&](std::size_t index, const Statement& row) {
                       addWatering(m_facts.cut[index].use, row);
                   });
    }

    void readResidues()
    {
        forEachRow("tray_id, net_mg FROM residue", [&](std::size_t index, const Statement& row) {
            auto& residue = m_facts.cut[index].use.residue;
            residue = residue.value_or(Mass()) + row.get<Mass>(1);
        });
    }

    void readHeights()
    {
        forEachRow("tray_id, on_date, reading_um, read_from FROM height",
                   [&](std::size_t index, const Statement& row) {
                       Height height;
                       height.on = row.get<Date>(1);
                       height.reading = row.get<Length>(2);
                       height.from = row.get<ReadFrom>(3);
                       m_facts.cut[index].heights.push_back(height);
                   });
    }

private:
    void readTrays()
    {
        Statement rows =
            m_database.prepare(std::string("SELECT ") + kTrayColumns +
                               " FROM tray AS t WHERE t.id IN (SELECT value FROM json_each(?1)) "
                               "ORDER BY t.id");
        rows.bind(m_ids);
        while (rows.step()) {
            SeasonRecord record;
            record.tray = readTray(rows);
            const auto medium = m_facts.media.find(record.tray.medium);
            if (medium == m_facts.media.end()) {
                continue;
            }
            record.use.medium = &medium->second;
            record.use.sownOn = record.tray.sownOn;
            record.use.seedLot = record.tray.seedLot;
            record.use.seed = record.tray.seed;
            record.use.isHarvested = record.tray.state == TrayState::Harvested;
            record.use.hasEnded = record.tray.state != TrayState::Growing;
            m_indexOf.emplace(record.tray.id, m_facts.cut.size());
            m_facts.cut.push_back(std::move(record));
        }
    }

    void readYields()
    {
        forEachRow("tray_id, net_mg, is_last, on_date FROM harvest",
                   [&](std::size_t index, const Statement& row) {
                       SeasonRecord& record = m_facts.cut[index];
                       record.yield += row.get<Mass>(1);
                       ++record.use.cuts;
                       if (row.get<bool>(2)) {
                           const auto day = row.get<Date>(3);
                           record.lastCut = std::max(record.lastCut.value_or(day), day);
                       }
                   });
    }

    // `take` is told the tray's index in the facts.
    template <class Take>
    void forEachRow(const std::string& columnsFromTable, Take take)
    {
        const std::string select = "SELECT " + columnsFromTable;
        Statement rows = m_database.prepare(
            m_readsAll ? select : select + " WHERE tray_id IN (SELECT value FROM json_each(?1))");
        if (!m_readsAll) {
            rows.bind(m_ids);
        }
        while (rows.step()) {
            const auto found = m_indexOf.find(rows.get<TrayId>(0));
            if (found != m_indexOf.end()) {
                take(found->second, rows);
            }
        }
    }

    static void addWatering(TrayUse& use, const Statement& row)
    {
        const auto amount = row.get<std::optional<Volume>>(2);
        if (!use.waterings) {
            use.waterings = 0;
            use.water = Volume();
            use.nutrient = Volume();
        }
        ++*use.waterings;
        const auto add = [&](std::optional<Volume>& sum) {
            sum = sum && amount ? std::optional(*sum + *amount) : std::nullopt;
        };
        add(use.water);
        if (row.get<bool>(1)) {
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
    bool m_readsAll = false;
    std::unordered_map<TrayId, std::size_t> m_indexOf;
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
