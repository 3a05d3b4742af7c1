#pragma once

#include "core/base/result.h"
#include "core/order/order.h"

namespace plumule {

inline constexpr int kDaysAWeek = 7;
inline constexpr int kMostKilogramsPromised = 1000;

// Missing variety; Invalid: an amount of nothing or above kMostKilogramsPromised, an end before the
// first day.
[[nodiscard]] Done checkOrder(const Order& order);

// The days from one to another, both included, for which something is promised, oldest first.
[[nodiscard]] std::vector<Date> promisedDays(const Order& order, Date from, Date to);
[[nodiscard]] bool isPromised(const Order& order, Date day);
// The same of many orders, by day and then as they were written down.
[[nodiscard]] std::vector<Promise> promises(const std::vector<Order>& orders, Date from, Date to);

// Those from today on that are looked ahead to: kDaysAhead of standing orders, and of any order its
// next day at least.
inline constexpr int kDaysAhead = 28;
[[nodiscard]] std::vector<Promise> promisesAhead(const std::vector<Order>& orders, Date today);

// What is stored where an order is changed.
struct OrderChange
{
    std::optional<Order> ended; // as it was promised up to today
    Order stored;               // its id is not stored where `ended` keeps it
};

// A standing order of which days have passed keeps what it promised on them: it ends today, and
// what it is changed to begins as a new one on its first day from today on. Customer, note and end
// are changed in place.
[[nodiscard]] OrderChange changeOf(const Order& before, const Order& after, Date today);

} // namespace plumule
