#pragma once

#include "core/base/progress.h"
#include "core/review/season.h"

namespace plumule {

class Ledger;

// The season's answers. They only read.
class ReviewAnswers
{
public:
    explicit ReviewAnswers(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Invalid where the span is upside down; Cancelled when stopped.
    [[nodiscard]] Result<SeasonReview> season(const SeasonFilter& filter,
                                              const Progress& progress = {});
    // The last twelve months up to today.
    [[nodiscard]] SeasonFilter usualSeason() const;

private:
    Ledger& m_ledger;
};

} // namespace plumule
