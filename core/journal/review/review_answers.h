#pragma once

#include "core/base/progress.h"
#include "core/review/comparison/comparison.h"
#include "core/review/planning/trial_outlook.h"
#include "core/review/season/height_fits.h"
#include "core/review/season/payback.h"
#include "core/review/season/piece_ageing.h"
#include "core/review/season/season_spans.h"
#include "core/review/season/what_if.h"

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
    // The same as if these prices and uses had held.
    [[nodiscard]] Result<SeasonReview> season(const SeasonFilter& filter, const WhatIf& whatIf,
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
    [[nodiscard]] Result<SeasonComparison> comparison(const SeasonFilter& filter,
                                                      const ComparisonAsk& ask,
                                                      const WhatIf& whatIf,
                                                      const Progress& progress = {});
    // Growth curves of each variety on each medium.
    [[nodiscard]] Result<std::vector<HeightFit>> heightFits(const SeasonFilter& filter,
                                                            const Progress& progress = {});
    // When reusable media pay back, with its uncertainty, and what a gram costs by uses.
    [[nodiscard]] Result<std::vector<Payback>>
    payback(const SeasonFilter& filter, const WhatIf& whatIf = {}, const Progress& progress = {});
    // Whether reusable media yield less as their pieces age.
    [[nodiscard]] Result<std::vector<PieceAgeing>> pieceAgeing(const SeasonFilter& filter,
                                                               const Progress& progress = {});

    // What a plan, kept or not, can be expected to show; from the yields of the last two years.
    // Quick enough for every keystroke. Errors as outlookOf().
    [[nodiscard]] Result<PlanOutlook> outlook(const TrialDraft& draft,
                                              const Progress& progress = {});
    [[nodiscard]] Result<std::vector<Finding>> fairnessOfPlan(const TrialDraft& draft);

    // The last twelve months up to today.
    [[nodiscard]] SeasonFilter usualSeason() const;
    // All harvests of one trial, now and to come: from its first sowing, planned or done.
    [[nodiscard]] SeasonFilter filterOf(TrialId trial);

private:
    template <class Answer, class Work>
    [[nodiscard]] Result<Answer> answer(const SeasonFilter& filter, const SeasonNeeds& needs,
                                        const Progress& progress, Work work,
                                        const WhatIf& whatIf = {});

    Ledger& m_ledger;
};

} // namespace plumule
