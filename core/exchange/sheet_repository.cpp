#include "core/exchange/sheet_repository.h"

#include "core/storage/changeset_check.h"

#include <map>

namespace plumule {
namespace {

constexpr int kCounterBits = 40;

std::string columnList(const JournalSheet& sheet)
{
    std::string list;
    for (const SheetColumn& column : sheet.columns) {
        list += (list.empty() ? "" : ", ") + column.stored;
    }
    return list;
}

} // namespace

std::vector<JournalSheet> SheetRepository::sheets()
{
    std::vector<std::string> tables;
    {
        Statement statement =
            m_database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND "
                               "name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY rowid");
        while (statement.step()) {
            const auto table = statement.get<std::string>(0);
            if (isTrackedTable(table)) {
                tables.push_back(table);
            }
        }
    }
    std::vector<JournalSheet> sheets;
    sheets.reserve(tables.size());
    for (const std::string& table : tables) {
        sheets.push_back(sheetOf(table));
    }
    return sheets;
}

JournalSheet SheetRepository::sheetOf(const std::string& table)
{
    std::map<std::string, std::string> references;
    {
        Statement statement =
            m_database.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1)");
        statement.bind(table);
        while (statement.step()) {
            references.emplace(statement.get<std::string>(0), statement.get<std::string>(1));
        }
    }
    JournalSheet sheet{table, {}};
    Statement statement = m_database.prepare(
        "SELECT name, type, \"notnull\" FROM pragma_table_info(?1) ORDER BY cid");
    statement.bind(table);
    while (statement.step()) {
        const auto stored = statement.get<std::string>(0);
        const auto refersTo = references.find(stored);
        sheet.columns.push_back(
            sheetColumnOf(stored, statement.get<std::string>(1),
                          refersTo == references.end() ? std::string() : refersTo->second,
                          !statement.get<bool>(2)));
    }
    return sheet;
}

Statement SheetRepository::allOf(const JournalSheet& sheet)
{
    return m_database.prepare("SELECT " + columnList(sheet) + " FROM " + sheet.table +
                              " ORDER BY id");
}

std::int64_t SheetRepository::rowCount(const JournalSheet& sheet)
{
    return m_database.scalar("SELECT count(*) FROM " + sheet.table);
}

void SheetRepository::insert(const JournalSheet& sheet, const std::vector<Cell>& cells)
{
    std::string places;
    for (std::size_t i = 1; i <= cells.size(); ++i) {
        places += (i == 1 ? "?" : ", ?") + std::to_string(i);
    }
    Statement statement = m_database.prepare("INSERT INTO " + sheet.table + " (" +
                                             columnList(sheet) + ") VALUES (" + places + ")");
    for (std::size_t i = 0; i < cells.size(); ++i) {
        statement.bindCell(static_cast<int>(i) + 1, cells[i]);
    }
    statement.run();
}

void SheetRepository::countOnFrom(std::int64_t highestId)
{
    m_database.prepare("UPDATE copy SET copy_number = ?1, next_counter = 1 WHERE id = 1")
        .bind((highestId >> kCounterBits) + 1)
        .run();
}

} // namespace plumule
