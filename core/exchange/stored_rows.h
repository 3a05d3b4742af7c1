#pragma once

#include "core/exchange/sheet_repository.h"

namespace plumule {

// A row of a table of the journal, by the names of its columns.
class StoredRow
{
public:
    StoredRow(const JournalSheet& sheet, const std::vector<Cell>& cells)
        : m_sheet(sheet)
        , m_cells(cells)
    {}

    [[nodiscard]] const Cell& operator[](std::string_view column) const;
    // Throws Damaged where the cell is of another type.
    template <class T>
    [[nodiscard]] T get(std::string_view column) const
    {
        try {
            return ColumnTraits<T>::fromCell((*this)[column]);
        } catch (const BadCell&) {
            throw damagedRow(m_sheet.table, number());
        }
    }
    [[nodiscard]] std::int64_t number() const;

private:
    const JournalSheet& m_sheet;
    const std::vector<Cell>& m_cells;
};

[[nodiscard]] JournalSheet storedSheet(Database& database, std::string_view table);

// One query; by number.
template <class Take>
void eachStoredRow(Database& database, std::string_view table, Take take)
{
    const JournalSheet sheet = storedSheet(database, table);
    SheetRepository(database).forEachRow(
        sheet, [&](const std::vector<Cell>& cells) { take(StoredRow(sheet, cells)); });
}

} // namespace plumule
