#include "core/journal/merge/merge_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"

namespace plumule {

Result<std::vector<TakenCopy>> MergeEntries::copies()
{
    return m_ledger.ask([](Database& database) { return CopiesRepository(database).all(); });
}

Result<std::optional<TakenCopy>> MergeEntries::ownCopy()
{
    return m_ledger.ask([](Database& database) {
        CopiesRepository copies(database);
        return copies.find(CopyId{copies.ownNumber()});
    });
}

Result<TakenCopy> MergeEntries::beginCopy(const std::string& name)
{
    return m_ledger.writeUnrecorded([&](Database& database) -> Result<TakenCopy> {
        CopiesRepository copies(database);
        if (trimmed(name).empty()) {
            return fail(ErrorKind::Missing, MergeReason::NameMissing);
        }
        if (copies.find(CopyId{copies.ownNumber()})) {
            return fail(ErrorKind::Conflict, MergeReason::CopyOfACopy);
        }
        const HistoryTip tip = tipOf(database);
        TakenCopy copy{
            {},           std::string(trimmed(name)), m_ledger.clock().utcMilliseconds(), tip.id,
            tip.checksum, markOf(database).from};
        copies.insert(copy);
        return copy;
    });
}

Done MergeEntries::writeCopyTo(const TakenCopy& copy, const std::filesystem::path& target,
                               const Progress& progress)
{
    return writeCopy(m_ledger.database(), m_ledger.photoFolder(), copy, target, progress);
}

void MergeEntries::giveUpCopy(const TakenCopy& copy)
{
    // Where it can't be taken off the list, its number is spent, which does no harm.
    (void)m_ledger.writeUnrecorded([&](Database& database) -> Done {
        CopiesRepository(database).remove(copy.id);
        return {};
    });
}

Result<std::unique_ptr<ComingBack>> MergeEntries::comeBack(CopyFile copy)
{
    // A journal brought back from a backup may have forgotten the copy, and knows its base still.
    const TakenCopy taken = copy.copy;
    const auto checked = m_ledger.writeUnrecorded([&](Database& database) -> Done {
        CopiesRepository copies(database);
        const auto known = copies.find(taken.id);
        const bool isOurs = holdsTip(database, {taken.baseEntry, taken.baseChecksum}) &&
                            (known ? *known == taken : taken.baseEntry != 0) &&
                            copies.ownNumber() != taken.id.value;
        if (!isOurs) {
            return fail(ErrorKind::Conflict, MergeReason::OfAnother,
                        copy.file.database->path().string());
        }
        if (!known) {
            TakenCopy again = taken;
            copies.insert(again);
        }
        return {};
    });
    if (!checked) {
        return passOn(checked);
    }
    auto coming = std::make_unique<ComingBack>(m_ledger, std::move(copy));
    if (const Done read = coming->read(); !read) {
        return passOn(read);
    }
    const auto plan = coming->plan({});
    if (!plan) {
        return passOn(plan);
    }
    if (plan->items.empty() && plan->free.empty()) {
        return fail(ErrorKind::NothingThere, MergeReason::NothingNew, taken.name);
    }
    return coming;
}

} // namespace plumule
