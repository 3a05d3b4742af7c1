#include "core/journal/cost/cost_entries.h"

#include "core/cost/cost_reason.h"
#include "core/cost/cost_repository.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_reason.h"
#include "core/medium/medium_repository.h"

namespace plumule {
namespace {

Done checkPrice(Database& database, const Price& price)
{
    if (price.amount < Money()) {
        return fail(ErrorKind::Invalid, CostReason::PriceNegative);
    }
    if (price.item == PriceItem::Medium && !price.medium) {
        return fail(ErrorKind::Missing, CostReason::MediumMissing);
    }
    if (price.medium && !MediumRepository(database).find(*price.medium)) {
        return fail(ErrorKind::NotFound, MediumReason::Unknown);
    }
    const auto same = CostRepository(database).findPrice(price.item, price.medium, price.from);
    if (same && same->id != price.id) {
        return fail(ErrorKind::Duplicate, CostReason::DayTaken, toIso(price.from));
    }
    return {};
}

// What a price is for, in the history: a medium by its name, the rest by its key.
std::string subjectOf(Database& database, const Price& price)
{
    const auto medium =
        price.medium ? MediumRepository(database).find(*price.medium) : std::nullopt;
    return medium ? medium->name : toText(price.item);
}

} // namespace

Result<std::vector<Price>> CostEntries::prices()
{
    return m_ledger.ask([](Database& database) { return CostRepository(database).prices(); });
}

Result<Price> CostEntries::savePrice(const Price& price)
{
    return m_ledger.record(Intention::SavePrice,
                           [&](Database& database, Deed& deed) -> Result<Price> {
                               Price stored = price;
                               if (stored.item != PriceItem::Medium) {
                                   stored.medium.reset();
                               }
                               if (auto checked = checkPrice(database, stored); !checked) {
                                   return passOn(checked);
                               }
                               CostRepository prices(database);
                               if (!stored.id.isStored()) {
                                   prices.insert(stored);
                               } else if (prices.findPrice(stored.id)) {
                                   prices.update(stored);
                               } else {
                                   return fail(ErrorKind::NotFound, CostReason::PriceUnknown);
                               }
                               deed.whom = subjectOf(database, stored);
                               return stored;
                           });
}

Done CostEntries::removePrice(PriceId price)
{
    return m_ledger.record(Intention::RemovePrice, [&](Database& database, Deed& deed) -> Done {
        CostRepository prices(database);
        const auto stored = prices.findPrice(price);
        if (!stored) {
            return fail(ErrorKind::NotFound, CostReason::PriceUnknown);
        }
        deed.whom = subjectOf(database, *stored);
        prices.remove(price);
        return {};
    });
}

Result<std::vector<LabourTask>> CostEntries::labour()
{
    return m_ledger.ask([](Database& database) { return CostRepository(database).labour(); });
}

Result<LabourTask> CostEntries::changeLabour(const LabourTask& task)
{
    return m_ledger.record(Intention::ChangeLabour,
                           [&](Database& database, Deed& deed) -> Result<LabourTask> {
                               CostRepository tasks(database);
                               if (task.seconds < 0) {
                                   return fail(ErrorKind::Invalid, CostReason::LabourNegative);
                               }
                               const auto stored = tasks.findLabour(task.id);
                               if (!stored) {
                                   return fail(ErrorKind::NotFound, CostReason::LabourUnknown);
                               }
                               // What a task is stays; only its minutes change.
                               LabourTask changed = *stored;
                               changed.seconds = task.seconds;
                               tasks.update(changed);
                               deed.whom = toText(changed.kind);
                               return changed;
                           });
}

} // namespace plumule
