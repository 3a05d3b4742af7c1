#include "core/cost/cost_repository.h"

#include "core/room/room_repository.h"
#include "core/storage/table.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace plumule {

template <>
struct TableOf<Price>
{
    static constexpr const char* name = "price";
    static constexpr auto columns =
        std::tuple{column("item", &Price::item), column("medium_id", &Price::medium),
                   column("from_date", &Price::from), column("amount", &Price::amount)};
};

// What a price was given for, where that is not the item's own unit.
struct PriceFor
{
    Id<PriceFor> id;
    PriceId price;
    PriceMeasure measure = PriceMeasure::Unit;
};

template <>
struct TableOf<PriceFor>
{
    static constexpr const char* name = "price_measure";
    static constexpr auto columns =
        std::tuple{column("price_id", &PriceFor::price), column("measure", &PriceFor::measure)};
};

template <>
struct TableOf<LabourTask>
{
    static constexpr const char* name = "labour_task";
    static constexpr auto columns =
        std::tuple{column("task", &LabourTask::kind), column("seconds", &LabourTask::seconds)};
};

namespace {

std::optional<Price> withMeasure(Database& database, std::optional<Price> price)
{
    if (price) {
        const auto given = selectRow<PriceFor>(database, "WHERE price_id = ?1", price->id);
        price->measure = given ? given->measure : PriceMeasure::Unit;
    }
    return price;
}

void removeMeasure(Database& database, PriceId price)
{
    database.prepare("DELETE FROM price_measure WHERE price_id = ?1").bind(price).run();
}

// An unchanged one is left alone, so that a save that changes nothing is none.
void storeMeasure(Database& database, const Price& price)
{
    const auto given = selectRow<PriceFor>(database, "WHERE price_id = ?1", price.id);
    if ((given ? given->measure : PriceMeasure::Unit) == price.measure) {
        return;
    }
    removeMeasure(database, price.id);
    if (price.measure != PriceMeasure::Unit) {
        PriceFor row{{}, price.id, price.measure};
        insertRow(database, row);
    }
}

} // namespace

std::vector<Price> CostRepository::prices() const
{
    auto prices = selectRows<Price>(m_database, "");
    std::map<PriceId, PriceMeasure> measures;
    for (const PriceFor& each : selectRows<PriceFor>(m_database, "")) {
        measures[each.price] = each.measure;
    }
    for (Price& price : prices) {
        const auto given = measures.find(price.id);
        price.measure = given == measures.end() ? PriceMeasure::Unit : given->second;
    }
    std::sort(prices.begin(), prices.end(), [](const Price& a, const Price& b) {
        return std::tuple(a.item, a.medium, b.from) < std::tuple(b.item, b.medium, a.from);
    });
    return prices;
}

std::optional<Price> CostRepository::findPrice(PriceId price) const
{
    return withMeasure(m_database, findRow<Price>(m_database, price));
}

std::optional<Price> CostRepository::findPrice(PriceItem item, std::optional<MediumId> medium,
                                               Date from) const
{
    return withMeasure(m_database,
                       selectRow<Price>(m_database,
                                        "WHERE item = ?1 AND medium_id IS ?2 AND from_date = ?3",
                                        item, medium, from));
}

void CostRepository::insert(Price& price)
{
    insertRow(m_database, price);
    storeMeasure(m_database, price);
}

void CostRepository::update(const Price& price)
{
    updateRow(m_database, price);
    storeMeasure(m_database, price);
}

void CostRepository::remove(PriceId price)
{
    removeMeasure(m_database, price);
    deleteRow<Price>(m_database, price);
}

std::vector<LabourTask> CostRepository::labour() const
{
    auto tasks = selectRows<LabourTask>(m_database, "ORDER BY id");
    std::stable_sort(tasks.begin(), tasks.end(),
                     [](const LabourTask& a, const LabourTask& b) { return a.kind < b.kind; });
    return tasks;
}

std::optional<LabourTask> CostRepository::findLabour(LabourTaskId task) const
{
    return findRow<LabourTask>(m_database, task);
}

void CostRepository::insert(LabourTask& task)
{
    insertRow(m_database, task);
}

void CostRepository::update(const LabourTask& task)
{
    updateRow(m_database, task);
}

CostFacts CostRepository::facts() const
{
    CostFacts facts = factsOfLot(std::nullopt);
    facts.lots = VarietyRepository(m_database).lotsById();
    return facts;
}

CostFacts CostRepository::factsOfLot(std::optional<SeedLotId> lot) const
{
    CostFacts facts;
    facts.layout = RoomRepository(m_database).layout();
    facts.prices = prices();
    facts.labour = labour();
    facts.recipes = WateringRepository(m_database).recipes();
    if (const auto found = lot ? VarietyRepository(m_database).find(*lot) : std::nullopt) {
        facts.lots.emplace(found->id, *found);
    }
    return facts;
}

} // namespace plumule
