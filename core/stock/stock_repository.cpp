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
struct TableOf<Supply>
{
    static constexpr const char* name = "supply";
    static constexpr auto columns = std::tuple{column("name", &Supply::name),
                                               column("kind", &Supply::kind),
                                               column("medium_id", &Supply::medium),
                                               column("unit", &Supply::unit),
                                               column("each_use_amount", &Supply::eachUse),
                                               column("low_days", &Supply::lowDays),
                                               column("low_amount", &Supply::lowAmount),
                                               column("is_retired", &Supply::isRetired)};
    static bool isSound(const Supply& supply)
    {
        return (supply.kind == SupplyKind::Medium) == supply.medium.has_value();
    }
};

template <>
struct TableOf<SupplyCount>
{
    static constexpr const char* name = "supply_count";
    static constexpr auto columns =
        std::tuple{column("supply_id", &SupplyCount::supply), column("on_date", &SupplyCount::on),
                   column("minute", &SupplyCount::minute),    column("what", &SupplyCount::what),
                   column("amount", &SupplyCount::amount),    column("note", &SupplyCount::note)};
};

namespace {

// The day of the entry that each supply is reckoned from, the oldest of them.
Date oldestReckoning(const std::vector<SupplyCount>& counts, Date otherwise)
{
    std::map<SupplyId, Date> from;
    for (const SupplyCount& count : counts) {
        if (count.what == SupplyEvent::Counted || !from.contains(count.supply)) {
            from[count.supply] = count.on;
        }
    }
    Date oldest = otherwise;
    for (const auto& [supply, day] : from) {
        oldest = std::min(oldest, day);
    }
    return oldest;
}

std::vector<PlannedSowing> plannedSowings(Database& database)
{
    std::vector<PlannedSowing> planned;
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

std::vector<Supply> StockRepository::supplies() const
{
    return selectRows<Supply>(m_database, "ORDER BY name COLLATE NOCASE, id");
}

std::optional<Supply> StockRepository::find(SupplyId supply) const
{
    return findRow<Supply>(m_database, supply);
}

void StockRepository::insert(Supply& supply)
{
    insertRow(m_database, supply);
}

void StockRepository::update(const Supply& supply)
{
    updateRow(m_database, supply);
}

void StockRepository::insert(SupplyCount& count)
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
    facts.counts = selectRows<SupplyCount>(m_database, "ORDER BY on_date, minute, id");
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
