#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

// Cost per gram: of each medium the sum of its costs over the sum of its grams, with a bootstrap
// interval (BCa, fixed seed). A pair is compared within each variety and trial that both have, the
// differences averaged with weights n₁n₂/(n₁+n₂); its interval is BCa too, at Bonferroni's level
// over all pairs. Trays without a partner in their variety and trial say nothing of the pair and
// are not counted in it.
struct RatioComparison
{
    std::vector<AdjustedMean> means;
    std::vector<MediaPair> pairs; // without verdicts' trays needed
    std::optional<double> sd;     // between trays of like medium, variety and trial
    std::optional<double> df;
};
[[nodiscard]] RatioComparison compareRatios(const ComparedTrays& trays, double margin,
                                            const Progress& progress = {});

} // namespace plumule
