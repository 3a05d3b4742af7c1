#include "core/order/order_repository.h"

#include "core/storage/table.h"

namespace plumule {

template <>
struct TableOf<Order>
{
    static constexpr const char* name = "promised_order";
    static constexpr auto columns =
        std::tuple{column("variety_id", &Order::variety), column("medium_id", &Order::medium),
                   column("amount_mg", &Order::amount),   column("for_date", &Order::day),
                   column("recurs", &Order::recurs),      column("end_date", &Order::endsOn),
                   column("customer", &Order::customer),  column("note", &Order::note)};
    static bool isSound(const Order& order)
    {
        return order.amount > Mass{} && !(order.endsOn && *order.endsOn < order.day);
    }
};

template <>
struct TableOf<OrderCut>
{
    static constexpr const char* name = "order_cut";
    static constexpr auto columns =
        std::tuple{column("harvest_id", &OrderCut::harvest), column("order_id", &OrderCut::order),
                   column("for_date", &OrderCut::day)};
    static bool isSound(const OrderCut& cut)
    {
        return cut.order.has_value() == cut.day.has_value();
    }
};

namespace {

// Of a cut that two copies of a journal put somewhere, what was said last holds.
std::string cutsWhere(const char* condition)
{
    return "SELECT harvest.id, tray.code, tray.variety_id, harvest.on_date, harvest.minute, "
           "harvest.net_mg, " +
           selectList<OrderCut>("order_cut") +
           " FROM harvest JOIN tray ON tray.id = harvest.tray_id "
           "LEFT JOIN order_cut ON order_cut.id = (SELECT max(latest.id) FROM order_cut AS latest "
           "WHERE latest.harvest_id = harvest.id) WHERE " +
           condition;
}
constexpr int kByHandColumn = 6;

std::vector<WeighedCut> cutsIn(Statement& rows)
{
    std::vector<WeighedCut> cuts;
    while (rows.step()) {
        WeighedCut cut{rows.get<HarvestId>(0),
                       rows.get<std::string>(1),
                       rows.get<VarietyId>(2),
                       rows.get<Date>(3),
                       rows.get<int>(4),
                       rows.get<Mass>(5),
                       std::nullopt};
        if (rows.get<std::optional<OrderCutId>>(kByHandColumn)) {
            cut.byHand = readRow<OrderCut>(rows, kByHandColumn);
        }
        cuts.push_back(std::move(cut));
    }
    return cuts;
}

} // namespace

std::vector<Order> OrderRepository::all()
{
    return selectRows<Order>(m_database, "ORDER BY id");
}

std::optional<Order> OrderRepository::find(OrderId order)
{
    return findRow<Order>(m_database, order);
}

void OrderRepository::insert(Order& order)
{
    insertRow(m_database, order);
}

void OrderRepository::update(const Order& order)
{
    updateRow(m_database, order);
}

void OrderRepository::remove(OrderId order)
{
    m_database.prepare("DELETE FROM order_cut WHERE order_id = ?1").bind(order).run();
    deleteRow<Order>(m_database, order);
}

std::optional<WeighedCut> OrderRepository::cut(HarvestId cut)
{
    Statement rows = m_database.prepare(cutsWhere("harvest.id = ?1"));
    rows.bind(cut);
    const auto cuts = cutsIn(rows);
    return cuts.empty() ? std::nullopt : std::optional(cuts.front());
}

std::vector<WeighedCut> OrderRepository::cuts(Date from, Date to)
{
    Statement rows =
        m_database.prepare(cutsWhere("harvest.on_date BETWEEN ?1 AND ?2 "
                                     "ORDER BY harvest.on_date, harvest.minute, harvest.id"));
    rows.bind(from, to);
    return cutsIn(rows);
}

void OrderRepository::assign(const OrderCut& cut)
{
    auto stored = selectRow<OrderCut>(m_database, "WHERE harvest_id = ?1 ORDER BY id DESC LIMIT 1",
                                      cut.harvest);
    OrderCut row = cut;
    if (stored) {
        row.id = stored->id;
        updateRow(m_database, row);
    } else {
        insertRow(m_database, row);
    }
}

void OrderRepository::release(HarvestId cut)
{
    m_database.prepare("DELETE FROM order_cut WHERE harvest_id = ?1").bind(cut).run();
}

std::map<VarietyId, MediumId> OrderRepository::usualMedia()
{
    Statement rows = m_database.prepare("SELECT variety_id, medium_id FROM tray GROUP BY "
                                        "variety_id, medium_id ORDER BY count(*), max(sown_on)");
    std::map<VarietyId, MediumId> usual;
    while (rows.step()) {
        usual[rows.get<VarietyId>(0)] = rows.get<MediumId>(1);
    }
    return usual;
}

} // namespace plumule
