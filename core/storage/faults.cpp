#include "core/storage/faults.h"

#include "core/base/utf8.h"
#include "core/base/work_reason.h"
#include "core/storage/cell_bounds.h"
#include "core/storage/changeset.h"
#include "core/storage/changeset_check.h"
#include "core/storage/checksum.h"
#include "core/storage/migrations.h"
#include "core/storage/row_id.h"

#include <algorithm>
#include <fmt/format.h>
#include <sqlite3.h>

namespace plumule {
namespace {

// As long as it lives, what SQLite does ends with Cancelled once the work is stopped.
class Stoppable
{
public:
    Stoppable(Database& database, const Progress& progress)
        : m_database(database)
    {
        constexpr int kStepsBetween = 10'000; // of SQLite's machine: a millisecond
        sqlite3_progress_handler(
            database.handle(), kStepsBetween,
            [](void* context) {
                return static_cast<const Progress*>(context)->isStopped() ? 1 : 0;
            },
            const_cast<Progress*>(&progress));
    }
    ~Stoppable() { sqlite3_progress_handler(m_database.handle(), 0, nullptr, nullptr); }
    Stoppable(const Stoppable&) = delete;
    Stoppable& operator=(const Stoppable&) = delete;

private:
    Database& m_database;
};

void reach(double fraction, const Progress& progress)
{
    progress.report(fraction);
    if (progress.isStopped()) {
        throw StorageFailure(fail(ErrorKind::Cancelled, WorkReason::Stopped).value());
    }
}

// Without the half of a character at its end.
std::string wholeCharacters(const std::string& text)
{
    const auto fault = firstNotUtf8(text);
    return fault ? text.substr(0, *fault) : text;
}

void addPages(std::vector<Error>& faults, const std::string& table)
{
    Error fault = table.empty() ? foundAt(table, 0, FaultReason::Pages)
                                : foundAt(table, 0, FaultReason::TablePages);
    if (std::find(faults.begin(), faults.end(), fault) == faults.end()) {
        faults.push_back(std::move(fault));
    }
}

// Does `work`; what keeps it from coming to its end is a fault too, unless it is no damage.
template <class Work>
void searched(std::vector<Error>& faults, const std::string& table, Work work)
{
    try {
        work();
    } catch (const StorageFailure& failure) {
        const Error& error = failure.error();
        if (error.kind != ErrorKind::Damaged && error.kind != ErrorKind::NotAJournal) {
            throw;
        }
        addPages(faults, table);
    }
}

// SQLite's own check, of one table or of all. What it says of single cells is found in their rows.
bool arePagesSound(Database& database, const std::string& pragma)
{
    Statement statement = database.prepare(pragma);
    bool isSound = true;
    while (statement.step()) {
        const Cell cell = statement.cellAt(0);
        const auto* said = std::get_if<std::string>(&cell);
        isSound = isSound && said != nullptr &&
                  (*said == "ok" || said->starts_with("NULL value in ") ||
                   said->starts_with("non-") || said->starts_with("CHECK constraint"));
    }
    return isSound;
}

void searchPages(Database& database, const std::vector<std::string>& tables,
                 std::vector<Error>& faults)
{
    const auto check = [&](const std::string& table, const std::string& pragma) {
        searched(faults, table, [&] {
            if (!arePagesSound(database, pragma)) {
                addPages(faults, table);
            }
        });
    };
    check({}, "PRAGMA integrity_check");
    if (faults.empty()) {
        return;
    }
    for (const std::string& table : tables) {
        check(table, "PRAGMA integrity_check(\"" + table + "\")");
    }
    if (faults.size() > 1) { // they say it all
        faults.erase(faults.begin());
    }
}

void searchPointers(Database& database, std::vector<Error>& faults)
{
    Statement rows = database.prepare("PRAGMA foreign_key_check");
    while (rows.step()) {
        faults.push_back(foundAt(rows.get<std::string>(0),
                                 rows.get<std::optional<std::int64_t>>(1).value_or(0),
                                 FaultReason::Dangling, rows.get<std::string>(2)));
    }
}

void searchCells(Database& database, const std::string& table, std::vector<Error>& faults)
{
    const auto columns = declaredColumnsOf(database, table);
    Statement rows = database.prepare("SELECT * FROM \"" + table + '"');
    std::vector<Cell> cells(columns.size());
    while (rows.step()) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            cells[i] = rows.cellAt(static_cast<int>(i));
        }
        if (const auto bad = firstBadCell(columns, cells)) {
            const auto* id = std::get_if<std::int64_t>(&cells.front());
            faults.push_back(foundAt(table, id == nullptr ? 0 : *id, FaultReason::CellValue,
                                     columns[*bad].info.name, shownCell(cells[*bad])));
        }
    }
}

// Whether they can be taken back and done again as far as the bytes go.
bool makesSense(Database& database, std::string_view bytes, std::int64_t schema)
{
    const bool isAlike = schema >= kOldestAlikeSchema;
    return isAlike ? isSoundBothWays(database, bytes)
                   : walkChangeset(bytes, [](const RowChange&) {});
}

void searchHistory(Database& database, std::vector<Error>& faults)
{
    Statement rows = database.prepare(
        "SELECT id, changeset, changeset_bytes, changeset_crc, schema_version FROM history "
        "ORDER BY id");
    while (rows.step()) {
        const auto id = rows.get<std::int64_t>(0);
        const Cell changeset = rows.cellAt(1);
        const auto* bytes = std::get_if<std::string>(&changeset);
        if (bytes == nullptr || rows.cellAt(2) != Cell(static_cast<std::int64_t>(bytes->size())) ||
            rows.cellAt(3) != Cell(checksumOf(*bytes))) {
            faults.push_back(foundAt("history", id, FaultReason::ChangesetDamaged, id));
        } else if (!makesSense(database, *bytes, rows.get<std::int64_t>(4))) {
            faults.push_back(foundAt("history", id, FaultReason::ChangesetSenseless, id));
        }
    }
}

// A counter that runs behind would give a new row the number of one that is there.
void searchIds(Database& database, std::vector<std::string> tables, std::vector<Error>& faults)
{
    constexpr std::int64_t kMostCopies = std::int64_t{1} << 22;
    const std::int64_t copy = database.scalar("SELECT copy_number FROM copy WHERE id = 1");
    const std::int64_t next = database.scalar("SELECT next_counter FROM copy WHERE id = 1");
    bool isSound = copy >= 1 && copy <= kMostCopies && next >= 1 && next >> kIdCounterBits == 0;
    tables.emplace_back("history");
    for (const std::string& table : tables) {
        if (!isSound) {
            break;
        }
        Statement rows =
            database.prepare("SELECT 1 FROM \"" + table + "\" WHERE id >= ?1 AND id < ?2 LIMIT 1");
        rows.bind(copy << kIdCounterBits | next, (copy + 1) << kIdCounterBits);
        isSound = !rows.step();
    }
    if (!isSound) {
        faults.push_back(foundAt("copy", 1, FaultReason::IdsRunOut));
    }
}

} // namespace

std::string shownCell(const Cell& cell)
{
    constexpr std::size_t kMostShown = 40;
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return std::to_string(*whole);
    }
    if (const auto* real = std::get_if<double>(&cell)) {
        return fmt::format("{:g}", *real);
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::string() : wholeCharacters(text->substr(0, kMostShown));
}

std::vector<std::string> trackedTablesOf(Database& database)
{
    std::vector<std::string> tables;
    Statement names =
        database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY rowid");
    while (names.step()) {
        auto name = names.get<std::string>(0);
        if (isTrackedTable(name)) {
            tables.push_back(std::move(name));
        }
    }
    return tables;
}

std::vector<DeclaredColumn> declaredColumnsOf(Database& database, const std::string& table)
{
    std::vector<DeclaredColumn> columns;
    Statement rows = database.prepare(
        "SELECT name, type, \"notnull\", pk FROM pragma_table_info(?1) ORDER BY cid");
    rows.bind(table);
    while (rows.step()) {
        columns.push_back({{rows.get<std::string>(0), rows.get<std::string>(1)},
                           !rows.get<bool>(2) && !rows.get<bool>(3)});
    }
    return columns;
}

std::optional<std::size_t> firstBadCell(const std::vector<DeclaredColumn>& columns,
                                        const std::vector<Cell>& cells)
{
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) {
        const Cell& cell = cells[i];
        const std::string& type = columns[i].info.type;
        const bool isOfItsType = std::holds_alternative<std::monostate>(cell)
                                     ? columns[i].mayBeEmpty
                                 : type == "TEXT" ? std::holds_alternative<std::string>(cell)
                                 : type == "REAL" ? !std::holds_alternative<std::string>(cell)
                                                  : std::holds_alternative<std::int64_t>(cell);
        if (!isOfItsType || columns[i].info.bounds.fault(cell)) {
            return i;
        }
    }
    return std::nullopt;
}

std::vector<Error> findFaults(Database& database, const Progress& progress)
{
    // Of the work, as it was measured on a room of ten years.
    constexpr double kPages = 0.5;
    constexpr double kPointers = 0.6;
    constexpr double kCells = 0.8;
    const Stoppable stoppable(database, progress);
    std::vector<Error> faults;
    std::vector<std::string> tables;
    searched(faults, {}, [&] { tables = trackedTablesOf(database); });
    searchPages(database, tables, faults);
    reach(kPages, progress);
    searched(faults, {}, [&] { searchPointers(database, faults); });
    const Progress ofTables = progress.part(kPointers, kCells);
    for (std::size_t i = 0; i < tables.size(); ++i) {
        reach(static_cast<double>(i) / static_cast<double>(tables.size()), ofTables);
        searched(faults, tables[i], [&] { searchCells(database, tables[i], faults); });
    }
    reach(kCells, progress);
    searched(faults, "history", [&] { searchHistory(database, faults); });
    searched(faults, "copy", [&] { searchIds(database, tables, faults); });
    return faults;
}

} // namespace plumule
