#pragma once

#include "core/chart/chart_spec.h"
#include "core/journal/journal.h"
#include "core/review/answer/season_answer.h"
#include "core/review/answer/trial_answer.h"
#include "core/review/comparison/comparison.h"
#include "core/review/facts/response.h"
#include "ui/page/page.h"

#include <functional>

namespace plumule::ui {

// What stands beside the comparison of a response, and has to be asked for with it.
[[nodiscard]] std::set<SeasonPart> partsBeside(Response response);

// As askAside().
void askSeason(const Services& services, const Journal& journal, const SeasonQuestion& question,
               QObject* receiver, std::function<void(const Result<SeasonAnswer>&)> done);
void askTrial(const Services& services, const Journal& journal, const TrialQuestion& question,
              QObject* receiver, std::function<void(const Result<TrialAnswer>&)> done);

// What stands beside the adjusted means: fitted curves for heights, payback for yields and costs
// where a medium is used again, else the differences.
[[nodiscard]] std::optional<ChartSpec> chartBeside(const SeasonAnswer& answer,
                                                   const SeasonComparison& comparison);

} // namespace plumule::ui
