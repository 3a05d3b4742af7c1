#pragma once

#include "core/review/answer/costs_answer.h"
#include "core/review/answer/trial_answer.h"
#include "core/review/planning/trial_outlook.h"
#include "core/review/season/season_rules.h"

namespace plumule {

class Ledger;

// The season's answers. They only read, each its facts once.
class ReviewAnswers
{
public:
    explicit ReviewAnswers(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Invalid "season.span" where a span is upside down; Cancelled when stopped.
    [[nodiscard]] Result<SeasonAnswer> season(const SeasonQuestion& question,
                                              const Progress& progress = {});
    // All harvests of the trial, now and to come. NotFound; Cancelled when stopped.
    [[nodiscard]] Result<TrialAnswer> trial(const TrialQuestion& question,
                                            const Progress& progress = {});
    // Where the money of a span went; errors as season()'s.
    [[nodiscard]] Result<CostsAnswer> costs(const CostsQuestion& question,
                                            const Progress& progress = {});
    // What a plan, kept or not, can be expected to show, from the yields of the last two years, and
    // whether it is fair. Quick enough for every keystroke.
    [[nodiscard]] Result<PlanAnswer> plan(const TrialDraft& draft);

    // The present season's trays; before the first harvest those of the last twelve months.
    [[nodiscard]] SeasonFilter usualSeason();
    // The declared season whose filter it is, maybe of some varieties only; else a choice by hand.
    [[nodiscard]] Series seriesOf(const SeasonFilter& filter);

private:
    Ledger& m_ledger;
};

} // namespace plumule
