#pragma once

#include "core/base/progress.h"
#include "core/exchange/tray_import.h"

#include <filesystem>

namespace plumule {

class Ledger;

struct ImportOutcome
{
    int trays = 0;
    int varieties = 0;
    int media = 0;
    int trials = 0;
};

// Tables in and out.
class ExchangeEntries
{
public:
    explicit ExchangeEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<ImportPreview> preview(const std::filesystem::path& file);
    // All or nothing, and one intention. Invalid, with the first fault, where the preview has any.
    Result<ImportOutcome> importTrays(const ImportPreview& preview, const std::string& fileName,
                                      const Progress& progress = {});
    // Fills a new journal with the invented demo room of sample-data/, its days shifted so that the
    // newest is today. Not one intention but the journal's beginning: it can't be undone.
    Done fillWithSample(const std::filesystem::path& folder, const Progress& progress = {});

    // The trays as a table in the import's own columns.
    [[nodiscard]] Result<std::string> traysAsCsv();

private:
    Ledger& m_ledger;
};

} // namespace plumule
