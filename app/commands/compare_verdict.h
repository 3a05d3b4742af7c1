#pragma once

#include "core/review/comparison/media_pair.h"
#include "core/stats/model/compare_table.h"

#include <QString>

namespace plumule::app {

// The verdict of a pair of media of any table: by the interval for all pairs together and, where a
// margin was given, by the two one-sided tests at 1 - level.
[[nodiscard]] PairVerdict tableVerdict(const stats::ComparedPair& pair,
                                       const stats::TableComparison& comparison, double level);
[[nodiscard]] const char* verdictKey(PairVerdict verdict);
[[nodiscard]] QString verdictWords(PairVerdict verdict);

} // namespace plumule::app
