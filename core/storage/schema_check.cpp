#include "core/storage/schema_check.h"

#include "core/storage/migrations.h"

#include <map>
#include <mutex>

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

Schema madeSchema(std::int64_t version)
{
    Database database({}, Access::ReadWrite, OpenAs::New);
    for (const Migration& migration : migrations()) {
        if (migration.version <= version) {
            database.execute(migration.sql);
        }
    }
    return schemaOf(database);
}

// Made once: a worker opens the journal for every question.
const Schema& shippedSchema(std::int64_t version)
{
    static std::mutex mutex;
    static std::map<std::int64_t, Schema> made;
    const std::lock_guard guard(mutex);
    const auto known = made.find(version);
    return known == made.end() ? made.emplace(version, madeSchema(version)).first->second
                               : known->second;
}

} // namespace

Done checkSchema(Database& database)
{
    const Schema& shipped = shippedSchema(database.scalar("PRAGMA user_version"));
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
