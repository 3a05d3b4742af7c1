#pragma once

#include "app/commands/command.h"
#include "core/review/comparison/comparison.h"

namespace plumule::app {

// The answer of a season or a trial as scripts read it: documented at `season --json`.
[[nodiscard]] nlohmann::ordered_json comparisonJson(const SeasonComparison& comparison);

// "never_met", "few_trials" …
[[nodiscard]] const char* whyKey(stats::NoVerdictReason why);

// The same in words, for a terminal.
void printSeasonComparison(const SeasonComparison& comparison);

// --metric, --groups, --margin.
void addComparisonOptions(QCommandLineParser& parser);
// None, and a line said, where one of them can't be read.
[[nodiscard]] std::optional<ComparisonAsk> comparisonAsk(const QCommandLineParser& parser);

} // namespace plumule::app
