#pragma once

#include "core/base/result.h"
#include "core/stock/stock.h"
#include "core/trace/trace.h"

namespace plumule {

class Ledger;

// What is left of seed, media and the rest, and where it went.
class StockEntries
{
public:
    explicit StockEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<Stock> now();
    // What runs low, the shortest first.
    [[nodiscard]] Result<std::vector<LowThing>> low();

    // Name, share and low marks; a new supply where its id is not stored. As checkStockItem(), and
    // Duplicate name; NotFound.
    Result<StockItem> save(const StockItem& supply);
    // The shelf was counted, or something came in, on that day (today: now; another day: at its
    // end). A supply that is not stored yet is stored with it. Invalid below 0 or ahead of today.
    Result<StockCount> enter(const StockItem& supply, StockEvent what, Date on, StockAmount amount,
                             const std::string& note);
    // Days and amount below which the variety's seed runs low; none of both: as the program does.
    Done markSeedLow(const SeedLow& low);

    // NotFound.
    [[nodiscard]] Result<ForwardTrace> forward(const TraceFrom& from);
    [[nodiscard]] Result<BackTrace> back(TrayId tray);
    // A tray's code, a lot's number (behind its variety's name where several have it), a piece by
    // its medium and number ("Steel mesh 3"), a water by its kind or concentrate (of the last
    // four weeks), or a person, in this order; letter case does not matter. NotFound; Ambiguous
    // with the names that would tell.
    [[nodiscard]] Result<TraceFrom> find(const std::string& text);
    // Whoever sowed or sanitised, by name.
    [[nodiscard]] Result<std::vector<std::string>> people();

private:
    Ledger& m_ledger;
};

} // namespace plumule
