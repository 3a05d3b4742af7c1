#include "core/exchange/table_keepers.h"

#include "core/cost/cost.h"
#include "core/cost/cost_reason.h"
#include "core/exchange/known_by_name.h"
#include "core/exchange/score_keeper.h"
#include "core/exchange/tray_import.h"
#include "core/exchange/tray_keepers.h"
#include "core/watering/watering.h"
#include "core/watering/watering_reason.h"

#include <fmt/format.h>
#include <set>

namespace plumule {
namespace {

constexpr double kMostMoney = 100'000'000;
constexpr double kMostSeedGrams = 10'000'000;
constexpr double kHighestPh = 14;
constexpr double kHighestEc = 100'000;
constexpr int kMostPieces = 1'000'000;

class PriceKeeper : public SheetKeeper
{
public:
    PriceKeeper(Database& database, Date today)
        : SheetKeeper(database, "price", today)
        , m_measureSheet(storedSheet(database, "price_measure"))
        , m_media(knownNames(database, "medium"))
    {
        eachStoredRow(database, "price_measure", [this](const StoredRow& row) {
            m_measures[row.get<std::int64_t>("price_id")] = row.get<PriceMeasure>("measure");
        });
    }

private:
    static std::string slotOf(PriceItem item, std::int64_t medium, Date from)
    {
        return fmt::format("{} {} {}", toText(item), medium, from.days);
    }
    void learnRow(const StoredRow& row) override
    {
        const auto medium = row.get<std::optional<std::int64_t>>("medium_id");
        m_taken.insert(
            slotOf(row.get<PriceItem>("item"), medium.value_or(0), row.get<Date>("from_date")));
    }
    void readRow(RowCells& cells) override
    {
        cells.needed("item");
        cells.needed("from");
        cells.needed("amount");
        const auto item = cells.word<PriceItem>("item");
        const auto from = cells.day("from"); // prices may be known ahead
        const auto amount = cells.money("amount", kMostMoney);
        m_measure = cells.word<PriceMeasure>("measure").value_or(PriceMeasure::Unit);
        std::int64_t medium = 0;
        if (item == PriceItem::Medium) {
            medium = m_media.in(cells, "medium").value_or(0);
        } else if (item && cells.maybe("medium")) {
            cells.misformed("medium");
        }
        if (!item || !from || !amount || cells.hasFaults()) {
            return;
        }
        m_from = *from;
        m_slot = slotOf(*item, medium, *from);
        set("item", *item);
        if (medium != 0) {
            set("medium_id", medium);
        }
        set("from_date", *from);
        set("amount", *amount);
    }
    void check(RowCells& cells) override
    {
        if (!m_taken.insert(m_slot).second) {
            cells.fault(ErrorKind::Duplicate, CostReason::DayTaken, toIso(m_from));
        }
    }
    void storeBeside(std::int64_t price) override
    {
        if (m_measure != PriceMeasure::Unit) {
            SheetRepository(database())
                .insert(m_measureSheet,
                        {database().nextId(), price, std::string(toText(m_measure))});
        }
    }
    [[nodiscard]] std::string keyBeside() const override { return toText(m_measure); }
    [[nodiscard]] std::string keyBesideOf(const StoredRow& row) const override
    {
        const auto measure = m_measures.find(row.number());
        return toText(measure == m_measures.end() ? PriceMeasure::Unit : measure->second);
    }

    JournalSheet m_measureSheet;
    KnownByName m_media;
    std::unordered_map<std::int64_t, PriceMeasure> m_measures;
    std::set<std::string> m_taken;
    std::string m_slot;
    Date m_from;
    PriceMeasure m_measure = PriceMeasure::Unit;
};

class LotKeeper : public SheetKeeper
{
public:
    LotKeeper(Database& database, Date today)
        : SheetKeeper(database, "seed_lot", today)
        , m_varieties(knownNames(database, "variety"))
    {}

private:
    static std::string numberOf(std::int64_t variety, const std::string& number)
    {
        return fmt::format("{} {}", variety, nameKey(number));
    }
    void learnRow(const StoredRow& row) override
    {
        m_taken.insert(
            numberOf(row.get<std::int64_t>("variety_id"), row.get<std::string>("lot_number")));
    }
    void readRow(RowCells& cells) override
    {
        const auto variety = m_varieties.in(cells, "variety");
        m_number = cells.needed("lot_number");
        const auto germination = cells.number("germination_percent", 100);
        set("supplier", cells.text("supplier"));
        set("bought_on", pastDay(cells, "bought_on"));
        set("bought_mg", cells.mass("bought_g", kMostSeedGrams));
        set("price", cells.money("price", kMostMoney));
        set("germination_percent", germination);
        set("note", cells.text("note"));
        set("is_used_up", cells.flag("used_up").value_or(false));
        set("lot_number", m_number);
        if (variety) {
            set("variety_id", *variety);
            m_key = numberOf(*variety, m_number);
        }
    }
    void check(RowCells& cells) override
    {
        if (!m_taken.insert(m_key).second) {
            cells.fault(ErrorKind::Duplicate, ExchangeReason::NumberTwice,
                        std::string("lot_number"), m_number);
        }
    }

    KnownByName m_varieties;
    std::set<std::string> m_taken;
    std::string m_number;
    std::string m_key;
};

class PieceKeeper : public SheetKeeper
{
public:
    PieceKeeper(Database& database, Date today)
        : SheetKeeper(database, "piece", today)
        , m_media(knownNames(database, "medium"))
    {}

private:
    void learnRow(const StoredRow& row) override
    {
        m_taken.emplace(row.get<std::int64_t>("medium_id"), row.get<int>("number"));
    }
    void readRow(RowCells& cells) override
    {
        const auto medium = m_media.in(cells, "medium");
        cells.needed("number");
        const auto number = cells.whole("number", 1, kMostPieces);
        const auto bought = pastDay(cells, "bought_on");
        const auto retired = pastDay(cells, "retired_on");
        if (bought && retired && *retired < *bought) {
            cells.fault(ErrorKind::Invalid, ExchangeReason::RetiredBeforeBought, toIso(*retired));
        }
        if (!medium || !number) {
            return;
        }
        m_piece = {*medium, *number};
        set("medium_id", *medium);
        set("number", *number);
        set("bought_on", bought);
        set("retired_on", retired);
        set("note", cells.text("note"));
    }
    void check(RowCells& cells) override
    {
        if (!m_taken.insert(m_piece).second) {
            cells.fault(ErrorKind::Duplicate, ExchangeReason::NumberTwice, std::string("number"),
                        m_piece.second);
        }
    }

    KnownByName m_media;
    std::set<std::pair<std::int64_t, int>> m_taken;
    std::pair<std::int64_t, int> m_piece;
};

class ReadingKeeper : public SheetKeeper
{
public:
    ReadingKeeper(Database& database, Date today)
        : SheetKeeper(database, "water_reading", today)
        , m_trays(database)
    {}

private:
    void readRow(RowCells& cells) override
    {
        cells.needed("date");
        const auto day = pastDay(cells, "date");
        const auto minute = cells.minute("time");
        const Slot slot =
            cells.word<Slot>("slot").value_or(minute ? slotAt(room(), *minute) : Slot::Morning);
        const auto water = cells.word<WaterKind>("water");
        const auto ph = cells.number("ph", kHighestPh);
        const auto ec = cells.number("ec_us_cm", kHighestEc);
        if (cells.maybe("tray")) {
            const KnownTray* tray = m_trays.in(cells, "tray");
            set("tray_id", tray == nullptr ? std::nullopt : std::optional(tray->id));
        }
        if (!ph && !ec && !cells.hasFaults()) {
            cells.fault(ErrorKind::Missing, WateringReason::ReadingMissing);
        }
        if (!day) {
            return;
        }
        set("on_date", *day);
        set("slot", slot);
        set("minute", minute.value_or(room().minuteOf(slot)));
        set("water", water.value_or(WaterKind::Nutrient));
        set("ph", ph);
        set("ec_us_cm", ec);
    }

    KnownTrays m_trays;
};

} // namespace

std::unique_ptr<StoringKeeper> keeperFor(TableKind kind, Database& database, Date today)
{
    switch (kind) {
    case TableKind::Scores:
        return scoreKeeper(database, today);
    case TableKind::Prices:
        return std::make_unique<PriceKeeper>(database, today);
    case TableKind::SeedLots:
        return std::make_unique<LotKeeper>(database, today);
    case TableKind::Pieces:
        return std::make_unique<PieceKeeper>(database, today);
    case TableKind::WaterReadings:
        return std::make_unique<ReadingKeeper>(database, today);
    default:
        return trayRowKeeper(kind, database, today);
    }
}

} // namespace plumule
