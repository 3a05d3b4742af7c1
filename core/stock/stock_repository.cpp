#include "core/stock/stock_repository.h"

#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/stock/stock_rules.h"
#include "core/storage/table.h"
#include "core/trial/trial_plan_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <algorithm>

namespace plumule {

template <>
struct TableOf<StockItem>
{
    static constexpr const char* name = "supply";
    static constexpr auto columns = std::tuple{column("name", &StockItem::name),
                                               column("kind", &StockItem::kind),
                                               column("medium_id", &StockItem::medium),
                                               column("unit", &StockItem::unit),
                                               column("each_use_amount", &StockItem::eachUse),
                                               column("low_days", &StockItem::lowDays),
                                               column("low_amount", &StockItem::lowAmount),
                                               column("is_retired", &StockItem::isRetired)};
    static bool isSound(const StockItem& supply)
    {
        return (supply.kind == StockKind::Medium) == supply.medium.has_value();
    }
};

template <>
struct TableOf<StockCount>
{
    static constexpr const char* name = "supply_count";
    static constexpr auto columns =
        std::tuple{column("supply_id", &StockCount::supply), column("on_date", &StockCount::on),
                   column("minute", &StockCount::minute),    column("what", &StockCount::what),
                   column("amount", &StockCount::amount),    column("note", &StockCount::note)};
};

namespace {

// The day of the entry that each supply is reckoned from, the oldest of them.
Date oldestReckoning(const std::vector<StockCount>& counts, Date otherwise)
{
    std::map<StockItemId, Date> from;
    for (const StockCount& count : counts) {
        if (count.what == StockEvent::Counted || !from.contains(count.supply)) {
            from[count.supply] = count.on;
        }
    }
    Date oldest = otherwise;
    for (const auto& [supply, day] : from) {
        oldest = std::min(oldest, day);
    }
    return oldest;
}

std::vector<SowingAhead> plannedSowings(Database& database)
{
    std::vector<SowingAhead> planned;
    for (const TrialDraft& draft : TrialPlanRepository(database).all()) {
        for (const PlannedTray& tray : draft.trays) {
            const auto treatment = static_cast<std::size_t>(tray.treatment);
            if (!tray.tray && treatment < draft.treatments.size()) {
                planned.push_back({draft.plan.sowOn, draft.plan.variety, draft.plan.seedLot,
                                   draft.treatments[treatment].medium, draft.plan.seedPerTray, 1});
            }
        }
    }
    return planned;
}

std::optional<Date> lastCounted(Database& database)
{
    Statement statement =
        database.prepare("SELECT max(on_date) FROM (SELECT on_date FROM stock_correction UNION ALL "
                         "SELECT on_date FROM supply_count WHERE what = 'counted')");
    statement.step();
    return statement.get<std::optional<Date>>(0);
}

std::vector<VarietyId> everBought(Database& database)
{
    Statement statement =
        database.prepare("SELECT DISTINCT variety_id FROM seed_lot ORDER BY variety_id");
    std::vector<VarietyId> varieties;
    while (statement.step()) {
        varieties.push_back(statement.get<VarietyId>(0));
    }
    return varieties;
}

} // namespace

std::vector<StockItem> StockRepository::supplies() const
{
    return selectRows<StockItem>(m_database, "ORDER BY name COLLATE NOCASE, id");
}

std::optional<StockItem> StockRepository::find(StockItemId supply) const
{
    return findRow<StockItem>(m_database, supply);
}

void StockRepository::insert(StockItem& supply)
{
    insertRow(m_database, supply);
}

void StockRepository::update(const StockItem& supply)
{
    updateRow(m_database, supply);
}

void StockRepository::insert(StockCount& count)
{
    insertRow(m_database, count);
}

StockFacts StockRepository::facts(Date today) const
{
    StockFacts facts;
    VarietyRepository varieties(m_database);
    facts.lots = varieties.stock(std::nullopt, Listed::InUse);
    facts.varieties = varieties.byId();
    facts.everBought = everBought(m_database);
    facts.seedLows = varieties.seedLows();
    facts.media = MediumRepository(m_database).all(Listed::InUse);
    facts.recipes = WateringRepository(m_database).recipes();
    facts.supplies = supplies();
    facts.counts = selectRows<StockCount>(m_database, "ORDER BY on_date, minute, id");
    facts.planned = plannedSowings(m_database);
    facts.lastCounted = lastCounted(m_database);
    readUses(facts, oldestReckoning(facts.counts, today - kRateDays));
    return facts;
}

void StockRepository::readUses(StockFacts& facts, Date from) const
{
    Statement sown = m_database.prepare(
        "SELECT sown_on, sown_minute, variety_id, seed_lot_id, medium_id, seed_mg FROM tray "
        "WHERE sown_on >= ?1 ORDER BY sown_on, sown_minute, id");
    sown.bind(from);
    while (sown.step()) {
        facts.sown.push_back({{sown.get<Date>(0), sown.get<int>(1)},
                              sown.get<VarietyId>(2),
                              sown.get<std::optional<SeedLotId>>(3),
                              sown.get<MediumId>(4),
                              sown.get<std::optional<Mass>>(5)});
    }
    Statement given = m_database.prepare(
        "SELECT on_date, minute, water, sum(amount_ul) FROM watering WHERE on_date >= ?1 AND "
        "amount_ul IS NOT NULL GROUP BY on_date, minute, water");
    given.bind(from);
    while (given.step()) {
        facts.given.push_back({{given.get<Date>(0), given.get<int>(1)},
                               given.get<WaterKind>(2),
                               given.get<Volume>(3)});
    }
    Statement cuts = m_database.prepare("SELECT on_date, minute FROM harvest WHERE on_date >= ?1");
    cuts.bind(from);
    while (cuts.step()) {
        facts.cuts.push_back({cuts.get<Date>(0), cuts.get<int>(1)});
    }
    facts.sanitised = MediumRepository(m_database).sanitisings();
}

std::map<PieceId, PieceInUse> StockRepository::piecesInUse() const
{
    Statement statement = m_database.prepare(
        "SELECT t.piece_id, t.code, s.place_id FROM tray t LEFT JOIN stay s ON s.tray_id = t.id "
        "AND s.to_on IS NULL WHERE t.state = 'growing' AND t.piece_id IS NOT NULL");
    const std::vector<Spot> spots = RoomRepository(m_database).layout().spots();
    std::map<PieceId, PieceInUse> inUse;
    while (statement.step()) {
        const auto place = statement.get<std::optional<PlaceId>>(2);
        const auto spot = std::find_if(spots.begin(), spots.end(),
                                       [&](const Spot& each) { return place == each.place; });
        inUse.insert_or_assign(
            statement.get<PieceId>(0),
            PieceInUse{statement.get<std::string>(1),
                       spot == spots.end() ? std::nullopt : std::optional(*spot)});
    }
    return inUse;
}

} // namespace plumule
