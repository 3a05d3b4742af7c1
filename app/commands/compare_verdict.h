#pragma once

#include "core/stats/model/compare_table.h"
#include "core/stats/verdict/verdict.h"

#include <QString>

namespace plumule::app {

// The verdict of a pair of media of any table: by the interval for all pairs together and, where a
// margin was given, by the two one-sided tests at 1 - level.
[[nodiscard]] stats::Verdict tableVerdict(const stats::ComparedPair& pair,
                                          const stats::TableComparison& comparison, double level);
[[nodiscard]] const char* verdictKey(stats::Verdict verdict);
[[nodiscard]] QString verdictWords(stats::Verdict verdict);

} // namespace plumule::app
