#pragma once

#include "core/order/order_rules.h"

namespace plumule {

// The 10th of December 2026 is a Thursday.
inline Order orderOf(std::int64_t id, double inGramsPromised, Date day,
                     Recurrence recurs = Recurrence::Once)
{
    Order order;
    order.id = {id};
    order.variety = {1};
    order.amount = grams(inGramsPromised);
    order.day = day;
    order.recurs = recurs;
    return order;
}

} // namespace plumule
