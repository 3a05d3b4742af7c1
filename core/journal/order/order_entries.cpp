#include "core/journal/order/order_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_repository.h"
#include "core/order/order_reason.h"
#include "core/order/order_repository.h"
#include "core/order/order_rules.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// The variety, and amount in mg, day and customer.
void tell(Deed& deed, Database& database, const Order& order, Date day)
{
    const auto variety = VarietyRepository(database).find(order.variety);
    deed.whom = variety ? variety->name : std::string();
    deed.with = {std::to_string(order.amount.count()), toIso(day), order.customer};
}

Done checkStored(Database& database, const Order& order)
{
    if (!VarietyRepository(database).find(order.variety)) {
        return fail(ErrorKind::NotFound, OrderReason::VarietyMissing);
    }
    if (order.medium && !MediumRepository(database).find(*order.medium)) {
        return fail(ErrorKind::NotFound, OrderReason::MediumUnknown);
    }
    return {};
}

Order tidied(const Order& order)
{
    Order tidy = order;
    tidy.customer = std::string(trimmed(order.customer));
    tidy.note = std::string(trimmed(order.note));
    if (tidy.recurs == Recurrence::Once) {
        tidy.endsOn.reset();
    }
    return tidy;
}

Result<Order> storeChange(OrderRepository& orders, const Order& after, Date today)
{
    const auto before = orders.find(after.id);
    if (!before) {
        return fail(ErrorKind::NotFound, OrderReason::Unknown);
    }
    OrderChange change = changeOf(*before, after, today);
    if (const Done checked = checkOrder(change.stored); !checked) {
        return passOn(checked);
    }
    if (change.ended) {
        orders.update(*change.ended);
        orders.insert(change.stored);
    } else {
        orders.update(change.stored);
    }
    return change.stored;
}

Result<Promise> promiseOf(OrderRepository& orders, PromiseKey key)
{
    const auto order = orders.find(key.order);
    if (!order) {
        return fail(ErrorKind::NotFound, OrderReason::Unknown);
    }
    if (!isPromised(*order, key.day)) {
        return fail(ErrorKind::NotFound, OrderReason::DayNotPromised, toIso(key.day));
    }
    return Promise{*order, key.day};
}

// Those of its variety that may go to it, and what of each does as things stand.
std::vector<CutForPromise> cutsOf(OrderRepository& orders, const Promise& promise)
{
    const Date from = promise.day - kDaysForHand;
    const std::vector<WeighedCut> cuts = orders.cuts(from - kDaysKept, promise.day);
    const SharesByPromise shares =
        shareCuts(promises(orders.all(), from - kDaysKept, promise.day + kDaysKept), cuts);
    const auto here = shares.find(promise.key());
    std::vector<CutForPromise> found;
    for (const WeighedCut& cut : cuts) {
        if (cut.variety != promise.order.variety || cut.on < from) {
            continue;
        }
        found.push_back({cut, {}});
        if (here == shares.end()) {
            continue;
        }
        for (const CutShare& share : here->second) {
            if (share.cut == cut.id) {
                found.back().part += share.part;
            }
        }
    }
    return found;
}

Done checkVariety(OrderRepository& orders, const Promise& promise,
                  const std::vector<HarvestId>& cuts)
{
    for (const HarvestId id : cuts) {
        const auto cut = orders.cut(id);
        if (!cut) {
            return fail(ErrorKind::NotFound, OrderReason::CutUnknown);
        }
        if (cut->variety != promise.order.variety) {
            return fail(ErrorKind::Invalid, OrderReason::CutOfOtherVariety, cut->code);
        }
    }
    return {};
}

} // namespace

Result<std::vector<Order>> OrderEntries::all()
{
    return m_ledger.ask([](Database& database) { return OrderRepository(database).all(); });
}

Result<OrderBook> OrderEntries::book()
{
    return m_ledger.ask(
        [&](Database& database) { return orderBookOf(database, m_ledger.clock().now()); });
}

Result<Order> OrderEntries::save(const Order& order)
{
    const bool isNew = !order.id.isStored();
    return m_ledger.record(isNew ? Intention::AddOrder : Intention::ChangeOrder,
                           [&](Database& database, Deed& deed) -> Result<Order> {
                               Order tidy = tidied(order);
                               tell(deed, database, tidy, tidy.day);
                               const Done checked = checkOrder(tidy).and_then(
                                   [&] { return checkStored(database, tidy); });
                               if (!checked) {
                                   return passOn(checked);
                               }
                               OrderRepository orders(database);
                               if (!isNew) {
                                   return storeChange(orders, tidy, m_ledger.clock().today());
                               }
                               orders.insert(tidy);
                               return tidy;
                           });
}

Done OrderEntries::end(OrderId order, Date from)
{
    return m_ledger.record(Intention::EndOrder, [&](Database& database, Deed& deed) -> Done {
        OrderRepository orders(database);
        auto found = orders.find(order);
        if (!found) {
            return fail(ErrorKind::NotFound, OrderReason::Unknown);
        }
        if (found->recurs == Recurrence::Once) {
            return fail(ErrorKind::Conflict, OrderReason::NotStanding);
        }
        tell(deed, database, *found, from);
        if (from <= found->day) {
            orders.remove(order);
            return {};
        }
        found->endsOn = from;
        orders.update(*found);
        return {};
    });
}

Done OrderEntries::remove(OrderId order)
{
    return m_ledger.record(Intention::RemoveOrder, [&](Database& database, Deed& deed) -> Done {
        OrderRepository orders(database);
        const auto found = orders.find(order);
        if (!found) {
            return fail(ErrorKind::NotFound, OrderReason::Unknown);
        }
        tell(deed, database, *found, found->day);
        orders.remove(order);
        return {};
    });
}

Result<std::vector<CutForPromise>> OrderEntries::cutsFor(PromiseKey promise)
{
    return m_ledger.ask([&](Database& database) -> Result<std::vector<CutForPromise>> {
        OrderRepository orders(database);
        const auto found = promiseOf(orders, promise);
        if (!found) {
            return passOn(found);
        }
        return cutsOf(orders, *found);
    });
}

Done OrderEntries::setCuts(PromiseKey promise, const std::vector<HarvestId>& cuts)
{
    return m_ledger.record(Intention::PutCutsToOrder, [&](Database& database, Deed& deed) -> Done {
        OrderRepository orders(database);
        const auto found = promiseOf(orders, promise);
        const Done checked = found ? checkVariety(orders, *found, cuts) : Done(passOn(found));
        if (!checked) {
            return checked;
        }
        tell(deed, database, found->order, promise.day);
        for (const CutForPromise& each : cutsOf(orders, *found)) {
            const bool isWanted = std::find(cuts.begin(), cuts.end(), each.cut.id) != cuts.end();
            if (isWanted) {
                orders.assign({{}, each.cut.id, promise.order, promise.day});
            } else if (each.part > Mass{}) {
                orders.assign({{}, each.cut.id, std::nullopt, std::nullopt});
            }
        }
        return {};
    });
}

Done OrderEntries::shareByRule(PromiseKey promise)
{
    return m_ledger.record(Intention::PutCutsToOrder, [&](Database& database, Deed& deed) -> Done {
        OrderRepository orders(database);
        const auto found = promiseOf(orders, promise);
        if (!found) {
            return passOn(found);
        }
        tell(deed, database, found->order, promise.day);
        for (const CutForPromise& each : cutsOf(orders, *found)) {
            orders.release(each.cut.id);
        }
        return {};
    });
}

} // namespace plumule
