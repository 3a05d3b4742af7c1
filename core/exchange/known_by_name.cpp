#include "core/exchange/known_by_name.h"

#include "core/exchange/stored_rows.h"
#include "core/exchange/tray_import.h"

namespace plumule {

void KnownByName::learn(const std::string& name, std::int64_t id)
{
    const auto [known, isNew] = m_ids.emplace(nameKey(name), id);
    known->second = isNew ? id : 0;
}

std::optional<std::int64_t> KnownByName::in(RowCells& cells, std::string_view column) const
{
    const std::string name = cells.needed(column);
    const auto known = m_ids.find(nameKey(name));
    if (name.empty()) {
        return std::nullopt;
    }
    if (known == m_ids.end()) {
        cells.unknown(column);
        return std::nullopt;
    }
    if (known->second == 0) {
        cells.fault(ErrorKind::Ambiguous, ExchangeReason::NameOfSeveral, std::string(column), name);
        return std::nullopt;
    }
    return known->second;
}

KnownByName knownNames(Database& database, std::string_view table)
{
    KnownByName names;
    eachStoredRow(database, table, [&names](const StoredRow& row) {
        names.learn(row.get<std::string>("name"), row.number());
    });
    return names;
}

} // namespace plumule
