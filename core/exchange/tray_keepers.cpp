// Part of core/exchange/table_keepers.h: rows about a tray on a day.
#include "core/exchange/tray_keepers.h"

#include "core/base/moment_text.h"
#include "core/exchange/row_fault.h"
#include "core/exchange/tray_import.h"
#include "core/harvest/harvest_reason.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/watering.h"
#include "core/watering/watering_reason.h"

#include <fmt/format.h>
#include <set>

namespace plumule {
namespace {

constexpr double kMostGrams = 50'000;
constexpr double kMostMillimetres = 1'000;
constexpr double kMostMillilitres = 100'000;

class HeightKeeper : public TraySheetKeeper
{
public:
    HeightKeeper(Database& database, Date today)
        : TraySheetKeeper(database, "height", today)
        , m_media(MediumRepository(database).byId())
    {}

private:
    void readRow(RowCells& cells) override
    {
        const KnownTray* tray = readTrayDay(cells);
        cells.needed("height_mm");
        const auto reading = cells.length("height_mm", kMostMillimetres, Amounts::NotNegative);
        const ReadFrom from = cells.word<ReadFrom>("read_from").value_or(ReadFrom::Surface);
        if (tray == nullptr || !reading) {
            return;
        }
        const auto medium = m_media.find(tray->medium);
        if (from == ReadFrom::Rim && medium != m_media.end() && !medium->second.surfaceBelowRim) {
            cells.fault(ErrorKind::Conflict, TrayReason::SurfaceUnknown, medium->second.name);
        }
        set("reading_um", *reading);
        set("read_from", from);
    }

    std::map<MediumId, Medium> m_media;
};

class WateringKeeper : public TraySheetKeeper
{
public:
    WateringKeeper(Database& database, Date today)
        : TraySheetKeeper(database, "watering", today)
        , m_betweenSheet(storedSheet(database, "watering_between"))
    {
        eachStoredRow(database, "watering_between", [this](const StoredRow& row) {
            m_between.insert(row.get<std::int64_t>("watering_id"));
        });
    }

private:
    static std::string tickOf(std::int64_t tray, Date on, Slot slot)
    {
        return fmt::format("{} {} {}", tray, on.days, toText(slot));
    }
    void learnRow(const StoredRow& row) override
    {
        if (!m_between.contains(row.number())) {
            m_ticks.insert(tickOf(row.get<std::int64_t>("tray_id"), row.get<Date>("on_date"),
                                  row.get<Slot>("slot")));
        }
    }
    void readRow(RowCells& cells) override
    {
        // Without a round named it is that of the time, else the morning's.
        const auto minute = cells.minute("time");
        const Slot slot =
            cells.word<Slot>("slot").value_or(minute ? slotAt(room(), *minute) : Slot::Morning);
        const KnownTray* tray = readTrayDay(cells, slot);
        cells.needed("method");
        const auto method = cells.word<WateringMethod>("method");
        const auto water = cells.word<WaterKind>("water");
        const auto amount = cells.volume("amount_ml", kMostMillilitres);
        m_isBetween = cells.flag("between").value_or(false);
        if (method == WateringMethod::None) {
            cells.fault(ErrorKind::Invalid, WateringReason::MethodMissing);
        }
        if (tray == nullptr || !method) {
            return;
        }
        m_tick = tickOf(tray->id.value, at().date, slot);
        m_code = tray->code;
        set("slot", slot);
        set("method", *method);
        set("water", water.value_or(WaterKind::Plain));
        set("amount_ul", amount);
    }
    void check(RowCells& cells) override
    {
        if (!m_isBetween && !m_ticks.insert(m_tick).second) {
            cells.fault(ErrorKind::Conflict, WateringReason::TickedAlready, m_code);
        }
    }
    void storeBeside(std::int64_t watering) override
    {
        if (m_isBetween) {
            SheetRepository(database()).insert(m_betweenSheet, {database().nextId(), watering});
        }
    }
    [[nodiscard]] std::string keyBeside() const override { return m_isBetween ? "between" : ""; }
    [[nodiscard]] std::string keyBesideOf(const StoredRow& row) const override
    {
        return m_between.contains(row.number()) ? "between" : "";
    }

    JournalSheet m_betweenSheet;
    std::set<std::int64_t> m_between;
    std::set<std::string> m_ticks;
    std::string m_tick;
    std::string m_code;
    bool m_isBetween = false;
};

class CutKeeper : public TraySheetKeeper
{
public:
    CutKeeper(Database& database, Date today)
        : TraySheetKeeper(database, "harvest", today)
    {
        eachStoredRow(database, "stay", [this](const StoredRow& row) {
            if (!row.get<std::optional<Date>>("to_on")) {
                m_standsSince[row.get<std::int64_t>("tray_id")] = {row.get<Date>("from_on"),
                                                                   row.get<int>("from_minute")};
            }
        });
    }

private:
    void learnRow(const StoredRow& row) override
    {
        int& cuts = m_cuts[row.get<std::int64_t>("tray_id")];
        cuts = std::max(cuts, row.get<int>("cut"));
    }
    [[nodiscard]] bool isGivenHere(std::string_view column) const override
    {
        return column == "cut";
    }
    void readRow(RowCells& cells) override
    {
        m_tray = readTrayDay(cells);
        cells.needed("net_g");
        const auto net = cells.mass("net_g", kMostGrams);
        m_isLast = cells.flag("last").value_or(true);
        if (m_tray == nullptr || !net) {
            return;
        }
        set("net_mg", *net);
        set("is_last", m_isLast);
        set("note", cells.text("note"));
    }
    void check(RowCells& cells) override
    {
        const auto since = m_standsSince.find(m_tray->id.value);
        if (m_tray->state == TrayState::Discarded) {
            cells.fault(ErrorKind::Conflict, HarvestReason::TrayDiscarded, m_tray->code);
        } else if (m_tray->state == TrayState::Harvested) {
            cells.fault(ErrorKind::Conflict, ExchangeReason::CutAfterLast, m_tray->code);
        } else if (m_isLast && since != m_standsSince.end() && at() < since->second) {
            cells.fault(ErrorKind::Conflict, TrayReason::EndBeforeStay, textOf(since->second));
        } else {
            set("cut", ++m_cuts[m_tray->id.value]);
            m_tray->state = m_isLast ? TrayState::Harvested : m_tray->state;
        }
    }
    void storeBeside(std::int64_t) override
    {
        TrayRepository trays(database());
        auto tray = m_isLast ? trays.find(m_tray->id) : std::nullopt;
        if (tray) {
            trays.end(*tray, TrayState::Harvested, at());
        }
    }

    std::unordered_map<std::int64_t, int> m_cuts;
    std::unordered_map<std::int64_t, Moment> m_standsSince;
    KnownTray* m_tray = nullptr;
    bool m_isLast = true;
};

class ResidueKeeper : public TraySheetKeeper
{
public:
    ResidueKeeper(Database& database, Date today)
        : TraySheetKeeper(database, "residue", today)
    {}

private:
    void readRow(RowCells& cells) override
    {
        const KnownTray* tray = readTrayDay(cells);
        cells.needed("net_g");
        const auto net = cells.mass("net_g", kMostGrams);
        if (tray == nullptr || !net) {
            return;
        }
        if (tray->state == TrayState::Discarded) {
            cells.fault(ErrorKind::Conflict, HarvestReason::TrayDiscarded, tray->code);
        }
        set("net_mg", *net);
    }
};

// Says when stages began: rows that the journal has already are written anew.
class StageKeeper : public StoringKeeper
{
public:
    StageKeeper(Database& database, Date today)
        : m_database(database)
        , m_trays(database)
        , m_today(today)
        , m_morning(RoomRepository(database).room().morningMinute)
    {}

    void begin(const std::function<void(std::string)>& know) override
    {
        for (TrayRecord& record : TrayRepository(m_database).records()) {
            for (const TrayStage& stage : record.stages) {
                if (const auto started = stage.started()) {
                    know(keyOf(stage.tray, stage.stage, *started));
                }
            }
            m_stages.emplace(record.tray.id.value, std::move(record.stages));
        }
    }

    std::string read(RowCells& cells) override
    {
        m_tray = m_trays.in(cells, "tray");
        cells.needed("stage");
        const auto stage = cells.word<Stage>("stage");
        const auto at =
            m_tray == nullptr ? std::nullopt : momentOf(cells, *m_tray, m_today, m_morning);
        if (!stage || !at) {
            return {};
        }
        m_stage = *stage;
        m_at = *at;
        return keyOf(m_tray->id, *stage, *at);
    }

    Fate accept(RowCells& cells) override
    {
        for (TrayStage& stage : m_stages[m_tray->id.value]) {
            if (stage.stage == m_stage) {
                stage.startedOn = m_at.date;
                stage.startedMinute = m_at.minute;
                m_changed = stage;
                m_touched.emplace(m_tray->id.value, Touched{cells.line(), m_tray->code});
                return Fate::New;
            }
        }
        cells.fault(ErrorKind::NotFound, ExchangeReason::StageUnknown, m_tray->code,
                    std::string(toText(m_stage)));
        return Fate::Refused;
    }

    // Only the whole file tells whether they began in their order.
    void finish(FaultList& faults, HeldRows&) override
    {
        for (const auto& [tray, touched] : m_touched) {
            std::optional<Moment> before;
            bool isGap = false;
            for (const TrayStage& stage : m_stages[tray]) {
                const auto started = stage.started();
                if (started && (isGap || (before && *started < *before))) {
                    faults.add(faultAt("", touched.line, ErrorKind::Conflict,
                                       ExchangeReason::StageOutOfOrder, touched.code,
                                       std::string(toText(stage.stage)))
                                   .value());
                    break;
                }
                isGap = !started;
                before = started ? started : before;
            }
        }
    }

    void store() override { TrayRepository(m_database).update(m_changed); }

private:
    struct Touched
    {
        int line = 0;
        std::string code;
    };

    static std::string keyOf(TrayId tray, Stage stage, Moment at)
    {
        return fmt::format("{} {} {} {}", tray.value, toText(stage), at.date.days, at.minute);
    }

    Database& m_database;
    KnownTrays m_trays;
    Date m_today;
    int m_morning;
    std::unordered_map<std::int64_t, std::vector<TrayStage>> m_stages;
    std::map<std::int64_t, Touched> m_touched;
    KnownTray* m_tray = nullptr;
    Stage m_stage = Stage::UnderWeight;
    Moment m_at;
    TrayStage m_changed;
};

} // namespace

std::unique_ptr<StoringKeeper> trayRowKeeper(TableKind kind, Database& database, Date today)
{
    switch (kind) {
    case TableKind::Stages:
        return std::make_unique<StageKeeper>(database, today);
    case TableKind::Waterings:
        return std::make_unique<WateringKeeper>(database, today);
    case TableKind::Heights:
        return std::make_unique<HeightKeeper>(database, today);
    case TableKind::Cuts:
        return std::make_unique<CutKeeper>(database, today);
    case TableKind::Residues:
        return std::make_unique<ResidueKeeper>(database, today);
    default:
        return nullptr;
    }
}

} // namespace plumule
