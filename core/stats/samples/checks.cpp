#include "core/stats/samples/checks.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/plain_checks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace plumule::stats {

namespace {

constexpr std::size_t kMostForShapiro = 5000;

template <std::size_t N>
double polynomial(const std::array<double, N>& coefficients, double x)
{
    double value = 0;
    for (std::size_t i = N; i-- > 0;) {
        value = value * x + coefficients[i];
    }
    return value;
}

// Royston's weights for the upper half of the sorted values, the largest first.
std::vector<double> shapiroWeights(std::size_t n)
{
    constexpr std::array kFirst = {0.0, 0.221157, -0.147981, -2.071190, 4.434685, -2.706056};
    constexpr std::array kSecond = {0.0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
    if (n == 3) {
        return {std::numbers::sqrt2 / 2};
    }
    std::vector<double> weights;
    double squares = 0;
    for (std::size_t i = 0; i < n / 2; ++i) {
        const double p = (static_cast<double>(i) + 0.625) / (static_cast<double>(n) + 0.25);
        weights.push_back(-normalQuantile(p));
        squares += 2 * weights.back() * weights.back();
    }
    const double root = std::sqrt(squares);
    const double u = 1 / std::sqrt(static_cast<double>(n));
    const std::size_t fitted = n > 5 ? 2 : 1;
    double fittedSquares = 0;
    for (std::size_t i = 0; i < fitted; ++i) {
        squares -= 2 * weights[i] * weights[i];
        weights[i] = weights[i] / root + polynomial(i == 0 ? kFirst : kSecond, u);
        fittedSquares += 2 * weights[i] * weights[i];
    }
    const double scale = std::sqrt(squares / (1 - fittedSquares));
    for (std::size_t i = fitted; i < weights.size(); ++i) {
        weights[i] /= scale;
    }
    return weights;
}

double shapiroP(double lackOfFit, std::size_t n)
{
    const auto count = static_cast<double>(n);
    if (n == 3) {
        const double w = 1 - lackOfFit;
        const double p = 6 / std::numbers::pi * (std::asin(std::sqrt(w)) - std::numbers::pi / 3);
        return std::clamp(p, 0.0, 1.0);
    }
    const double y = std::log(lackOfFit);
    if (n <= 11) {
        const double gamma = -2.273 + 0.459 * count;
        if (y >= gamma) {
            return 0;
        }
        const double mean = polynomial(std::array{0.5440, -0.39978, 0.025054, -0.0006714}, count);
        const double sd =
            std::exp(polynomial(std::array{1.3822, -0.77857, 0.062767, -0.0020322}, count));
        return normalUpper((-std::log(gamma - y) - mean) / sd);
    }
    const double x = std::log(count);
    const double mean = polynomial(std::array{-1.5861, -0.31082, -0.083751, 0.0038915}, x);
    const double sd = std::exp(polynomial(std::array{-0.4803, -0.082676, 0.0030302}, x));
    return normalUpper((y - mean) / sd);
}

// 1 - W, formed without losing the digits of a W near 1.
double lackOfFitOf(std::vector<double> sorted)
{
    const std::size_t n = sorted.size();
    const double shift = sorted[n / 2];
    const double range = sorted.back() - sorted.front();
    for (double& x : sorted) {
        x = (x - shift) / range;
    }
    const std::vector<double> weights = shapiroWeights(n);
    const double mean = summarize(sorted)->mean;
    double together = 0;
    double ofWeights = 0;
    double ofValues = 0;
    for (std::size_t i = 0; i < n; ++i) {
        double weight = 0;
        if (i < weights.size()) {
            weight = -weights[i];
        } else if (n - 1 - i < weights.size()) {
            weight = weights[n - 1 - i];
        }
        const double off = sorted[i] - mean;
        together += weight * off;
        ofWeights += weight * weight;
        ofValues += off * off;
    }
    const double both = std::sqrt(ofWeights * ofValues);
    return (both - together) * (both + together) / (ofWeights * ofValues);
}

} // namespace

Result<VarianceRatio> brownForsythe(Groups groups)
{
    const Result<OneWayAnova> plain = oneWayAnova(groups);
    if (!plain) {
        return tl::unexpected(plain.error());
    }
    std::vector<std::vector<double>> deviations;
    for (const auto& group : groups) {
        // Taken from one of the group's values, so that like leading digits are not lost.
        std::vector<double> shifted;
        shifted.reserve(group.size());
        for (const double x : group) {
            shifted.push_back(x - group.front());
        }
        const double centre = medianOf(shifted);
        auto& back = deviations.emplace_back();
        for (const double x : shifted) {
            back.push_back(std::abs(x - centre));
        }
    }
    const Result<OneWayAnova> anova = oneWayAnova(deviations);
    if (!anova) {
        return tl::unexpected(anova.error());
    }
    return VarianceRatio{anova->f, anova->dfBetween, anova->dfWithin, anova->p};
}

Result<Normality> shapiroWilk(std::span<const double> values)
{
    if (values.size() < 3) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewValues);
    }
    if (values.size() > kMostForShapiro) {
        return fail(ErrorKind::Invalid, GroupsReason::TooManyValues, kMostForShapiro);
    }
    if (!allFinite(values)) {
        return fail(ErrorKind::Invalid, GroupsReason::NotFinite);
    }
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    if (sorted.front() == sorted.back()) {
        return fail(ErrorKind::NotEstimable, GroupsReason::NoSpread);
    }
    const double lackOfFit = std::clamp(lackOfFitOf(std::move(sorted)), 0.0, 1.0);
    if (lackOfFit == 0) {
        return Normality{1, 1};
    }
    return Normality{1 - lackOfFit, shapiroP(lackOfFit, values.size())};
}

Result<StrayValue> grubbs(std::span<const double> values)
{
    if (values.size() < 3) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewValues);
    }
    const std::vector<std::vector<double>> one = {{values.begin(), values.end()}};
    const Result<GroupSummary> summary = summarize(values);
    if (!summary) {
        return tl::unexpected(summary.error());
    }
    if (haveNoSpread(one)) {
        return fail(ErrorKind::NotEstimable, GroupsReason::NoSpread);
    }
    StrayValue stray;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double g = std::abs(values[i] - summary->mean) / *summary->sd;
        if (g > stray.g) {
            stray = {i, values[i], g, 1};
        }
    }
    const auto n = static_cast<double>(values.size());
    const double left = (n - 1) * (n - 1) - n * stray.g * stray.g;
    const double t = left > 0 ? stray.g * std::sqrt(n * (n - 2) / left) : kInfiniteDf;
    stray.pTwoSided = std::min(1.0, 2 * n * tUpper(t, n - 2));
    return stray;
}

} // namespace plumule::stats
