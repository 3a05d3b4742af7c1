#include "core/exchange/stored_rows.h"

#include <algorithm>
#include <cassert>

namespace plumule {

const Cell& StoredRow::operator[](std::string_view column) const
{
    const auto found = std::find_if(m_sheet.columns.begin(), m_sheet.columns.end(),
                                    [&](const SheetColumn& each) { return each.stored == column; });
    assert(found != m_sheet.columns.end());
    return m_cells[static_cast<std::size_t>(found - m_sheet.columns.begin())];
}

std::int64_t StoredRow::number() const
{
    const auto* id = std::get_if<std::int64_t>(&(*this)["id"]);
    return id == nullptr ? 0 : *id;
}

JournalSheet storedSheet(Database& database, std::string_view table)
{
    return SheetRepository(database).sheetOf(std::string(table));
}

} // namespace plumule
