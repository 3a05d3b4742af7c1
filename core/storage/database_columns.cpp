// Part of core/storage/database.h: what the schema declares.
#include "core/storage/database.h"

namespace plumule {

const std::vector<ColumnInfo>& Database::columnsOf(const std::string& table)
{
    const auto known = m_columns.find(table);
    if (known != m_columns.end()) {
        return known->second;
    }
    std::vector<ColumnInfo> columns;
    {
        Statement statement = prepare("SELECT name, type FROM pragma_table_info(?1) ORDER BY cid");
        statement.bind(table);
        while (statement.step()) {
            columns.push_back({statement.get<std::string>(0), statement.get<std::string>(1)});
        }
    }
    if (columns.empty()) {
        static const std::vector<ColumnInfo> kNone;
        return kNone; // a migration may still make it
    }
    return m_columns.emplace(table, std::move(columns)).first->second;
}

} // namespace plumule
