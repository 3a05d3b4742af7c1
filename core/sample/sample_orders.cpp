#include "core/sample/sample_orders.h"

#include "core/order/order_repository.h"

namespace plumule {

void storeSampleOrders(Database& database, SampleTables& tables, const SampleStock& stock)
{
    OrderRepository orders(database);
    tables.forEach("orders", [&](const SampleRow& row) {
        Order order;
        order.variety = row.found(stock.protocols, "variety").variety.id;
        if (row.has("medium")) {
            order.medium = row.found(stock.media, "medium").id;
        }
        order.amount = row.maybeGrams("amount_g").value_or(Mass{});
        order.day = row.day("day");
        order.recurs = row.named<Recurrence>("recurs");
        order.endsOn = row.maybeDay("ends_day");
        order.customer = row.text("customer");
        order.note = row.text("note");
        if (!tables.isFaulty()) {
            orders.insert(order);
        }
    });
}

} // namespace plumule
