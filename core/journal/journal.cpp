#include "core/journal/journal.h"

#include "core/starter/starter_library.h"

namespace plumule {

Journal::Journal(JournalFile file, const Clock& clock)
    : m_ledger(std::move(file), clock)
{}

Result<std::unique_ptr<Journal>> Journal::open(const std::filesystem::path& path,
                                               const Clock& clock, Access access)
{
    auto file = openJournalFile(path, access);
    if (!file) {
        return passOn(file);
    }
    return std::unique_ptr<Journal>(new Journal(std::move(*file), clock));
}

Result<std::unique_ptr<Journal>> Journal::create(const std::filesystem::path& path,
                                                 const RoomPlan& plan, const Clock& clock)
{
    auto file = createJournalFile(path);
    if (!file) {
        return passOn(file);
    }
    try {
        Transaction transaction(*file->database);
        storeStarterLibrary(*file->database, plan);
        transaction.commit();
    } catch (const StorageFailure& failure) {
        discardNewJournal(std::move(*file), path);
        return passOn(failure.error());
    }
    return std::unique_ptr<Journal>(new Journal(std::move(*file), clock));
}

const std::filesystem::path& Journal::path() const
{
    return m_ledger.path();
}

std::filesystem::path Journal::photoFolder() const
{
    return m_ledger.photoFolder();
}

std::optional<HistoryEntry> Journal::nextUndo()
{
    return m_ledger.ask([](Database& database) { return History(database).nextUndo(); })
        .value_or(std::nullopt);
}

std::optional<HistoryEntry> Journal::nextRedo()
{
    return m_ledger.ask([](Database& database) { return History(database).nextRedo(); })
        .value_or(std::nullopt);
}

Result<std::vector<HistoryEntry>> Journal::latestEntries(int count)
{
    return m_ledger.ask([&](Database& database) { return History(database).latest(count); });
}

Done Journal::backUpTo(const std::filesystem::path& target, const Progress& progress)
{
    return backUp(m_ledger.database(), target, progress);
}

Result<BackupMade> Journal::backUpInto(const BackupStore& store, const Progress& progress)
{
    auto made =
        store.add(m_ledger.database(), m_ledger.photoFolder(), m_ledger.clock().now(), progress);
    if (made) {
        (void)store.prune(); // what stays a day longer than it must does no harm
    }
    return made;
}

Result<std::vector<std::string>> Journal::faults()
{
    auto found = m_ledger.ask([](Database& database) { return findFaults(database); });
    if (!found && found.error().kind == ErrorKind::Damaged) {
        // So badly that the check itself came upon it.
        return fail(ErrorKind::Damaged, StorageReason::FileDamaged, path().string());
    }
    return found;
}

} // namespace plumule
