#pragma once

#include "core/review/comparison/comparison.h"
#include "core/review/facts/season.h"

#include <QString>

namespace plumule::ui {

// What the season says at this stage, in one sentence and a few more below it.
struct SeasonWords
{
    QString headline;
    QString detail;
};
[[nodiscard]] SeasonWords wordsFor(const SeasonReview& review);
// Why nothing is compared where it was asked for something else than the yield: no tray has a value
// of it, or those of one medium alone.
[[nodiscard]] SeasonWords wordsWithoutPairs(const SeasonComparison& comparison);

// "Not counted: 24 still growing, 1 discarded (RC014: mould)."
[[nodiscard]] QString leftOutText(const SeasonReview& review);

} // namespace plumule::ui
