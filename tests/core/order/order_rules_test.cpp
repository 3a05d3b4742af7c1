#include "core/order/order_reason.h"
#include "tests/core/order/order_samples.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const Date kThursday = date(2026, 12, 10);

TEST(OrderRules, AStandingOrderIsPromisedEveryWeekUntilItEnds)
{
    Order order = orderOf(1, 500, kThursday, Recurrence::Weekly);
    EXPECT_THAT(promisedDays(order, kThursday - 20, kThursday + 15),
                ElementsAre(kThursday, kThursday + 7, kThursday + 14));
    EXPECT_THAT(promisedDays(order, kThursday + 8, kThursday + 14), ElementsAre(kThursday + 14));
    order.endsOn = kThursday + 14;
    EXPECT_THAT(promisedDays(order, kThursday + 1, kThursday + 40), ElementsAre(kThursday + 7));
    EXPECT_FALSE(isPromised(order, kThursday + 14));
    EXPECT_TRUE(isPromised(order, kThursday + 7));
    EXPECT_FALSE(isPromised(order, kThursday + 6));
}

TEST(OrderRules, AnOrderOfOneDayIsPromisedOnThatDayAlone)
{
    const Order order = orderOf(1, 500, kThursday);
    EXPECT_THAT(promisedDays(order, kThursday - 3, kThursday + 30), ElementsAre(kThursday));
    EXPECT_THAT(promisedDays(order, kThursday + 1, kThursday + 30), IsEmpty());
}

TEST(OrderRules, LooksFourWeeksAheadAndToTheNextDayOfEveryOrder)
{
    const Date today = kThursday - 1;
    const std::vector<Order> orders = {orderOf(1, 500, today + 90, Recurrence::Weekly),
                                       orderOf(2, 500, kThursday, Recurrence::Weekly),
                                       orderOf(3, 500, today - 1)};
    std::vector<Date> days;
    for (const Promise& promise : promisesAhead(orders, today)) {
        days.push_back(promise.day);
    }
    EXPECT_THAT(days,
                ElementsAre(kThursday, kThursday + 7, kThursday + 14, kThursday + 21, today + 90));
}

TEST(OrderRules, RefusesAnOrderThatSaysNothing)
{
    EXPECT_TRUE(checkOrder(orderOf(1, 500, kThursday)));
    EXPECT_TRUE(checkOrder(orderOf(1, 1'000'000, kThursday)));
    const auto reasonOf = [](const Order& order) { return checkOrder(order).error().reason; };
    Order order = orderOf(1, 500, kThursday);
    order.variety = {};
    EXPECT_EQ(reasonOf(order), Reason(OrderReason::VarietyMissing));
    EXPECT_EQ(reasonOf(orderOf(1, 0, kThursday)), Reason(OrderReason::Amount));
    EXPECT_EQ(reasonOf(orderOf(1, 1'000'001, kThursday)), Reason(OrderReason::Amount));
    order = orderOf(1, 500, kThursday, Recurrence::Weekly);
    order.endsOn = kThursday - 1;
    EXPECT_EQ(reasonOf(order), Reason(OrderReason::EndsBeforeDay));
}

TEST(OrderRules, AChangedStandingOrderKeepsWhatItPromisedBefore)
{
    const Order before = orderOf(1, 500, kThursday, Recurrence::Weekly);
    Order after = before;
    after.amount = grams(800);
    const OrderChange change = changeOf(before, after, kThursday + 10);
    ASSERT_TRUE(change.ended);
    EXPECT_EQ(change.ended->id, before.id);
    EXPECT_EQ(change.ended->amount, grams(500));
    EXPECT_EQ(change.ended->endsOn, kThursday + 10);
    EXPECT_FALSE(change.stored.id.isStored());
    EXPECT_EQ(change.stored.day, kThursday + 14);
    EXPECT_EQ(change.stored.amount, grams(800));
    // Today's promise is part of what changes.
    EXPECT_EQ(changeOf(before, after, kThursday + 7).stored.day, kThursday + 7);
}

TEST(OrderRules, WhatHasNoPastOrKeepsItsPromiseIsChangedInPlace)
{
    const Order before = orderOf(1, 500, kThursday, Recurrence::Weekly);
    Order after = before;
    after.amount = grams(800);
    EXPECT_FALSE(changeOf(before, after, kThursday).ended);
    after = before;
    after.customer = "Canteen";
    const OrderChange change = changeOf(before, after, kThursday + 10);
    EXPECT_FALSE(change.ended);
    EXPECT_EQ(change.stored, after);
    const Order once = orderOf(2, 500, kThursday);
    after = once;
    after.amount = grams(800);
    EXPECT_FALSE(changeOf(once, after, kThursday + 10).ended);
}

} // namespace
} // namespace plumule
