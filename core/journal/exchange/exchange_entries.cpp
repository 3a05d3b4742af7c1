#include "core/journal/exchange/exchange_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/sample/sample_room.h"

namespace plumule {

Result<ImportPreview> ExchangeEntries::preview(const std::filesystem::path& file)
{
    const auto text = textOfFile(file.string());
    if (!text) {
        return passOn(text);
    }
    const auto table = csvFrom(*text);
    if (!table) {
        return passOn(table);
    }
    return m_ledger.ask(
        [&](Database& database) { return previewOf(*table, knownNamesIn(database)); });
}

Result<ImportOutcome> ExchangeEntries::importTrays(const ImportPreview& preview,
                                                   const std::string& fileName,
                                                   const Progress& progress)
{
    if (!preview.isClean()) {
        return passOn(preview.faults.front());
    }
    return m_ledger.record(Intention::ImportTrays,
                           [&](Database& database, Deed& deed) -> Result<ImportOutcome> {
                               deed.whom = fileName;
                               return storeTrays(database, preview, progress);
                           });
}

Done ExchangeEntries::fillWithSample(const std::filesystem::path& folder, const Progress& progress)
{
    return m_ledger.writeUnrecorded([&](Database& database) {
        return storeSampleRoom(database, folder, m_ledger.clock().now(), progress);
    });
}

Result<std::string> ExchangeEntries::traysAsCsv()
{
    return m_ledger.ask([](Database& database) { return csvOfTrays(database); });
}

Result<FolderOutcome> ExchangeEntries::writeAll(const std::filesystem::path& folder,
                                                const Progress& progress)
{
    return m_ledger.ask([&](Database& database) {
        return writeJournalFolder(database, m_ledger.photoFolder(), folder, progress);
    });
}

Result<FolderOutcome> makeJournalOf(const std::filesystem::path& folder,
                                    const std::filesystem::path& journal, const Progress& progress)
{
    auto file = createJournalFile(journal);
    if (!file) {
        return passOn(file);
    }
    const auto filled = [&]() -> Result<FolderOutcome> {
        try {
            Transaction transaction(*file->database);
            auto read =
                readJournalFolder(*file->database, photoFolderOf(journal), folder, progress);
            if (read) {
                transaction.commit();
            }
            return read;
        } catch (const StorageFailure& failure) {
            return passOn(failure.error());
        }
    }();
    if (!filled) {
        discardNewJournal(std::move(*file), journal);
    }
    return filled;
}

} // namespace plumule
