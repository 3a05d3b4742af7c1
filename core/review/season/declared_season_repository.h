#pragma once

#include "core/review/season/season.h"
#include "core/storage/database.h"

#include <optional>
#include <vector>

namespace plumule {

// Stores declared seasons. Writing needs an open transaction.
class DeclaredSeasonRepository
{
public:
    explicit DeclaredSeasonRepository(Database& database)
        : m_database(database)
    {}

    // By first day.
    [[nodiscard]] std::vector<Season> all();
    // First and last day on which trays were sown that are harvested; none where none is.
    [[nodiscard]] std::optional<Date> firstHarvestedSowing();
    [[nodiscard]] std::optional<Date> lastHarvestedSowing();

    void insert(Season& season);
    void update(const Season& season);
    void remove(SeasonId season);

private:
    Database& m_database;
};

} // namespace plumule
