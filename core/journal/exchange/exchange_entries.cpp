#include "core/journal/exchange/exchange_entries.h"

#include "core/exchange/csv.h"
#include "core/exchange/table_keepers.h"
#include "core/exchange/table_look.h"
#include "core/journal/check/journal_check.h"
#include "core/journal/ledger/ledger.h"
#include "core/sample/sample_room.h"

namespace plumule {

Result<ImportPreview> ExchangeEntries::preview(const std::filesystem::path& file,
                                               const TableAsk& ask, const Progress& progress)
{
    auto bytes = textOfFile(file.string());
    if (!bytes) {
        return passOn(bytes);
    }
    TableAsk decided = ask;
    decided.encoding = ask.encoding.value_or(encodingOf(*bytes));
    auto text = utf8From(std::move(*bytes), *decided.encoding);
    const auto form = text ? proposedForm(*text, decided) : passOn(text);
    if (!form) {
        return passOn(form);
    }
    auto preview = m_ledger.ask([&](Database& database) {
        const auto keeper = ask.kind == TableKind::Trays
                                ? trayKeeper(knownNamesIn(database), writtenTrays(database))
                                : keeperFor(ask.kind, database, m_ledger.clock().today());
        return lookThrough(*text, *form, *keeper, progress);
    });
    if (preview && ask.kind != TableKind::Trays) {
        preview->text = std::make_shared<const std::string>(std::move(*text));
    }
    return preview;
}

Result<std::int64_t> ExchangeEntries::importTable(const ImportPreview& preview,
                                                  const std::string& fileName,
                                                  const Progress& progress)
{
    if (preview.form.kind == TableKind::Trays) {
        return importTrays(preview, fileName, progress).map([](const ImportOutcome& outcome) {
            return std::int64_t{outcome.trays};
        });
    }
    if (!preview.isClean()) {
        return passOn(preview.faults.front());
    }
    return m_ledger.record(
        Intention::ImportTable, [&](Database& database, Deed& deed) -> Result<std::int64_t> {
            deed.whom = fileName;
            const auto keeper = keeperFor(preview.form.kind, database, m_ledger.clock().today());
            return storeThrough(*preview.text, preview.form, *keeper, progress);
        });
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
    auto filled = [&]() -> Result<FolderOutcome> {
        try {
            Transaction transaction(*file->database);
            auto read = readJournalFolder(*file->database, folder, progress);
            if (!read) {
                return read;
            }
            // Each cell may be right and two trays stand on one place all the same.
            if (const auto faults = checkJournal(*file->database); !faults.empty()) {
                return passOn(faults.front());
            }
            transaction.commit();
            return read;
        } catch (const StorageFailure& failure) {
            return passOn(failure.error());
        }
    }();
    // Nobody may write into an open journal's photographs.
    file->database.reset();
    if (filled) {
        if (Done brought = bringPhotos(folder, photoFolderOf(journal), *filled); !brought) {
            filled = passOn(brought);
        }
    }
    if (!filled) {
        discardNewJournal(std::move(*file), journal);
    }
    return filled;
}

} // namespace plumule
