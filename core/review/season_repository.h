#pragma once

#include "core/base/progress.h"
#include "core/review/season_facts.h"

namespace plumule {

class Database;

// What may be left out where it is not asked for: it takes most of the reading.
struct SeasonNeeds
{
    bool waterAmounts = true; // for costs; without them TrayUse::waterings is still right
    bool heights = true;
};

// Reads a season's columns: a fixed number of queries for any number of trays.
class SeasonRepository
{
public:
    explicit SeasonRepository(Database& database)
        : m_database(database)
    {}

    // Cancelled when stopped between two of its steps.
    [[nodiscard]] Result<SeasonFacts> read(const SeasonFilter& filter, const Progress& progress,
                                           const SeasonNeeds& needs = {});

private:
    Database& m_database;
};

} // namespace plumule
