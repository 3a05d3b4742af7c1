#include "core/review/facts/season_repository.h"

#include "core/base/work_reason.h"
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

constexpr const char* kTrayColumns =
    "t.id, t.code, t.variety_id, t.seed_lot_id, t.medium_id, t.seed_mg, t.sown_on, t.sown_minute, "
    "t.trial_id, t.state, t.ended_on, t.ended_minute, t.discard_reason, t.set_aside_reason, "
    "t.piece_id, t.block, t.sown_by";
constexpr int kTrayColumnCount = 17;

// With fewer trays than these the span may not show the room's spread: other yields are read too,
// of about two years.
constexpr std::size_t kFewTrays = 200;
constexpr int kDaysOfPast = 730;

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

template <class Tag>
std::string idListOf(const std::vector<Id<Tag>>& ids)
{
    std::string list = "[";
    for (const Id<Tag> id : ids) {
        list += (list.size() > 1 ? "," : "") + std::to_string(id.value);
    }
    return list + "]";
}

void addTrials(SeasonFacts& facts, const std::map<TrialId, Trial>& trials)
{
    facts.trials = namesOf(trials, &Trial::code);
    for (const auto& [id, trial] : trials) {
        if (trial.margin) {
            facts.margins[id] = *trial.margin;
        }
    }
}

// Reads the columns of the trays that were cut, table by table.
class SeasonReader
{
public:
    SeasonReader(Database& database, SeasonFacts& facts)
        : m_database(database)
        , m_facts(facts)
    {}

    void readCut(const SeasonFilter& filter)
    {
        const std::vector<TrayId> cut =
            filter.trials.empty() ? trayIds("SELECT DISTINCT tray_id FROM harvest WHERE on_date "
                                            "BETWEEN ?1 AND ?2",
                                            filter.from, filter.to)
                                  : trayIds("SELECT DISTINCT h.tray_id FROM tray AS t JOIN harvest "
                                            "AS h ON h.tray_id = t.id WHERE t.trial_id IN (SELECT "
                                            "value FROM json_each(?3)) AND h.on_date BETWEEN ?1 "
                                            "AND ?2",
                                            filter.from, filter.to, idListOf(filter.trials));
        m_ids = idList(cut);
        // Above that share of the journal reading a table from end to end is twice as fast as
        // finding the rows of each tray.
        m_readsAll = 2 * static_cast<std::int64_t>(cut.size()) >=
                     m_database.scalar("SELECT count(*) FROM tray");
        readTrays(cut.size());
        readYields();
    }

    void readUnfinished(Date from, Date to)
    {
        const std::string columns =
            std::string("SELECT ") + kTrayColumns +
            ", EXISTS (SELECT 1 FROM harvest AS h WHERE h.tray_id = t.id), (SELECT s.place_id FROM "
            "stay AS s WHERE s.tray_id = t.id ORDER BY s.from_on DESC, s.from_minute DESC LIMIT 1) "
            "FROM tray AS t ";
        const auto readAll = [&](Statement& rows) {
            while (rows.step()) {
                const auto place = rows.get<std::optional<PlaceId>>(kTrayColumnCount + 1);
                m_facts.unfinished.push_back({readTray(rows), rows.get<int>(kTrayColumnCount) != 0,
                                              place ? shelfAt(*place) : std::nullopt});
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
        forEachRow("tray_id, started_on IS NOT NULL, water = 'nutrient', stage = 'light', "
                   "started_on, started_minute FROM tray_stage",
                   [&](std::size_t index, const Statement& row) {
                       LightStage& light = m_lights[index];
                       SeasonRecord& record = m_facts.cut[index];
                       light.hasStages = record.hasStages = true;
                       record.use.stageMoves += row.get<int>(1);
                       record.plansNutrient = record.plansNutrient || row.get<bool>(2);
                       if (row.get<bool>(3)) {
                           light.isPlanned = true;
                           light.start = readMoment(row, 4);
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
            record.shelf = shelfOfTray(record.use.light, stays[i]);
        }
    }

    void readWaterings(bool withAmounts)
    {
        const std::string amount = withAmounts ? ", amount_ul" : "";
        forEachRow("tray_id, water = 'nutrient'" + amount + " FROM watering",
                   [&](std::size_t index, const Statement& row) {
                       SeasonRecord& record = m_facts.cut[index];
                       const bool isNutrient = row.get<bool>(1);
                       record.nutrientWaterings += isNutrient ? 1 : 0;
                       if (withAmounts) {
                           addWatering(record.use, isNutrient, row.get<std::optional<Volume>>(2));
                       } else {
                           record.use.waterings = record.use.waterings.value_or(0) + 1;
                       }
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

    // Which use of its piece each tray was; all trays of a piece count, whenever they were grown.
    void readPieceUses()
    {
        Statement rows = m_database.prepare("SELECT id, piece_id FROM tray WHERE piece_id IS NOT "
                                            "NULL ORDER BY piece_id, sown_on, sown_minute, id");
        PieceId piece;
        int use = 0;
        while (rows.step()) {
            const auto present = rows.get<PieceId>(1);
            use = present == piece ? use + 1 : 1;
            piece = present;
            const auto found = m_indexOf.find(rows.get<TrayId>(0));
            if (found != m_indexOf.end()) {
                m_facts.cut[found->second].pieceUse = use;
            }
        }
    }

    // Columns of the layouts that the trays were planned in.
    void readPlannedColumns()
    {
        const bool hasSquares =
            std::any_of(m_facts.designs.begin(), m_facts.designs.end(),
                        [](const auto& entry) { return entry.second == Design::LatinSquare; });
        if (!hasSquares) {
            return;
        }
        forEachRow("tray_id, trial_id, position FROM (SELECT * FROM planned_tray WHERE tray_id "
                   "IS NOT NULL)",
                   [&](std::size_t index, const Statement& row) {
                       const auto design = m_facts.designs.find(row.get<TrialId>(1));
                       if (design != m_facts.designs.end() &&
                           design->second == Design::LatinSquare) {
                           m_facts.cut[index].column = row.get<int>(2);
                       }
                   });
    }

    // Yields of finished trays, but for those that were read already.
    void readPast(Date from, Date to)
    {
        if (m_facts.cut.size() >= kFewTrays) {
            return;
        }
        Statement rows = m_database.prepare(
            "SELECT t.medium_id, t.variety_id, t.trial_id, t.sown_on, sum(h.net_mg), t.id FROM "
            "harvest AS h JOIN tray AS t ON t.id = h.tray_id WHERE h.on_date BETWEEN ?1 AND ?2 AND "
            "t.state = 'harvested' AND t.set_aside_reason IS NULL GROUP BY t.id HAVING "
            "max(h.is_last) = 1");
        rows.bind(from, to);
        while (rows.step()) {
            if (m_indexOf.count(rows.get<TrayId>(5)) == 0) {
                m_facts.past.push_back({rows.get<MediumId>(0), rows.get<VarietyId>(1),
                                        rows.get<std::optional<TrialId>>(2), rows.get<Date>(3),
                                        rows.get<Mass>(4)});
            }
        }
    }

private:
    template <class... Values>
    std::vector<TrayId> trayIds(const char* query, const Values&... values)
    {
        std::vector<TrayId> ids;
        Statement rows = m_database.prepare(query);
        rows.bind(values...);
        while (rows.step()) {
            ids.push_back(rows.get<TrayId>(0));
        }
        return ids;
    }

    void readTrays(std::size_t count)
    {
        Statement rows =
            m_database.prepare(std::string("SELECT ") + kTrayColumns +
                               " FROM tray AS t WHERE t.id IN (SELECT value FROM json_each(?1)) "
                               "ORDER BY t.id");
        rows.bind(m_ids);
        m_facts.cut.reserve(count);
        m_indexOf.reserve(count);
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
        // Rows of one tray mostly follow each other.
        TrayId last;
        auto found = m_indexOf.end();
        while (rows.step()) {
            const auto tray = rows.get<TrayId>(0);
            if (tray != last) {
                found = m_indexOf.find(tray);
                last = tray;
            }
            if (found != m_indexOf.end()) {
                take(found->second, rows);
            }
        }
    }

    static void addWatering(TrayUse& use, bool isNutrient, std::optional<Volume> amount)
    {
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
        if (isNutrient) {
            add(use.nutrient);
        }
    }

    [[nodiscard]] std::optional<ShelfId>
    shelfOfTray(const std::optional<std::vector<LitTime>>& light, const std::vector<Stay>& stays)
    {
        if (light && !light->empty()) {
            return std::max_element(
                       light->begin(), light->end(),
                       [](const LitTime& a, const LitTime& b) { return a.minutes < b.minutes; })
                ->shelf;
        }
        const auto last =
            std::max_element(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) {
                return std::pair(a.fromOn, a.fromMinute) < std::pair(b.fromOn, b.fromMinute);
            });
        return last == stays.end() ? std::nullopt : shelfAt(last->place);
    }

    [[nodiscard]] std::optional<ShelfId> shelfAt(PlaceId place)
    {
        if (m_shelves.empty()) {
            for (const Place& one : m_facts.cost.layout.places) {
                m_shelves.emplace(one.id, one.shelf);
            }
        }
        const auto shelf = m_shelves.find(place);
        return shelf == m_shelves.end() ? std::nullopt : std::optional(shelf->second);
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
    std::unordered_map<PlaceId, ShelfId> m_shelves;
    std::vector<LightStage> m_lights;
};

void readCatalogues(Database& database, SeasonFacts& facts)
{
    facts.cost = CostRepository(database).facts();
    facts.media = MediumRepository(database).byId();
    facts.varieties = namesOf(VarietyRepository(database).byId(), &Variety::name);
    addTrials(facts, TrialRepository(database).byId());
    Statement plans = database.prepare("SELECT trial_id, design FROM trial_plan");
    while (plans.step()) {
        facts.designs[plans.get<TrialId>(0)] = plans.get<Design>(1);
    }
}

} // namespace

Result<SeasonFacts> SeasonRepository::read(const SeasonFilter& filter, const Progress& progress,
                                           const SeasonNeeds& needs)
{
    SeasonFacts facts;
    SeasonReader reader(m_database, facts);
    const std::function<void()> steps[] = {
        [&] { readCatalogues(m_database, facts); },
        [&] { reader.readCut(filter); },
        [&] { reader.readUnfinished(filter.from, filter.to); },
        [&] { reader.readStages(); },
        [&] { reader.readStays(); },
        [&] { reader.readWaterings(needs.waterAmounts); },
        [&] { reader.readResidues(); },
        [&] {
            if (needs.heights) {
                reader.readHeights();
            }
        },
        [&] { reader.readPieceUses(); },
        [&] { reader.readPlannedColumns(); },
        [&] {
            // Trays of the span that are of no trial asked for were not read.
            reader.readPast(filter.from - kDaysOfPast,
                            filter.trials.empty() ? filter.from - 1 : filter.to);
        },
    };
    double done = 0;
    for (const auto& step : steps) {
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        step();
        progress.report(++done / static_cast<double>(std::size(steps)));
    }
    return facts;
}

SeasonFacts SeasonRepository::readForPlan(VarietyId variety, Date day)
{
    SeasonFacts facts;
    readCatalogues(m_database, facts);
    facts.protocols[variety] = VarietyRepository(m_database).stages(variety);
    SeasonReader(m_database, facts).readPast(day - kDaysOfPast, day);
    return facts;
}

std::optional<std::pair<Date, Date>> SeasonRepository::sowingsOf(TrialId trial)
{
    Statement rows = m_database.prepare(
        "SELECT min(sown_on), max(sown_on) FROM tray WHERE trial_id = ?1 HAVING count(*) > 0 UNION "
        "ALL SELECT sow_on, sow_on FROM trial_plan WHERE trial_id = ?1");
    rows.bind(trial);
    return rows.step() ? std::optional(std::pair(rows.get<Date>(0), rows.get<Date>(1)))
                       : std::nullopt;
}

} // namespace plumule
