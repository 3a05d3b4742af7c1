#pragma once

#include "core/order/order_plan.h"

namespace plumule {

class Database;

// A promise whose day has passed, and what was weighed for it.
struct PastPromise
{
    Promise promise;
    std::string variety;
    std::vector<CutShare> cuts;

    [[nodiscard]] Mass weighed() const { return sumOf(cuts); }
    // Below 0: short by that much.
    [[nodiscard]] Mass over() const { return weighed() - promise.order.amount; }
    [[nodiscard]] bool isKept() const { return over() >= Mass{}; }
};

// Promises are looked back on for that many days.
inline constexpr int kDaysBack = 92;

// All promises, as they stand.
struct OrderBook
{
    Date today;
    std::vector<OrderLine> toCome; // by day
    std::vector<PastPromise> past; // newest first
};

[[nodiscard]] OrderBook orderBookOf(Database& database, Moment now);

} // namespace plumule
