#pragma once

#include "core/storage/database.h"
#include "core/storage/migrations.h"

#include <gtest/gtest.h>

namespace plumule {

// An empty journal in memory, at the newest schema, in the middle of a transaction: for
// repositories alone.
class StoreTest : public ::testing::Test
{
protected:
    StoreTest()
    {
        for (const Migration& migration : migrations()) {
            database.execute(migration.sql);
        }
        database.execute("INSERT OR REPLACE INTO copy (id, copy_number, next_counter) "
                         "VALUES (1, 1, 1)");
        transaction.emplace(database);
    }

    // A tray as other rooms would store it; the rooms below them can't make one.
    void storeTray(const std::string& code, std::int64_t variety, std::int64_t medium,
                   const std::string& otherColumns = "", const std::string& otherValues = "")
    {
        database.execute("INSERT INTO tray (id, code, variety_id, medium_id, sown_minute" +
                         otherColumns + ") VALUES (" + std::to_string(database.nextId()) + ", '" +
                         code + "', " + std::to_string(variety) + ", " + std::to_string(medium) +
                         ", 480" + otherValues + ")");
    }

    Database database{{}, Access::ReadWrite, OpenAs::New};
    std::optional<Transaction> transaction;
};

} // namespace plumule
