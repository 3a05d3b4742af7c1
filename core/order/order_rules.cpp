#include "core/order/order_rules.h"

#include "core/order/order_reason.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr double kGramsAKilogram = 1000;

// The order's first day from `from` on, whether it has ended by then or not.
Date firstDayFrom(const Order& order, Date from)
{
    if (order.day >= from || order.recurs == Recurrence::Once) {
        return order.day;
    }
    const int past = from - order.day;
    const int weeks = (past + kDaysAWeek - 1) / kDaysAWeek;
    return order.day + weeks * kDaysAWeek;
}

bool promisesAlike(const Order& a, const Order& b)
{
    return a.variety == b.variety && a.medium == b.medium && a.amount == b.amount &&
           a.day == b.day && a.recurs == b.recurs;
}

} // namespace

Done checkOrder(const Order& order)
{
    if (!order.variety.isStored()) {
        return fail(ErrorKind::Missing, OrderReason::VarietyMissing);
    }
    if (order.amount <= Mass{} || order.amount > grams(kMostKilogramsPromised * kGramsAKilogram)) {
        return fail(ErrorKind::Invalid, OrderReason::Amount, kMostKilogramsPromised);
    }
    if (order.endsOn && *order.endsOn < order.day) {
        return fail(ErrorKind::Invalid, OrderReason::EndsBeforeDay, toIso(order.day));
    }
    return {};
}

std::vector<Date> promisedDays(const Order& order, Date from, Date to)
{
    std::vector<Date> days;
    const Date last = order.endsOn ? std::min(to, *order.endsOn - 1) : to;
    for (Date day = firstDayFrom(order, from); day <= last; day = day + kDaysAWeek) {
        if (day >= from) {
            days.push_back(day);
        }
        if (order.recurs == Recurrence::Once) {
            break;
        }
    }
    return days;
}

bool isPromised(const Order& order, Date day)
{
    return !promisedDays(order, day, day).empty();
}

std::vector<Promise> promises(const std::vector<Order>& orders, Date from, Date to)
{
    std::vector<Promise> all;
    for (const Order& order : orders) {
        for (const Date day : promisedDays(order, from, to)) {
            all.push_back({order, day});
        }
    }
    std::sort(all.begin(), all.end(), isBefore);
    return all;
}

std::vector<Promise> promisesAhead(const std::vector<Order>& orders, Date today)
{
    std::vector<Promise> all;
    for (const Order& order : orders) {
        const Date last = std::max(today + kDaysAhead, firstDayFrom(order, today));
        for (const Date day : promisedDays(order, today, last)) {
            all.push_back({order, day});
        }
    }
    std::sort(all.begin(), all.end(), isBefore);
    return all;
}

OrderChange changeOf(const Order& before, const Order& after, Date today)
{
    const bool hasPast = before.recurs == Recurrence::Weekly && before.day < today;
    if (!hasPast || promisesAlike(before, after)) {
        return {std::nullopt, after};
    }
    Order ended = before;
    ended.endsOn = before.endsOn ? std::min(*before.endsOn, today) : today;
    Order next = after;
    next.id = {};
    next.day = firstDayFrom(after, today);
    return {ended, next};
}

} // namespace plumule
