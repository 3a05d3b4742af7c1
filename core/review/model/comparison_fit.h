#pragma once

#include "core/review/model/comparison_columns.h"
#include "core/stats/model/comparisons.h"

#include <memory>

namespace plumule {

// A model fitted to the compared trays, fixed or mixed.
struct ComparisonFit
{
    ComparisonModel model;
    std::shared_ptr<const stats::Estimator> estimator;
    std::vector<stats::MarginalMean> means; // by medium
    double sd = 0;
    std::optional<double> residualDf; // none with a random term
    bool hasNoSpread = false;
    std::vector<double> residuals; // row by row, like the trays
    // Externally studentized, where the model is a fixed one.
    std::vector<std::optional<double>> studentized;
};

// Medium, and feeding, variety, trial (at random from five trials on), block, column and seed
// density as the trays allow. All but variety and trial are left out where some media could no
// longer be told apart with them. TooFew where no tray is left over to judge the spread by, or
// there is one medium only.
[[nodiscard]] Result<ComparisonFit> fitComparison(const ComparisonColumns& columns);

} // namespace plumule
