#pragma once

#include "core/review/answer/season_answer.h"
#include "core/trial/trial_progress.h"

namespace plumule {

// Everything asked of a trial at once.
struct TrialQuestion
{
    TrialId trial;
    std::vector<ComparisonAsk> asks;
    std::set<SeasonPart> parts;
};

// How it went, what was written of it, and what its trays answer.
struct TrialAnswer
{
    TrialProgress progress;
    Result<std::vector<TrialDay>> diary; // oldest first
    SeasonAnswer season;                 // of the trial alone
};

} // namespace plumule
