#include "core/storage/schema_check.h"

#include "core/storage/migrations.h"

#include <map>
#include <sstream>
#include <string_view>
#include <utility>

namespace plumule {
namespace {

struct SchemaObject
{
    std::string type;
    std::string sql;
    bool operator==(const SchemaObject&) const = default;
};
using Schema = std::map<std::string, SchemaObject>;

// What SQLite itself keeps beside our tables.
bool isKeptBySqlite(const std::string& name, const SchemaObject& object)
{
    return (object.type == "index" && object.sql.empty() &&
            name.starts_with("sqlite_autoindex_")) ||
           (object.type == "table" && (name == "sqlite_stat1" || name == "sqlite_stat4"));
}

Schema schemaOf(Database& database)
{
    Schema schema;
    Statement statement =
        database.prepare("SELECT name, type, coalesce(sql, '') FROM sqlite_schema ORDER BY name");
    while (statement.step()) {
        const auto name = statement.get<std::string>(0);
        SchemaObject object{statement.get<std::string>(1), statement.get<std::string>(2)};
        if (!isKeptBySqlite(name, object)) {
            schema.emplace(name, std::move(object));
        }
    }
    return schema;
}

// The words that begin "CREATE TABLE tray (…" and "CREATE UNIQUE INDEX tray_by_code ON …".
std::pair<std::string, SchemaObject> objectOf(const std::string& sql)
{
    std::istringstream words(sql);
    std::string word;
    SchemaObject object{{}, sql};
    while (words >> word && word != "TABLE" && word != "INDEX") {
    }
    object.type = word == "TABLE" ? "table" : "index";
    words >> word;
    return {word, std::move(object)};
}

// None where the version is no number of ours.
Schema shippedSchema(std::int64_t version)
{
    constexpr std::string_view kEnd = ";\n";
    Schema schema;
    if (version < 1 || version > migrations().back().version) {
        return schema;
    }
    std::string_view left = migrations()[static_cast<std::size_t>(version - 1)].schema;
    for (std::size_t end = left.find(kEnd); end != std::string_view::npos; end = left.find(kEnd)) {
        schema.insert(objectOf(std::string(left.substr(0, end))));
        left.remove_prefix(end + kEnd.size());
    }
    return schema;
}

} // namespace

Done checkSchema(Database& database)
{
    const Schema shipped = shippedSchema(database.scalar("PRAGMA user_version"));
    const Schema found = schemaOf(database);
    for (const auto& [name, object] : found) {
        const auto expected = shipped.find(name);
        if (expected == shipped.end()) {
            return fail(ErrorKind::Damaged, SchemaReason::Foreign, object.type, name);
        }
        if (expected->second != object) {
            return fail(ErrorKind::Damaged, SchemaReason::Altered, object.type, name);
        }
    }
    for (const auto& [name, object] : shipped) {
        if (!found.contains(name)) {
            return fail(ErrorKind::Damaged, SchemaReason::Missing, object.type, name);
        }
    }
    return {};
}

} // namespace plumule
