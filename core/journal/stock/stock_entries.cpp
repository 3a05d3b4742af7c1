#include "core/journal/stock/stock_entries.h"

#include "core/base/letter_case.h"
#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_repository.h"
#include "core/stock/stock_reason.h"
#include "core/stock/stock_repository.h"
#include "core/stock/stock_rules.h"
#include "core/trace/trace_repository.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_reason.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// Name, kind and medium as they may be stored.
Done checkStored(Database& database, const StockItem& supply)
{
    for (const StockItem& other : StockRepository(database).supplies()) {
        if (other.id != supply.id && isSameThing(other, supply)) {
            return fail(ErrorKind::Duplicate, StockReason::NameTaken, supply.name);
        }
    }
    const auto medium =
        supply.medium ? MediumRepository(database).find(*supply.medium) : std::optional<Medium>();
    if (supply.kind == StockKind::Medium && !medium) {
        return fail(ErrorKind::NotFound, StockReason::Unknown);
    }
    if (medium && medium->isReusable) {
        return fail(ErrorKind::Invalid, StockReason::MediumReused, medium->name);
    }
    return {};
}

// Stores it new or changed, and says how.
Result<StockItem> stored(Database& database, const StockItem& given)
{
    StockItem supply = given;
    supply.name = trimmed(given.name);
    StockRepository stock(database);
    if (supply.id.isStored() && !stock.find(supply.id)) {
        return fail(ErrorKind::NotFound, StockReason::Unknown);
    }
    const Done checked =
        checkStockItem(supply).and_then([&] { return checkStored(database, supply); });
    if (!checked) {
        return passOn(checked);
    }
    supply.id.isStored() ? stock.update(supply) : stock.insert(supply);
    return supply;
}

// One of that kind and name is the one that is meant, though its id be not known.
StockItem known(Database& database, StockItem given)
{
    given.name = trimmed(given.name);
    for (const StockItem& each : StockRepository(database).supplies()) {
        if (!given.id.isStored() && isSameThing(each, given)) {
            return each;
        }
    }
    return given;
}

Result<TraceFrom> oneLot(Database& database, const std::string& text)
{
    VarietyRepository varieties(database);
    const auto byId = varieties.byId();
    std::vector<SeedLot> fitting;
    std::vector<SeedLot> named;
    for (SeedLot& lot : varieties.lots(std::nullopt, Listed::All)) {
        const auto variety = byId.find(lot.variety);
        const std::string name = variety == byId.end() ? std::string() : variety->second.name;
        if (isAlike(name + " " + lot.lotNumber, text)) {
            named.push_back(lot);
        } else if (isAlike(lot.lotNumber, text)) {
            fitting.push_back(std::move(lot));
        }
    }
    if (!named.empty()) {
        return TraceFrom{named.front().id};
    }
    if (fitting.size() == 1) {
        return TraceFrom{fitting.front().id};
    }
    if (fitting.empty()) {
        return fail(ErrorKind::NotFound, StockReason::NothingCalled, text);
    }
    std::string names;
    for (const SeedLot& lot : fitting) {
        const auto variety = byId.find(lot.variety);
        names += (names.empty() ? "" : "; ") +
                 (variety == byId.end() ? std::string() : variety->second.name + " ") +
                 lot.lotNumber;
    }
    return fail(ErrorKind::Ambiguous, StockReason::CalledTwice, text, names);
}

std::optional<TraceFrom> onePiece(Database& database, const std::string& text)
{
    MediumRepository media(database);
    const auto byId = media.byId();
    for (const PieceRecord& record : media.pieces(std::nullopt, Listed::All)) {
        const auto medium = byId.find(record.piece.medium);
        const std::string number = std::to_string(record.piece.number);
        if (medium != byId.end() && isAlike(medium->second.name + " " + number, text)) {
            return TraceFrom{record.piece.id};
        }
    }
    return std::nullopt;
}

std::optional<TraceFrom> oneMix(Database& database, const std::string& text, Date today)
{
    for (const WaterRecipe& recipe : WateringRepository(database).recipes()) {
        const bool isConcentrate = !recipe.concentrate.empty() && isAlike(recipe.concentrate, text);
        if (isConcentrate || isAlike(text, toText(recipe.water))) {
            return TraceFrom{MixSpan{recipe.water, today - (kRateDays - 1), today}};
        }
    }
    return std::nullopt;
}

std::optional<TraceFrom> onePerson(Database& database, const std::string& text)
{
    for (const std::string& name : TraceRepository(database).people()) {
        if (isAlike(name, text)) {
            return TraceFrom{Person{name}};
        }
    }
    return std::nullopt;
}

} // namespace

Result<Stock> StockEntries::now()
{
    return m_ledger.ask([&](Database& database) {
        const Date today = m_ledger.clock().today();
        const StockRepository repository(database);
        const StockFacts facts = repository.facts(today);
        Stock stock;
        stock.today = today;
        stock.seed = seedLines(facts, today);
        stock.supplies = supplyLines(facts, today);
        stock.pieces =
            pieceGroups(facts.media, MediumRepository(database).pieces(std::nullopt, Listed::InUse),
                        repository.piecesInUse(), facts.sanitised);
        stock.low = lowThings(facts, stock.supplies, today);
        for (const auto& [variety, low] : facts.seedLows) {
            stock.seedLows.push_back(low);
        }
        stock.lastCounted = facts.lastCounted;
        return stock;
    });
}

Result<std::vector<LowThing>> StockEntries::low()
{
    return m_ledger.ask([&](Database& database) {
        const Date today = m_ledger.clock().today();
        return lowThings(StockRepository(database).facts(today), today);
    });
}

Result<StockItem> StockEntries::save(const StockItem& supply)
{
    return m_ledger.record(Intention::ChangeSupply,
                           [&](Database& database, Deed& deed) -> Result<StockItem> {
                               auto done = stored(database, supply);
                               deed.whom = done ? done->name : supply.name;
                               return done;
                           });
}

Result<StockCount> StockEntries::enter(const StockItem& supply, StockEvent what, Date on,
                                       StockAmount amount, const std::string& note)
{
    const Intention intention =
        what == StockEvent::Counted ? Intention::CountSupply : Intention::BuySupply;
    return m_ledger.record(intention, [&](Database& database, Deed& deed) -> Result<StockCount> {
        const Moment now = m_ledger.clock().now();
        if (on > now.date) {
            return fail(ErrorKind::Invalid, StockReason::CountAhead, toIso(on));
        }
        if (amount < StockAmount{}) {
            return fail(ErrorKind::Invalid, StockReason::AmountBelowNothing);
        }
        const auto kept = stored(database, known(database, supply));
        if (!kept) {
            return passOn(kept);
        }
        StockCount count{{},
                         kept->id,
                         on,
                         on == now.date ? now.minute : kMinutesPerDay - 1,
                         what,
                         amount,
                         std::string(trimmed(note))};
        StockRepository(database).insert(count);
        deed.whom = kept->name;
        deed.with = {std::to_string(amount.count()), toText(kept->unit)};
        return count;
    });
}

Done StockEntries::markSeedLow(const SeedLow& low)
{
    return m_ledger.record(Intention::MarkLowSeed, [&](Database& database, Deed& deed) -> Done {
        VarietyRepository varieties(database);
        const auto variety = varieties.find(low.variety);
        if (!variety) {
            return fail(ErrorKind::NotFound, VarietyReason::Unknown);
        }
        if (low.amount && *low.amount < Mass{}) {
            return fail(ErrorKind::Invalid, StockReason::AmountBelowNothing);
        }
        if (const Done checked = checkLowDays(low.days); !checked) {
            return passOn(checked);
        }
        deed.whom = variety->name;
        varieties.setSeedLow(low);
        return {};
    });
}

Result<ForwardTrace> StockEntries::forward(const TraceFrom& from)
{
    return m_ledger.ask([&](Database& database) -> Result<ForwardTrace> {
        auto trace = TraceRepository(database).forward(from);
        if (!trace) {
            return fail(ErrorKind::NotFound, StockReason::Unknown);
        }
        return std::move(*trace);
    });
}

Result<BackTrace> StockEntries::back(TrayId tray)
{
    return m_ledger.ask([&](Database& database) -> Result<BackTrace> {
        auto trace = TraceRepository(database).back(tray);
        if (!trace) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        return std::move(*trace);
    });
}

Result<TraceFrom> StockEntries::find(const std::string& text)
{
    return m_ledger.ask([&](Database& database) -> Result<TraceFrom> {
        const std::string wanted(trimmed(text));
        if (const auto tray = TrayRepository(database).findByCode(wanted)) {
            return TraceFrom{tray->id};
        }
        auto lot = oneLot(database, wanted);
        if (lot || lot.error().kind == ErrorKind::Ambiguous) {
            return lot;
        }
        for (const auto& found :
             {onePiece(database, wanted), oneMix(database, wanted, m_ledger.clock().today()),
              onePerson(database, wanted)}) {
            if (found) {
                return *found;
            }
        }
        return lot;
    });
}

Result<std::vector<std::string>> StockEntries::people()
{
    return m_ledger.ask([](Database& database) { return TraceRepository(database).people(); });
}

} // namespace plumule
