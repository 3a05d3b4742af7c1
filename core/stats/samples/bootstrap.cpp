#include "core/stats/samples/bootstrap.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

namespace plumule::stats {

namespace {

using Rows = std::vector<std::size_t>;

constexpr std::size_t kTellEvery = 50; // resamples

Done tell(const Progress& progress, std::size_t done, std::size_t of)
{
    if (done % kTellEvery != 0) {
        return {};
    }
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, "bootstrap");
    }
    progress.report(static_cast<double>(done) / static_cast<double>(of));
    return {};
}

// The rows of each group.
Result<std::vector<Rows>> groupedRows(std::size_t rows, const BootstrapPlan& plan)
{
    if (!(plan.level > 0 && plan.level < 1) || plan.resamples < 100) {
        return fail(ErrorKind::Invalid, "bootstrap.plan");
    }
    if (!plan.groups.empty() && plan.groups.size() != rows) {
        return fail(ErrorKind::Invalid, "bootstrap.groups");
    }
    if (rows < 3) {
        return fail(ErrorKind::TooFew, "bootstrap.rows", std::to_string(rows));
    }
    std::map<std::size_t, Rows> byGroup;
    for (std::size_t row = 0; row < rows; ++row) {
        byGroup[plan.groups.empty() ? 0 : plan.groups[row]].push_back(row);
    }
    std::vector<Rows> grouped;
    for (auto& [group, members] : byGroup) {
        if (members.size() < 2) {
            return fail(ErrorKind::TooFew, "bootstrap.group", std::to_string(group));
        }
        grouped.push_back(std::move(members));
    }
    return grouped;
}

Result<std::vector<double>> resampled(const std::vector<Rows>& groups, std::size_t rows,
                                      const RowStatistic& statistic, const BootstrapPlan& plan)
{
    SteadyDraw draw(plan.seed);
    std::vector<double> values;
    values.reserve(plan.resamples);
    Rows drawn;
    drawn.reserve(rows);
    for (std::size_t i = 0; i < plan.resamples; ++i) {
        drawn.clear();
        for (const Rows& group : groups) {
            for (std::size_t j = 0; j < group.size(); ++j) {
                drawn.push_back(group[draw.below(group.size())]);
            }
        }
        values.push_back(statistic(drawn));
        if (!std::isfinite(values.back())) {
            return fail(ErrorKind::NotEstimable, "bootstrap.resample");
        }
        if (const Done going = tell(plan.progress, i, plan.resamples); !going) {
            return tl::unexpected(going.error());
        }
    }
    return values;
}

// Skewness of the statistic's influence values, by leaving out each row once.
double accelerationOf(std::size_t rows, const RowStatistic& statistic)
{
    std::vector<double> left(rows);
    Rows kept(rows - 1);
    for (std::size_t out = 0; out < rows; ++out) {
        for (std::size_t i = 0; i + 1 < rows; ++i) {
            kept[i] = i < out ? i : i + 1;
        }
        left[out] = statistic(kept);
    }
    const double mean = std::accumulate(left.begin(), left.end(), 0.0) / static_cast<double>(rows);
    double squares = 0;
    double cubes = 0;
    for (const double value : left) {
        squares += (mean - value) * (mean - value);
        cubes += std::pow(mean - value, 3);
    }
    const double acceleration = cubes / (6 * std::pow(squares, 1.5));
    return std::isfinite(acceleration) ? acceleration : 0;
}

double standardDeviation(const std::vector<double>& values)
{
    const auto n = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    double squares = 0;
    for (const double value : values) {
        squares += (value - mean) * (value - mean);
    }
    return std::sqrt(squares / (n - 1));
}

// Where the estimate stands among the resamples, equal ones counted half, as a normal deviate.
double biasOf(const std::vector<double>& sorted, double estimate)
{
    const auto [first, last] = std::equal_range(sorted.begin(), sorted.end(), estimate);
    const double below =
        static_cast<double>(first - sorted.begin()) + static_cast<double>(last - first) / 2;
    const auto n = static_cast<double>(sorted.size());
    return normalQuantile(std::clamp(below, 0.5, n - 0.5) / n);
}

} // namespace

Result<BootstrapInterval> bootstrapInterval(std::size_t rows, const RowStatistic& statistic,
                                            const BootstrapPlan& plan)
{
    const auto groups = groupedRows(rows, plan);
    if (!groups) {
        return tl::unexpected(groups.error());
    }
    Rows all(rows);
    std::iota(all.begin(), all.end(), std::size_t{0});
    BootstrapInterval interval;
    interval.estimate = statistic(all);
    if (!std::isfinite(interval.estimate)) {
        return fail(ErrorKind::NotEstimable, "bootstrap.estimate");
    }
    auto values = resampled(*groups, rows, statistic, plan);
    if (!values) {
        return tl::unexpected(values.error());
    }
    std::sort(values->begin(), values->end());
    interval.resamples = values->size();
    interval.se = standardDeviation(*values);
    interval.biasCorrection = biasOf(*values, interval.estimate);
    interval.acceleration = accelerationOf(rows, statistic);
    const auto end = [&](double tail) {
        const double z = interval.biasCorrection + normalQuantile(tail);
        const double slack = 1 - interval.acceleration * z;
        // A skewness beyond what the method allows runs off the end.
        if (slack <= 0) {
            return z > 0 ? values->back() : values->front();
        }
        return quantileOfSorted(*values, normalCdf(interval.biasCorrection + z / slack));
    };
    interval.lower = end((1 - plan.level) / 2);
    interval.upper = end((1 + plan.level) / 2);
    return interval;
}

Result<BootstrapInterval> bootstrapRatio(std::span<const double> numerator,
                                         std::span<const double> denominator,
                                         const BootstrapPlan& plan)
{
    if (numerator.size() != denominator.size()) {
        return fail(ErrorKind::Invalid, "bootstrap.lengths");
    }
    return bootstrapInterval(
        numerator.size(),
        [&](std::span<const std::size_t> rows) {
            double above = 0;
            double below = 0;
            for (const std::size_t row : rows) {
                above += numerator[row];
                below += denominator[row];
            }
            return above / below;
        },
        plan);
}

Result<std::vector<std::vector<double>>> resampledSums(std::span<const std::vector<double>> columns,
                                                       std::size_t resamples, SteadyDraw& draw,
                                                       const Progress& progress)
{
    const std::size_t rows = columns.empty() ? 0 : columns.front().size();
    for (const auto& column : columns) {
        if (column.size() != rows) {
            return fail(ErrorKind::Invalid, "bootstrap.lengths");
        }
    }
    if (rows == 0) {
        return fail(ErrorKind::TooFew, "bootstrap.rows");
    }
    std::vector<std::vector<double>> sums(resamples, std::vector<double>(columns.size()));
    Rows drawn(rows);
    for (std::size_t i = 0; i < resamples; ++i) {
        for (std::size_t& row : drawn) {
            row = draw.below(rows);
        }
        for (std::size_t column = 0; column < columns.size(); ++column) {
            for (const std::size_t row : drawn) {
                sums[i][column] += columns[column][row];
            }
        }
        if (const Done going = tell(progress, i, resamples); !going) {
            return tl::unexpected(going.error());
        }
    }
    return sums;
}

double quantileOfSorted(std::span<const double> sorted, double p)
{
    const double place = p * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(std::floor(place));
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return sorted[below] + (place - std::floor(place)) * (sorted[above] - sorted[below]);
}

} // namespace plumule::stats
