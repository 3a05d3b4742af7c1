#include "core/storage/rescue_rows.h"

#include "core/storage/row_id.h"

#include <algorithm>
#include <array>
#include <limits>

namespace plumule {
namespace {

// Columns that say less, but nothing else, when what they name is lost.
constexpr std::array<std::pair<std::string_view, std::string_view>, 7> kMayBeEmptied = {{
    {"tray", "seed_lot_id"},
    {"tray", "piece_id"},
    {"tray", "trial_id"},
    {"trial", "control_medium_id"},
    {"trial_plan", "seed_lot_id"},
    {"planned_tray", "place_id"},
    {"panel", "trial_id"},
}};

bool mayBeEmptied(std::string_view table, std::string_view column)
{
    return std::find(kMayBeEmptied.begin(), kMayBeEmptied.end(), std::pair(table, column)) !=
           kMayBeEmptied.end();
}

} // namespace

RescuedRows::RescuedRows(Database& fresh, const RescueKnowledge& knowledge, RescueReport& report)
    : m_fresh(fresh)
    , m_knowledge(knowledge)
    , m_report(report)
{}

template <class... Values>
void RescuedRows::say(const std::string& table, std::int64_t row, RescueReason reason,
                      Values&&... values)
{
    m_isComplete = false;
    m_report.said.push_back(foundAt(table, row, reason, std::forward<Values>(values)...));
}

void RescuedRows::read(Database& old, const std::string& table, const RescuedSteps& steps)
{
    const auto columns = readableColumns(old, m_fresh, table);
    m_columns[table] = declaredColumnsOf(m_fresh, table);
    ReadRows read;
    if (columns.empty()) {
        read.isWhole = false;
        read.before = std::numeric_limits<std::int64_t>::min();
        read.behind = std::numeric_limits<std::int64_t>::max();
    } else {
        read = readRows(old, table, columns);
    }
    if (!read.isWhole) {
        complete(table, read, steps);
    }
    judge(table, read, steps);
    m_rows[table] = std::move(read.rows);
}

void RescuedRows::complete(const std::string& table, ReadRows& read, const RescuedSteps& steps)
{
    for (const auto& [id, row] : steps.rowsOf(table)) {
        const bool isMissed =
            read.isLostKnown ? read.lost.contains(id) : id > read.before && id < read.behind;
        if (isMissed && read.rows.try_emplace(id, row).second) {
            read.lost.erase(id);
            say(table, id, RescueReason::FromHistory);
        }
    }
    for (const std::int64_t id : read.lost) {
        say(table, id, RescueReason::RowUnreadable);
    }
    if (read.isLostKnown) {
        return;
    }
    if (read.rows.empty()) {
        say(table, 0, RescueReason::TableUnreadable);
    } else {
        say(table, 0, RescueReason::RowsUnreadable, std::max<std::int64_t>(read.before, 0),
            read.behind);
    }
}

std::optional<std::size_t> RescuedRows::badCell(const std::string& table,
                                                const std::vector<Cell>& row) const
{
    const auto& columns = m_columns.at(table);
    if (row.size() != columns.size()) {
        return 0;
    }
    const auto bad = firstBadCell(columns, row);
    return bad ? bad : m_knowledge.meaningless(table, columns, row);
}

void RescuedRows::judge(const std::string& table, ReadRows& read, const RescuedSteps& steps)
{
    for (auto row = read.rows.begin(); row != read.rows.end();) {
        const auto bad = badCell(table, row->second);
        if (!bad) {
            ++row;
            continue;
        }
        const auto& earlier = steps.rowsOf(table);
        const auto written = earlier.find(row->first);
        if (written != earlier.end() && !badCell(table, written->second)) {
            row->second = written->second;
            say(table, row->first, RescueReason::FromHistory);
            ++row;
            continue;
        }
        const bool isThere = *bad < row->second.size() && *bad < m_columns.at(table).size();
        say(table, row->first, RescueReason::CellUnsound,
            isThere ? m_columns.at(table)[*bad].info.name : std::string("id"),
            isThere ? shownCell(row->second[*bad]) : std::string());
        row = read.rows.erase(row);
    }
}

std::int64_t RescuedRows::highestId(std::int64_t copy) const
{
    std::int64_t highest = 0;
    for (const auto& [table, rows] : m_rows) {
        const auto next = rows.lower_bound((copy + 1) << kIdCounterBits);
        if (next != rows.begin() && std::prev(next)->first >> kIdCounterBits == copy) {
            highest = std::max(highest, std::prev(next)->first);
        }
    }
    return highest;
}

std::vector<RescuedRows::Pointer> RescuedRows::pointersOf(const std::string& table)
{
    std::vector<Pointer> pointers;
    const auto& columns = m_columns.at(table);
    Statement rows = m_fresh.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1)");
    rows.bind(table);
    while (rows.step()) {
        const auto name = rows.get<std::string>(0);
        const auto column =
            std::find_if(columns.begin(), columns.end(),
                         [&](const DeclaredColumn& each) { return each.info.name == name; });
        pointers.push_back(
            {static_cast<std::size_t>(column - columns.begin()), rows.get<std::string>(1)});
    }
    return pointers;
}

bool RescuedRows::hasItsOwners(const std::string& table, std::vector<Cell>& row,
                               const std::vector<Pointer>& pointers)
{
    for (const Pointer& pointer : pointers) {
        const auto* owner = std::get_if<std::int64_t>(&row[pointer.column]);
        if (owner == nullptr || m_stored[pointer.table].contains(*owner) ||
            standsIn(pointer.table, *owner)) {
            continue;
        }
        const std::int64_t id = std::get<std::int64_t>(row.front());
        const std::string& column = m_columns.at(table)[pointer.column].info.name;
        if (!mayBeEmptied(table, column)) {
            say(table, id, RescueReason::OwnerLost, pointer.table);
            return false;
        }
        row[pointer.column] = {};
        say(table, id, RescueReason::Emptied, column);
    }
    return true;
}

bool RescuedRows::standsIn(const std::string& table, std::int64_t id)
{
    const auto given = m_knowledge.standIn(table, id);
    if (!given) {
        return false;
    }
    std::vector<Cell> row;
    for (const DeclaredColumn& column : m_columns.at(table)) {
        const auto cell = given->find(column.info.name);
        row.push_back(column.info.name == "id"     ? Cell(id)
                      : cell != given->end()       ? cell->second
                      : column.mayBeEmpty          ? Cell()
                      : column.info.type == "TEXT" ? Cell(std::string())
                                                   : Cell(std::int64_t{0}));
    }
    const bool isStored = insert(table, row);
    if (isStored) {
        say(table, id, RescueReason::StandIn);
    }
    return isStored;
}

bool RescuedRows::insert(const std::string& table, const std::vector<Cell>& row)
{
    std::string values;
    for (std::size_t i = 0; i < row.size(); ++i) {
        values += (values.empty() ? "?" : ", ?") + std::to_string(i + 1);
    }
    Statement statement = m_fresh.prepare("INSERT INTO \"" + table + "\" VALUES (" + values + ")");
    for (std::size_t i = 0; i < row.size(); ++i) {
        statement.bindCell(static_cast<int>(i + 1), row[i]);
    }
    try {
        statement.run();
    } catch (const StorageFailure& failure) {
        if (failure.error().kind != ErrorKind::Conflict) {
            throw;
        }
        say(table, std::get<std::int64_t>(row.front()), RescueReason::RowTwice);
        return false;
    }
    m_stored[table].insert(std::get<std::int64_t>(row.front()));
    return true;
}

void RescuedRows::store(const std::vector<std::string>& tables)
{
    for (const std::string& table : tables) {
        const auto pointers = pointersOf(table);
        for (auto& [id, row] : m_rows[table]) {
            if (hasItsOwners(table, row, pointers) && insert(table, row)) {
                ++m_report.entries;
            }
        }
        m_rows.erase(table);
    }
}

void RescuedRows::storeRoom(std::int64_t id)
{
    if (m_stored["room"].empty()) {
        (void)standsIn("room", id);
    }
}

} // namespace plumule
