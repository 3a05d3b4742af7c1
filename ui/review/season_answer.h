#pragma once

#include "core/journal/journal.h"
#include "ui/page/page.h"

#include <functional>

namespace plumule::ui {

// Everything that a page asks of a season at once.
struct SeasonQuestion
{
    SeasonFilter filter;
    ComparisonAsk ask;
    WhatIf whatIf;
    std::vector<SeasonFilter> beside; // other seasons to show next to it
};

struct SeasonAnswer
{
    SeasonReview review;
    SeasonComparison comparison;
    std::vector<HeightFit> heights;   // for heights only
    std::vector<Payback> paybacks;    // for yields and costs
    std::vector<PieceAgeing> ageing;  // for yields
    std::vector<SeasonBeside> beside; // as asked
};

// Works the answer out; Cancelled when stopped.
[[nodiscard]] Result<SeasonAnswer> answerTo(Journal& journal, const SeasonQuestion& question,
                                            const Progress& progress);

// The same off the window's thread, on a connection of its own; `done` is called on this thread
// unless `receiver` is gone by then.
void askSeason(const Services& services, const Journal& journal, const SeasonQuestion& question,
               QObject* receiver, std::function<void(const Result<SeasonAnswer>&)> done);

// What stands beside the adjusted means: fitted curves for heights, payback for yields and costs
// where a medium is used again, else the differences.
[[nodiscard]] std::optional<ChartSpec> chartBeside(const SeasonAnswer& answer);

} // namespace plumule::ui
