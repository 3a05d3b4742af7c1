#pragma once

#include "core/journal/order/order_book.h"

namespace plumule {

class Ledger;

// A cut that may go to a promise.
struct CutForPromise
{
    WeighedCut cut;
    Mass part; // of it that goes to the promise
};

// Whom what was promised, what has to be sown for it, and whether it was kept.
class OrderEntries
{
public:
    explicit OrderEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // As they were written down, ended ones too.
    [[nodiscard]] Result<std::vector<Order>> all();
    // Promises to come with what is to be sown for them, and those that have passed.
    [[nodiscard]] Result<OrderBook> book();

    // Refused as checkOrder(), and NotFound: the order, its variety or its medium is gone. A
    // standing order of which days have passed keeps what it promised on them: see changeOf().
    Result<Order> save(const Order& order);
    // Nothing is promised from that day on. An order whose first day is not before it goes
    // altogether. NotFound; Conflict for an order of one day.
    Done end(OrderId order, Date from);
    // With what was put to it by hand. NotFound.
    Done remove(OrderId order);

    // Cuts of the promise's variety in the week up to its day, oldest first. NotFound, and NotFound
    // for a day that is not promised.
    [[nodiscard]] Result<std::vector<CutForPromise>> cutsFor(PromiseKey promise);
    // By hand: these go to the promise whole, and others that went there go nowhere. NotFound;
    // Invalid for a cut of another variety.
    Done setCuts(PromiseKey promise, const std::vector<HarvestId>& cuts);
    // The cuts that cutsFor() lists go by rule again.
    Done shareByRule(PromiseKey promise);

private:
    Ledger& m_ledger;
};

} // namespace plumule
