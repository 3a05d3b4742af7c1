#pragma once

#include "core/review/season/season_rules.h"

namespace plumule {

class Ledger;

// Declared seasons: each a series of sowings that is judged as one.
class SeasonEntries
{
public:
    explicit SeasonEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Oldest first; before any was declared, the one that began with the first sowing that gave a
    // harvest (its id is not stored). None before the first harvest.
    [[nodiscard]] Result<std::vector<SeasonSpanOfDays>> all();
    // A new season where its id is not stored; errors as checkedSeason()'s. With the first one that
    // is declared the one before it is stored too.
    Result<Season> save(const Season& season);
    // Its sowings go to the season before. NotFound; Conflict where trays sown in it are harvested.
    Done remove(SeasonId season);

private:
    Ledger& m_ledger;
};

} // namespace plumule
