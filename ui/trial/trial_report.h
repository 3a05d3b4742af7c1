#pragma once

#include "core/review/answer/trial_answer.h"
#include "core/review/charts/block_chart.h"
#include "ui/review/report_parts.h"

namespace plumule::ui {

// What a trial's report, and its output for scripts, ask for, in the groups and by the margin that
// were asked for.
[[nodiscard]] TrialQuestion reportQuestion(TrialId trial, const ComparisonAsk& asked = {});

// From the answer to reportQuestion(); photographs are taken from their folder. A part that could
// not be worked out says so in its place.
[[nodiscard]] Report trialReport(const TrialAnswer& answer, const QString& photoFolder);

// The trial's blocks, named with their shelf; one of all trays where it has none.
[[nodiscard]] std::vector<BlockOfTrays> blocksOf(const TrialProgress& progress);
// "RD003: no height on 5 Mar."
[[nodiscard]] QStringList lackWords(const TrialProgress& progress);

} // namespace plumule::ui
