#include "core/storage/whole_row.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

// Names come from the schema, which was compared with the shipped one.
std::string quotedName(const std::string& name)
{
    return '"' + name + '"';
}

std::string writingAll(Database& database, const std::string& table)
{
    std::string names;
    std::string marks;
    const auto& columns = database.columnsOf(table);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        names += (i == 0 ? "" : ", ") + quotedName(columns[i].name);
        marks += (i == 0 ? "?" : ", ?") + std::to_string(i + 1);
    }
    return " (" + names + ") VALUES (" + marks + ")";
}

std::string settingAll(Database& database, const std::string& table)
{
    std::string sets;
    const auto& columns = database.columnsOf(table);
    for (std::size_t i = 1; i < columns.size(); ++i) {
        sets += (i == 1 ? "" : ", ") + quotedName(columns[i].name) + " = ?" + std::to_string(i + 1);
    }
    return sets;
}

} // namespace

RowState wholeRow(Database& database, const RowKey& key)
{
    Statement statement =
        database.prepare("SELECT * FROM " + quotedName(key.table) + " WHERE id = ?1");
    statement.bind(key.id);
    if (!statement.step()) {
        return std::nullopt;
    }
    WholeRow row;
    for (int i = 0; i < statement.columns(); ++i) {
        row.push_back(statement.cellAt(i));
    }
    return row;
}

void putRow(Database& database, const RowKey& key, const RowState& row)
{
    assert(database.isInTransaction());
    const std::string table = quotedName(key.table);
    if (!row) {
        database.prepare("DELETE FROM " + table + " WHERE id = ?1").bind(key.id).run();
        return;
    }
    Statement there = database.prepare("SELECT 1 FROM " + table + " WHERE id = ?1");
    there.bind(key.id);
    const bool isThere = there.step();
    const bool hasOthers = row->size() > 1;
    if (isThere && !hasOthers) {
        return;
    }
    Statement statement = database.prepare(
        isThere ? "UPDATE " + table + " SET " + settingAll(database, key.table) + " WHERE id = ?1"
                : "INSERT INTO " + table + writingAll(database, key.table));
    for (std::size_t i = 0; i < row->size(); ++i) {
        statement.bindCell(static_cast<int>(i) + 1, (*row)[i]);
    }
    statement.run();
}

void putRows(Database& database, const std::map<RowKey, RowState>& rows)
{
    database.execute("PRAGMA defer_foreign_keys=ON");
    for (const auto& [key, row] : rows) {
        if (!row) {
            putRow(database, key, row);
        }
    }
    for (const auto& [key, row] : rows) {
        if (row) {
            putRow(database, key, row);
        }
    }
}

std::vector<std::int64_t> rowsWhere(Database& database, const std::string& table,
                                    const std::string& column, const Cell& cell)
{
    Statement statement = database.prepare("SELECT id FROM " + quotedName(table) + " WHERE " +
                                           quotedName(column) + " = ?1 ORDER BY id");
    statement.bindCell(1, cell);
    std::vector<std::int64_t> ids;
    while (statement.step()) {
        ids.push_back(statement.get<std::int64_t>(0));
    }
    return ids;
}

std::vector<Pointer> pointersOf(Database& database, const std::string& table)
{
    std::vector<Pointer> pointers;
    Statement statement =
        database.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1)");
    statement.bind(table);
    while (statement.step()) {
        if (const auto place = placeOfColumn(database, table, statement.get<std::string>(0))) {
            pointers.push_back({*place, statement.get<std::string>(1)});
        }
    }
    return pointers;
}

std::vector<RowKey> rowsPointingAt(Database& database, const RowKey& key)
{
    std::vector<RowKey> rows;
    Statement columns = database.prepare(
        "SELECT s.name, f.\"from\" FROM sqlite_schema s JOIN pragma_foreign_key_list(s.name) f "
        "WHERE s.type = 'table' AND f.\"table\" = ?1");
    columns.bind(key.table);
    while (columns.step()) {
        const auto table = columns.get<std::string>(0);
        for (const std::int64_t id :
             rowsWhere(database, table, columns.get<std::string>(1), Cell(key.id))) {
            rows.push_back({table, id});
        }
    }
    return rows;
}

std::optional<std::size_t> placeOfColumn(Database& database, const std::string& table,
                                         std::string_view column)
{
    const auto& columns = database.columnsOf(table);
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const ColumnInfo& each) { return each.name == column; });
    return found == columns.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - columns.begin()));
}

std::int64_t wholeIn(const Cell& cell)
{
    const auto* whole = std::get_if<std::int64_t>(&cell);
    return whole == nullptr ? 0 : *whole;
}

std::string textIn(const Cell& cell)
{
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::string() : *text;
}

} // namespace plumule
