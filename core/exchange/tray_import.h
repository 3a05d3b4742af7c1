#pragma once

#include "core/exchange/table_keeper.h"
#include "core/harvest/harvest.h"
#include "core/tray/tray.h"

#include <map>
#include <memory>
#include <set>

namespace plumule {

// One row of a tray table: code,variety,medium,sown,seed_g,harvested,net_g and, if wanted,
// trial,block,rack,shelf,place,seed_lot,residue_g,height_mm,note.
struct ImportedTray
{
    int line = 0;
    std::string code;
    std::string variety;
    std::string medium;
    Date sown;
    std::optional<Mass> seed;
    std::optional<Date> harvested;
    std::optional<Mass> net;
    std::optional<std::string> trial;
    std::optional<int> block;
    std::optional<std::string> rack;
    std::optional<std::string> shelf;
    std::optional<int> place;
    std::optional<std::string> seedLot;
    std::optional<Mass> residue;
    std::optional<Length> height; // above the surface, on the day of harvest
    std::string note;
};

// What is in the journal already, by name. Letter case (A–Z) does not matter.
struct KnownNames
{
    std::set<std::string> codes;
    std::set<std::string> varieties;
    std::set<std::string> media;
    std::set<std::string> trials;
    std::set<std::string> seedLots; // "variety/lot number"
    std::set<std::string> places;   // "rack/shelf/number"
    std::set<std::string> taken;    // of those, where a tray grows now
};

enum class ImportDoubtKind
{
    WeightOfOthers, // far from what the file's other trays of that variety weigh
    WeightOfSeed,   // far from what any seed gives
    LongGrowth,     // cut long after it was sown
};

// What looks wrong in a row, though it could be true.
struct ImportDoubt
{
    int line = 0;
    std::string code;
    ImportDoubtKind kind = ImportDoubtKind::WeightOfOthers;
    int days = 0; // from sowing to cut, of LongGrowth
    Mass net;
    Mass against; // WeightOfOthers: what the others make likely; WeightOfSeed: the seed sown
    bool operator==(const ImportDoubt&) const = default;
};

// A row as it is read.
struct ShownRow
{
    int line = 0;
    std::vector<std::string> cells; // in the order of columnsOf()
};

// What a file would bring in. Nothing is imported while there is a fault.
struct ImportPreview
{
    TableForm form;
    std::vector<std::string> header;              // of the file
    std::shared_ptr<const std::string> text = {}; // of the file; none of a table of trays
    std::int64_t rows = 0;                        // that would come in
    std::vector<ShownRow> firstRows;              // of these
    std::vector<HeldRow> held;                    // the first of those that are there already
    std::int64_t heldCount = 0;
    std::vector<std::string> unknownColumns; // left out
    std::vector<Error> faults;               // the first, each with its line
    std::int64_t faultCount = 0;

    // Of a table of trays.
    std::vector<ImportedTray> trays;
    std::vector<std::string> newVarieties;
    std::vector<std::string> newMedia;
    std::vector<std::string> newTrials;
    std::vector<std::string> newSeedLots; // "variety/lot number"
    std::vector<std::string> newPlaces;   // "rack/shelf/number"; a shelf is filled up from 1
    std::vector<ImportDoubt> doubts;      // of a clean one; to be looked at before it is imported

    [[nodiscard]] bool isClean() const { return faults.empty(); }
};

// Tells of trays whose code is taken which of them the journal has exactly so: what its rows would
// be written out as, by nameKey() of the code.
using WrittenTrays =
    std::function<std::map<std::string, std::string>(const std::vector<std::string>& codes)>;

// Reads trays against what is known. In a row: code, variety, medium and sown are needed; harvested
// and net_g go together; residue_g and height_mm need harvested; rack, shelf and place go together,
// and no two trays that grow may have the same. A code may be used once in file and journal; a row
// that the journal would write out just so is held back.
[[nodiscard]] std::unique_ptr<TableKeeper> trayKeeper(const KnownNames& known,
                                                      WrittenTrays written = {});

// The row of a tray as the table has it, for comparison: names in lower case.
[[nodiscard]] std::string rowKey(const std::vector<std::string>& cells);

// What names are compared by: without blanks around, in lower case (A–Z).
[[nodiscard]] std::string nameKey(std::string_view name);

// The columns in the order in which they are written.
[[nodiscard]] const std::vector<std::string>& trayColumns();

} // namespace plumule
