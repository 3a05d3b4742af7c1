#pragma once

#include "core/base/progress.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

class Database;

// No tray grows longer than these days.
inline constexpr int kLongestGrowth = 400;

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
    // What a plan is judged by: names, places, the variety's protocol, and the yields of the two
    // years up to `day`.
    [[nodiscard]] SeasonFacts readForPlan(VarietyId variety, Date day);
    // First and last day on which trays of the trial were sown, else its plan has them sown; none
    // where it has neither.
    [[nodiscard]] std::optional<std::pair<Date, Date>> sowingsOf(TrialId trial);

private:
    Database& m_database;
};

} // namespace plumule
