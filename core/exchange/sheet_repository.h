#pragma once

#include "core/exchange/journal_sheet.h"
#include "core/storage/database.h"

namespace plumule {

// All that a journal holds, table by table as its schema has them: a table that a later schema adds
// is read and written without a word here. History and the counter of numbers are left out.
class SheetRepository
{
public:
    explicit SheetRepository(Database& database)
        : m_database(database)
    {}

    // A table that others refer to stands before them.
    [[nodiscard]] std::vector<JournalSheet> sheets();
    [[nodiscard]] JournalSheet sheetOf(const std::string& table);

    // Hands over each row's cells in the order of the sheet's columns, by number.
    template <class Take>
    void forEachRow(const JournalSheet& sheet, Take take)
    {
        Statement statement = allOf(sheet);
        std::vector<Cell> cells(sheet.columns.size());
        while (statement.step()) {
            for (std::size_t i = 0; i < cells.size(); ++i) {
                cells[i] = statement.cellAt(static_cast<int>(i));
            }
            take(cells);
        }
    }
    [[nodiscard]] std::int64_t rowCount(const JournalSheet& sheet);

    // Inside a transaction. Throws Conflict where the number is taken.
    void insert(const JournalSheet& sheet, const std::vector<Cell>& cells);
    // Numbers given from now on are of another copy than all that are there.
    void countOnFrom(std::int64_t highestId);

private:
    [[nodiscard]] Statement allOf(const JournalSheet& sheet);

    Database& m_database;
};

} // namespace plumule
