#include "core/stats/samples/two_samples.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

struct TwoSums
{
    double difference = 0;
    double ny = 0;
    double nx = 0;
    double squaresY = 0;
    double squaresX = 0;
};

Result<TwoSums> sumTwo(std::span<const double> y, std::span<const double> x)
{
    const std::vector<std::vector<double>> groups = {{x.begin(), x.end()}, {y.begin(), y.end()}};
    const Result<GroupSums> sums = sumGroups(groups);
    if (!sums)
        return fail(sums.error().kind, "values");
    return TwoSums{sums->meanLessShift[1] - sums->meanLessShift[0], static_cast<double>(y.size()),
                   static_cast<double>(x.size()), sums->squares[1], sums->squares[0]};
}

} // namespace

Result<TEstimate> welchT(std::span<const double> y, std::span<const double> x, double level)
{
    const Result<TwoSums> sums = sumTwo(y, x);
    if (!sums)
        return tl::unexpected(sums.error());
    if (y.size() < 2 || x.size() < 2)
        return fail(ErrorKind::TooFew, "values");
    const double vy = sums->squaresY / (sums->ny - 1) / sums->ny;
    const double vx = sums->squaresX / (sums->nx - 1) / sums->nx;
    if (vy + vx == 0)
        return fail(ErrorKind::NotEstimable, "spread");
    const double df = (vy + vx) * (vy + vx) / (vy * vy / (sums->ny - 1) + vx * vx / (sums->nx - 1));
    return tEstimate(sums->difference, std::sqrt(vy + vx), df, level);
}

Result<TEstimate> pooledT(std::span<const double> y, std::span<const double> x, double level)
{
    const Result<TwoSums> sums = sumTwo(y, x);
    if (!sums)
        return tl::unexpected(sums.error());
    const double df = sums->ny + sums->nx - 2;
    if (df < 1)
        return fail(ErrorKind::TooFew, "values");
    const double variance = (sums->squaresY + sums->squaresX) / df;
    return tEstimate(sums->difference, std::sqrt(variance * (1 / sums->ny + 1 / sums->nx)), df,
                     level);
}

Result<TEstimate> pairedT(std::span<const double> y, std::span<const double> x, double level)
{
    if (y.size() != x.size())
        return fail(ErrorKind::Invalid, "values");
    std::vector<double> differences;
    for (std::size_t i = 0; i < y.size(); ++i)
        differences.push_back(y[i] - x[i]);
    return oneSampleT(differences, 0, level);
}

Result<TEstimate> oneSampleT(std::span<const double> values, double reference, double level)
{
    if (values.size() < 2)
        return fail(ErrorKind::TooFew, "values");
    const Result<GroupSummary> summary = summarize(values);
    if (!summary)
        return tl::unexpected(summary.error());
    const auto n = static_cast<double>(values.size());
    return tEstimate(summary->mean - reference, *summary->sd / std::sqrt(n), n - 1, level);
}

double pGreater(const TEstimate& test)
{
    return tUpper(test.t, test.df);
}

Result<VarianceRatio> varianceRatio(std::span<const double> y, std::span<const double> x)
{
    const Result<TwoSums> sums = sumTwo(y, x);
    if (!sums)
        return tl::unexpected(sums.error());
    if (y.size() < 2 || x.size() < 2)
        return fail(ErrorKind::TooFew, "values");
    if (sums->squaresY == 0 || sums->squaresX == 0)
        return fail(ErrorKind::NotEstimable, "spread");
    VarianceRatio ratio;
    ratio.df1 = sums->ny - 1;
    ratio.df2 = sums->nx - 1;
    ratio.f = (sums->squaresY / ratio.df1) / (sums->squaresX / ratio.df2);
    ratio.p =
        2 * std::min(fUpper(ratio.f, ratio.df1, ratio.df2), fCdf(ratio.f, ratio.df1, ratio.df2));
    return ratio;
}

} // namespace plumule::stats
