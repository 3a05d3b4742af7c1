#include "core/stats/samples/bootstrap.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

namespace {

// Invented trays: cost in money, yield in grams.
const std::vector<double> kCost = {2.1, 2.4, 2.0, 2.6, 2.2, 2.3, 2.5, 2.1, 2.2, 2.7};
const std::vector<double> kGrams = {210, 250, 190, 265, 240, 205, 230, 220, 185, 260};

double meanOfRows(const std::vector<double>& values, std::span<const std::size_t> rows)
{
    double sum = 0;
    for (const std::size_t row : rows) {
        sum += values[row];
    }
    return sum / static_cast<double>(rows.size());
}

} // namespace

TEST(SteadyDraw, IsTheSameOnEveryMachine)
{
    // The standard fixes the 10,000th output of the default generator.
    std::mt19937_64 generator;
    generator.discard(9999);
    EXPECT_EQ(generator(), 9981545732273789042ULL);
    SteadyDraw one(5);
    SteadyDraw other(5);
    for (int i = 0; i < 100; ++i) {
        EXPECT_EQ(one.below(7), other.below(7));
    }
}

TEST(SteadyDraw, GivesEveryNumberItsShare)
{
    SteadyDraw draw(1);
    std::vector<int> counts(6);
    for (int i = 0; i < 60000; ++i) {
        ++counts.at(draw.below(6));
    }
    double chiSquare = 0;
    for (const int count : counts) {
        chiSquare += (count - 10000.0) * (count - 10000.0) / 10000.0;
    }
    // 99.9 % point of χ² with 5 degrees of freedom.
    EXPECT_LT(chiSquare, 20.5);
    EXPECT_EQ(draw.below(1), 0U);
}

TEST(Bootstrap, GivesTheSameIntervalForTheSameSeed)
{
    const auto one = bootstrapRatio(kCost, kGrams);
    const auto other = bootstrapRatio(kCost, kGrams);
    BootstrapPlan plan;
    plan.seed = 9;
    const auto seeded = bootstrapRatio(kCost, kGrams, plan);
    ASSERT_TRUE(one && other && seeded);
    EXPECT_EQ(one->lower, other->lower);
    EXPECT_EQ(one->upper, other->upper);
    EXPECT_NE(one->lower, seeded->lower);
    EXPECT_NEAR(one->lower, seeded->lower, 0.1 * one->se);
}

TEST(Bootstrap, HoldsTheRatioOfSumsNotTheMeanOfRatios)
{
    const auto result = bootstrapRatio(kCost, kGrams);
    ASSERT_TRUE(result);
    double cost = 0;
    double grams = 0;
    for (std::size_t i = 0; i < kCost.size(); ++i) {
        cost += kCost[i];
        grams += kGrams[i];
    }
    EXPECT_NEAR(result->estimate, cost / grams, 1e-15);
    EXPECT_LT(result->lower, result->estimate);
    EXPECT_GT(result->upper, result->estimate);
}

TEST(Bootstrap, ComesNearTheTIntervalOfAMean)
{
    std::vector<double> values;
    for (int i = 0; i < 60; ++i) {
        values.push_back(std::fmod(i * 37.0, 61.0));
    }
    const auto result = bootstrapInterval(
        values.size(), [&](std::span<const std::size_t> rows) { return meanOfRows(values, rows); });
    ASSERT_TRUE(result);
    double squares = 0;
    for (const double value : values) {
        squares += (value - result->estimate) * (value - result->estimate);
    }
    const double se = std::sqrt(squares / 59 / 60);
    EXPECT_NEAR(result->se, se, 0.05 * se);
    EXPECT_NEAR(result->upper - result->estimate, 1.98 * se, 0.15 * se);
}

TEST(Bootstrap, AcceleratesByTheSkewnessOfTheMean)
{
    // For a mean the acceleration is the skewness over 6·sqrt(n) (Efron 1987).
    const std::vector<double> skewed = {1, 1, 1, 2, 2, 3, 5, 9, 17, 30};
    const auto result = bootstrapInterval(
        skewed.size(), [&](std::span<const std::size_t> rows) { return meanOfRows(skewed, rows); });
    ASSERT_TRUE(result);
    double squares = 0;
    double cubes = 0;
    for (const double value : skewed) {
        squares += std::pow(value - 7.1, 2);
        cubes += std::pow(value - 7.1, 3);
    }
    EXPECT_NEAR(result->acceleration, cubes / (6 * std::pow(squares, 1.5)), 1e-12);
    EXPECT_GT(result->acceleration, 0);
    EXPECT_GT(result->upper - result->estimate, result->estimate - result->lower);
}

TEST(Bootstrap, KeepsEachGroupItsSize)
{
    BootstrapPlan plan;
    plan.resamples = 200;
    plan.groups = {0, 0, 0, 0, 1, 1, 1, 1, 1, 1};
    bool kept = true;
    const auto difference = bootstrapInterval(
        10,
        [&](std::span<const std::size_t> rows) {
            double a = 0;
            double b = 0;
            double inA = 0;
            for (const std::size_t row : rows) {
                (row < 4 ? a : b) += kGrams[row];
                inA += row < 4 ? 1 : 0;
            }
            kept = kept && (rows.size() < 10 || inA == 4);
            return b / (static_cast<double>(rows.size()) - inA) - a / inA;
        },
        plan);
    ASSERT_TRUE(difference);
    EXPECT_TRUE(kept);
}

TEST(Bootstrap, IsAPointWhereAllRowsAreAlike)
{
    const std::vector<double> same(5, 2.0);
    const auto result = bootstrapRatio(same, same);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->lower, 1);
    EXPECT_EQ(result->upper, 1);
    EXPECT_EQ(result->acceleration, 0);
}

TEST(Bootstrap, RefusesTooFewRowsAndSumsOfNothing)
{
    const std::vector<double> two = {1, 2};
    const std::vector<double> three = {1, 2, 3};
    const std::vector<double> mostlyNothing = {0, 0, 3};
    EXPECT_EQ(bootstrapRatio(two, two).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(bootstrapRatio(two, three).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(bootstrapRatio(three, mostlyNothing).error().kind, ErrorKind::NotEstimable);
    BootstrapPlan plan;
    plan.groups = {0, 0, 1};
    EXPECT_EQ(bootstrapRatio(three, three, plan).error().kind, ErrorKind::TooFew);
    plan.groups = {0};
    EXPECT_EQ(bootstrapRatio(three, three, plan).error().kind, ErrorKind::Invalid);
    plan.groups.clear();
    plan.level = 1;
    EXPECT_EQ(bootstrapRatio(three, three, plan).error().kind, ErrorKind::Invalid);
}

TEST(Bootstrap, StopsWhenAsked)
{
    std::stop_source source;
    BootstrapPlan plan;
    std::vector<double> told;
    plan.progress = Progress(
        [&](double fraction) {
            told.push_back(fraction);
            if (fraction >= 0.3) {
                source.request_stop();
            }
        },
        source.get_token());
    const auto stopped = bootstrapRatio(kCost, kGrams, plan);
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
    EXPECT_GT(told.size(), 20U);
    EXPECT_LT(told.back(), 0.35);
}

// The sd of the mean of n draws with replacement is √(Σ(x − x̄)²) / n (Efron and Tibshirani 1993,
// ch. 6).
TEST(ResampledSums, SpreadAsMeansOfDrawsDo)
{
    SteadyDraw draw(7);
    const auto sums = resampledSums(std::vector{kGrams, kCost}, 20000, draw).value();
    ASSERT_EQ(sums.size(), 20000U);
    const double n = static_cast<double>(kGrams.size());
    double mean = 0;
    double squares = 0;
    for (const double value : kGrams) {
        mean += value / n;
    }
    for (const double value : kGrams) {
        squares += (value - mean) * (value - mean);
    }
    double drawnMean = 0;
    double drawnSquares = 0;
    for (const auto& row : sums) {
        drawnMean += row[0] / n / 20000;
    }
    for (const auto& row : sums) {
        drawnSquares += (row[0] / n - drawnMean) * (row[0] / n - drawnMean) / 20000;
    }
    const double se = std::sqrt(squares) / n;
    EXPECT_NEAR(drawnMean, mean, 4 * se / std::sqrt(20000));
    EXPECT_NEAR(std::sqrt(drawnSquares), se, 0.03 * se);
}

TEST(ResampledSums, DrawWholeRows)
{
    SteadyDraw draw(7);
    const std::vector<double> ones(kGrams.size(), 1);
    std::vector<double> twice = kGrams;
    for (double& value : twice) {
        value *= 2;
    }
    const auto sums = resampledSums(std::vector{kGrams, twice, ones}, 100, draw).value();
    for (const auto& row : sums) {
        EXPECT_NEAR(row[1], 2 * row[0], 1e-9);
        EXPECT_DOUBLE_EQ(row[2], static_cast<double>(kGrams.size()));
    }
    EXPECT_EQ(resampledSums(std::vector{kGrams, {1, 2}}, 100, draw).error().kind,
              ErrorKind::Invalid);
    EXPECT_EQ(resampledSums({}, 100, draw).error().kind, ErrorKind::TooFew);
}

// R's quantile() of 1, 2, 4, 8 by its rule 7: 1.75, 3 and 5 at the quartiles.
TEST(QuantileOfSorted, LiesBetweenOrderStatistics)
{
    const std::vector<double> sorted = {1, 2, 4, 8};
    EXPECT_DOUBLE_EQ(quantileOfSorted(sorted, 0.25), 1.75);
    EXPECT_DOUBLE_EQ(quantileOfSorted(sorted, 0.5), 3);
    EXPECT_DOUBLE_EQ(quantileOfSorted(sorted, 0.75), 5);
    EXPECT_DOUBLE_EQ(quantileOfSorted(sorted, 0), 1);
    EXPECT_DOUBLE_EQ(quantileOfSorted(sorted, 1), 8);
}
