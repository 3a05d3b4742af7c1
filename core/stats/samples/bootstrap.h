#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/stats/probability/steady_draw.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace plumule::stats {

// A number worked out from rows, given by their numbers; rows may come more than once.
using RowStatistic = std::function<double(std::span<const std::size_t> rows)>;

struct BootstrapPlan
{
    std::size_t resamples = 5000;
    std::uint64_t seed = 20240501;
    double level = 0.95;
    // The group of each row (a medium); rows are drawn within their group, so that its size stays.
    // Empty: all are one group.
    std::vector<std::size_t> groups{};
    Progress progress{}; // told now and then while rows are drawn
};

// Efron 1987, JASA 82:171: bias-corrected and accelerated.
struct BootstrapInterval
{
    double estimate = 0;
    double se = 0;
    double lower = 0;
    double upper = 0;
    double biasCorrection = 0;
    double acceleration = 0;
    std::size_t resamples = 0;
};

// Errors: TooFew (fewer than three rows, or a group of one), Invalid (plan out of range, groups not
// one a row), NotEstimable (the statistic is not finite on the rows or on a resample of them),
// Cancelled when stopped.
[[nodiscard]] Result<BootstrapInterval>
bootstrapInterval(std::size_t rows, const RowStatistic& statistic, const BootstrapPlan& plan = {});

// Σ numerator / Σ denominator, such as cost per gram. Errors as above.
[[nodiscard]] Result<BootstrapInterval> bootstrapRatio(std::span<const double> numerator,
                                                       std::span<const double> denominator,
                                                       const BootstrapPlan& plan = {});

// Sums of columns over rows drawn with replacement, as many as there are: of each resample one sum
// a column, in their order. All columns are as long; Invalid "bootstrap.lengths" otherwise, TooFew
// without a row, Cancelled when stopped.
[[nodiscard]] Result<std::vector<std::vector<double>>>
resampledSums(std::span<const std::vector<double>> columns, std::size_t resamples, SteadyDraw& draw,
              const Progress& progress = {});

// Between order statistics of sorted numbers by Hyndman and Fan's rule 7 (1996, Am. Stat. 50:361);
// at least one number, p from 0 to 1.
[[nodiscard]] double quantileOfSorted(std::span<const double> sorted, double p);

} // namespace plumule::stats
