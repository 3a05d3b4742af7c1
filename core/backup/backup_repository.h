#pragma once

#include "core/storage/database.h"

#include <string>
#include <vector>

namespace plumule {

// What a backup holds, once its checksum was found right.
struct BackupContent
{
    std::int64_t trays = 0;
    std::int64_t waterings = 0;
    std::int64_t harvests = 0;
    std::int64_t photos = 0;
    std::int64_t photosMissing = 0; // that were not in the photo folder when it was made
    std::string lastEntryUtc;       // "2026-11-28 07:05" of the last act; empty for none
};

// What is asked of a journal that is backed up, and of a backup.
class BackupRepository
{
public:
    explicit BackupRepository(Database& database)
        : m_database(database)
    {}

    // As the journal names them, whatever that may be.
    [[nodiscard]] std::vector<std::string> photoNames();
    // All but the photographs missing, which no journal knows of.
    [[nodiscard]] BackupContent content();

private:
    Database& m_database;
};

} // namespace plumule
