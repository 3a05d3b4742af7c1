#pragma once

#include "core/exchange/journal_folder.h"
#include "core/exchange/table_form.h"
#include "core/exchange/tray_table.h"

#include <filesystem>

namespace plumule {

class Ledger;

// Tables in and out.
class ExchangeEntries
{
public:
    explicit ExchangeEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // What the file would bring in: read under what is asked, the rest as the whole file speaks
    // for. As textOfFile(), utf8From(), proposedForm() and lookThrough().
    [[nodiscard]] Result<ImportPreview> preview(const std::filesystem::path& file,
                                                const TableAsk& ask = {},
                                                const Progress& progress = {});
    // All or nothing, and one intention. Invalid, with the first fault, where the preview has any,
    // or where the journal has changed since.
    Result<ImportOutcome> importTrays(const ImportPreview& preview, const std::string& fileName,
                                      const Progress& progress = {});
    // The same of a table of any kind; how many rows.
    Result<std::int64_t> importTable(const ImportPreview& preview, const std::string& fileName,
                                     const Progress& progress = {});
    // Fills a new journal with the invented demo room of sample-data/, its days shifted so that the
    // newest is today, in place of the starter library. Not one intention but the journal's
    // beginning: it can't be undone. Conflict where trays stand in the journal already.
    Done fillWithSample(const std::filesystem::path& folder, const Progress& progress = {});

    // The trays as a table in the import's own columns, oldest sowing first; heights are the mean
    // of the day of harvest. Discarded trays are left out: the columns can't tell them from growing
    // ones.
    [[nodiscard]] Result<std::string> traysAsCsv();

    // All but the history, as writeJournalFolder().
    [[nodiscard]] Result<FolderOutcome> writeAll(const std::filesystem::path& folder,
                                                 const Progress& progress = {});

private:
    Ledger& m_ledger;
};

// A new journal of a folder that writeAll() wrote, with an empty history. As readJournalFolder();
// Damaged with the first fault that checkJournal() finds in what was read; Duplicate where there is
// a file already; whatever fails leaves none behind.
Result<FolderOutcome> makeJournalOf(const std::filesystem::path& folder,
                                    const std::filesystem::path& journal,
                                    const Progress& progress = {});

} // namespace plumule
