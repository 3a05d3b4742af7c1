#pragma once

#include "core/base/progress.h"
#include "core/review/season_facts.h"

namespace plumule {

class Database;

// Reads a season's columns: a fixed number of queries for any number of trays.
class SeasonRepository
{
public:
    explicit SeasonRepository(Database& database)
        : m_database(database)
    {}

    // Cancelled when stopped between two of its steps.
    [[nodiscard]] Result<SeasonFacts> read(const SeasonFilter& filter, const Progress& progress);

private:
    Database& m_database;
};

} // namespace plumule
