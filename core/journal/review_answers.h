#pragma once

#include "core/base/progress.h"
#include "core/review/comparison.h"
#include "core/review/height_fits.h"

namespace plumule {

class Ledger;
struct SeasonNeeds;

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
    // One response compared between media, with its verdicts and what is unfair about it. `margin`
    // is per tray, for yields and residue; without it the trials' margins hold, else 10 % of the
    // mean.
    [[nodiscard]] Result<SeasonComparison> comparison(const SeasonFilter& filter, Response response,
                                                      std::optional<Mass> margin = std::nullopt,
                                                      const Progress& progress = {});
    // The same with all that can be asked: a day of heights, a margin in the response's own unit.
    [[nodiscard]] Result<SeasonComparison>
    comparison(const SeasonFilter& filter, const ComparisonAsk& ask, const Progress& progress = {});
    // Growth curves of each variety on each medium.
    [[nodiscard]] Result<std::vector<HeightFit>> heightFits(const SeasonFilter& filter,
                                                            const Progress& progress = {});
    // The last twelve months up to today.
    [[nodiscard]] SeasonFilter usualSeason() const;

private:
    template <class Answer, class Work>
    [[nodiscard]] Result<Answer> answer(const SeasonFilter& filter, const SeasonNeeds& needs,
                                        const Progress& progress, Work work);

    Ledger& m_ledger;
};

} // namespace plumule
