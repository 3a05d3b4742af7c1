#pragma once

#include "core/storage/database.h"

#include <tuple>

namespace plumule {

// One column of a row type: its name and the field that holds it.
template <class Row, class Value>
struct Column
{
    const char* name;
    Value Row::*field;
};

template <class Row, class Value>
constexpr Column<Row, Value> column(const char* name, Value Row::*field)
{
    return {name, field};
}

// Tells how a plain struct is stored, once. A repository specialises it in its .cpp, or in a
// `…_table_of.h` that only repositories include:
//   template <> struct TableOf<Rack> {
//       static constexpr const char* name = "rack";
//       static constexpr auto columns = std::tuple{column("name", &Rack::name), …};
//   };
// The struct has a field `id` of type Id<…>, stored in the column `id`. Where the columns' types do
// not say what a row may hold, `static bool isSound(const Row&)` does.
template <class Row>
struct TableOf;

// Of selectList<Row>(): the id and all others.
template <class Row>
inline constexpr int kColumnCount =
    1 + static_cast<int>(std::tuple_size_v<std::decay_t<decltype(TableOf<Row>::columns)>>);

namespace table_detail {

template <class Row>
std::string columnList(const std::string& prefix)
{
    std::string list;
    std::apply(
        [&](const auto&... columns) {
            ((list += (list.empty() ? "" : ", ") + prefix + columns.name), ...);
        },
        TableOf<Row>::columns);
    return list;
}

template <class Row>
std::string placeholders()
{
    std::string list = "?1";
    for (int i = 2; i <= kColumnCount<Row>; ++i) {
        list += ", ?" + std::to_string(i);
    }
    return list;
}

// "name = ?2, …": the columns besides the id, which is ?1.
template <class Row>
std::string assignments()
{
    std::string list;
    int index = 2;
    std::apply(
        [&](const auto&... columns) {
            ((list += (list.empty() ? "" : ", ") + std::string(columns.name) + " = ?" +
                      std::to_string(index++)),
             ...);
        },
        TableOf<Row>::columns);
    return list;
}

template <class Row>
void bindFields(Statement& statement, const Row& row, int firstIndex)
{
    std::apply(
        [&](const auto&... columns) {
            int index = firstIndex;
            (statement.bindCell(index++,
                                ColumnTraits<std::decay_t<decltype(row.*(columns.field))>>::toCell(
                                    row.*(columns.field))),
             ...);
        },
        TableOf<Row>::columns);
}

} // namespace table_detail

// "id, name, …" of the row type, in the order readRow() expects.
template <class Row>
std::string selectList(const std::string& alias = {})
{
    const std::string prefix = alias.empty() ? "" : alias + ".";
    return prefix + "id, " + table_detail::columnList<Row>(prefix);
}

// "SELECT id, name, … FROM table ", written once.
template <class Row>
const std::string& selectFrom()
{
    static const std::string sql =
        "SELECT " + selectList<Row>() + " FROM " + TableOf<Row>::name + " ";
    return sql;
}

// Reads a row from a statement whose columns begin, at `first`, with selectList<Row>(). Throws
// Damaged with table and row for what is not sound.
template <class Row>
Row readRow(const Statement& statement, int first = 0)
{
    Row row;
    row.id = statement.get<decltype(row.id)>(first);
    std::apply(
        [&](const auto&... columns) {
            int index = first;
            ((row.*(columns.field) =
                  statement.get<std::decay_t<decltype(row.*(columns.field))>>(++index)),
             ...);
        },
        TableOf<Row>::columns);
    if constexpr (requires { TableOf<Row>::isSound(row); }) {
        if (!TableOf<Row>::isSound(row)) {
            throw damagedRow(TableOf<Row>::name, row.id.value);
        }
    }
    return row;
}

// All rows; `tail` is "WHERE … ORDER BY …" with ?1, ?2, … bound to the values.
template <class Row, class... Values>
std::vector<Row> selectRows(Database& database, const std::string& tail, const Values&... values)
{
    Statement statement = database.prepare(selectFrom<Row>() + tail);
    statement.bind(values...);
    std::vector<Row> rows;
    while (statement.step()) {
        rows.push_back(readRow<Row>(statement));
    }
    return rows;
}

template <class Row, class... Values>
std::optional<Row> selectRow(Database& database, const std::string& tail, const Values&... values)
{
    Statement statement = database.prepare(selectFrom<Row>() + tail);
    statement.bind(values...);
    if (!statement.step()) {
        return std::nullopt;
    }
    return readRow<Row>(statement);
}

template <class Row>
std::optional<Row> findRow(Database& database, decltype(Row::id) id)
{
    return selectRow<Row>(database, "WHERE id = ?1", id);
}

// Gives the row its id when it has none, and stores it.
template <class Row>
void insertRow(Database& database, Row& row)
{
    if (!row.id.isStored()) {
        row.id.value = database.nextId();
    }
    static const std::string sql = std::string("INSERT INTO ") + TableOf<Row>::name + " (" +
                                   selectList<Row>() + ") VALUES (" +
                                   table_detail::placeholders<Row>() + ")";
    Statement statement = database.prepare(sql);
    statement.bindCell(1, row.id.value);
    table_detail::bindFields(statement, row, 2);
    statement.run();
}

// Writes every column of the row with that id.
template <class Row>
void updateRow(Database& database, const Row& row)
{
    static const std::string sql = std::string("UPDATE ") + TableOf<Row>::name + " SET " +
                                   table_detail::assignments<Row>() + " WHERE id = ?1";
    Statement statement = database.prepare(sql);
    statement.bindCell(1, row.id.value);
    table_detail::bindFields(statement, row, 2);
    statement.run();
}

template <class Row>
void deleteRow(Database& database, decltype(Row::id) id)
{
    static const std::string sql =
        std::string("DELETE FROM ") + TableOf<Row>::name + " WHERE id = ?1";
    database.prepare(sql).bind(id).run();
}

} // namespace plumule
