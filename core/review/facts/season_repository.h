#pragma once

#include "core/base/progress.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

class Database;

// No tray grows longer than these days.
inline constexpr int kLongestGrowth = 400;

// Which trays are read: cut or discarded in these days, and of these trials where any are named.
struct SeasonSpan
{
    Date from;
    Date to;
    std::vector<TrialId> trials;
};
// What covers all of them, of which there is one at least.
[[nodiscard]] SeasonSpan spanOver(const std::vector<SeasonFilter>& filters);

// Reads a season's columns: a fixed number of queries for any number of trays. Costs are not
// worked out: see priceTrays().
class SeasonRepository
{
public:
    explicit SeasonRepository(Database& database)
        : m_database(database)
    {}

    // Cancelled when stopped between two of its steps.
    [[nodiscard]] Result<SeasonFacts> read(const SeasonSpan& span, const Progress& progress);
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
