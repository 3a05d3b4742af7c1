#pragma once

#include "core/base/progress.h"
#include "core/exchange/tray_import.h"

namespace plumule {

class Database;

// How many were made; trays and what they needed.
struct ImportOutcome
{
    int trays = 0;
    int varieties = 0;
    int media = 0;
    int trials = 0;
};

// What the journal knows by name.
[[nodiscard]] KnownNames knownNamesIn(Database& database);

// Stores the trays of a clean preview, and whatever they name that is not known: varieties with a
// plain protocol (three days under weight, seven in light, watered twice a day), media as inert
// loose mixes used once, trials, lots, racks, shelves, places. Sown and cut at the time of the
// morning round. A tray that was harvested stood at its place till then. Duplicate or Conflict,
// with the line, where the journal has changed since the preview; Cancelled. Inside a transaction.
[[nodiscard]] Result<ImportOutcome> storeTrays(Database& database, const ImportPreview& preview,
                                               const Progress& progress);

// How trays would be written out, for trayKeeper(); discarded ones are not. The database must
// outlive it.
[[nodiscard]] WrittenTrays writtenTrays(Database& database);

// As ExchangeEntries::traysAsCsv().
[[nodiscard]] std::string csvOfTrays(Database& database);

} // namespace plumule
