#include "core/stats/model/mixed_model.h"

#include "core/stats/model/comparisons.h"
#include "core/stats/model/linear_model.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace plumule::stats {

namespace {

using reference::granted;
using Square = std::vector<std::vector<double>>;

// Lost plots, two fixed factors, a covariate, and a second grouping crossed with the first.
DataTable trials()
{
    std::vector<std::string> medium;
    std::vector<std::string> trial;
    std::vector<std::string> shelf;
    std::vector<std::optional<double>> seed;
    std::vector<std::optional<double>> y;
    const std::vector<double> ofTrial{6, -4, 1, -7, 5, -1};
    const std::vector<double> ofShelf{2, -3, 1.5};
    for (std::size_t i = 0; i < 36; ++i) {
        const std::size_t m = i % 3;
        const std::size_t t = i / 6;
        const std::size_t s = (i / 2 + t) % 3;
        if (i % 7 == 3 || (t == 2 && m == 1)) {
            continue;
        }
        medium.push_back("M" + std::to_string(m));
        trial.push_back("T" + std::to_string(t));
        shelf.push_back("S" + std::to_string(s));
        seed.emplace_back(20 + static_cast<double>((5 * i) % 7));
        y.emplace_back(150 + 4 * static_cast<double>(m) + ofTrial[t] + ofShelf[s] +
                       0.8 * *seed.back() + 3 * std::sin(static_cast<double>(3 * i * i)));
    }
    DataTable table;
    EXPECT_TRUE(table.addFactor("medium", medium));
    EXPECT_TRUE(table.addFactor("trial", trial));
    EXPECT_TRUE(table.addFactor("shelf", shelf));
    EXPECT_TRUE(table.addNumbers("seed", seed));
    EXPECT_TRUE(table.addNumbers("y", y));
    return table;
}

// Cholesky in place; returns the log of the determinant.
double factor(Square& a)
{
    double log = 0;
    for (std::size_t j = 0; j < a.size(); ++j) {
        for (std::size_t k = 0; k < j; ++k) {
            a[j][j] -= a[j][k] * a[j][k];
        }
        a[j][j] = std::sqrt(a[j][j]);
        log += 2 * std::log(a[j][j]);
        for (std::size_t i = j + 1; i < a.size(); ++i) {
            for (std::size_t k = 0; k < j; ++k) {
                a[i][j] -= a[i][k] * a[j][k];
            }
            a[i][j] /= a[j][j];
        }
    }
    return log;
}

std::vector<double> forward(const Square& lower, std::vector<double> b)
{
    for (std::size_t i = 0; i < b.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            b[i] -= lower[i][k] * b[k];
        }
        b[i] /= lower[i][i];
    }
    return b;
}

double dot(const std::vector<double>& a, const std::vector<double>& b)
{
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        sum += a[i] * b[i];
    }
    return sum;
}

// -2 log restricted likelihood by its definition, log|V| + log|X'V^-1 X| + y'Py + constant, on
// whole matrices.
double criterionByDefinition(const ModelDesign& design, const std::vector<double>& variances,
                             double residual)
{
    const std::size_t n = design.rows();
    const std::size_t p = design.columns();
    Square v(n, std::vector<double>(n, 0.0));
    for (std::size_t i = 0; i < n; ++i) {
        v[i][i] = residual;
        for (std::size_t k = 0; k < variances.size(); ++k) {
            const auto& codes = design.randomFactors()[k].codes;
            for (std::size_t j = 0; j < n; ++j) {
                v[i][j] += codes[i] == codes[j] ? variances[k] : 0;
            }
        }
    }
    double result = factor(v);
    Square columns;
    for (std::size_t c = 0; c < p; ++c) {
        const auto first = design.matrix().begin() + static_cast<std::ptrdiff_t>(c * n);
        std::vector<double> column(first, first + static_cast<std::ptrdiff_t>(n));
        for (double& value : column) {
            value *= design.columnScale(c);
        }
        columns.push_back(forward(v, column));
    }
    const std::vector<double> y = forward(v, design.response());
    Square cross(p, std::vector<double>(p));
    std::vector<double> right(p);
    for (std::size_t a = 0; a < p; ++a) {
        right[a] = dot(columns[a], y);
        for (std::size_t b = 0; b < p; ++b) {
            cross[a][b] = dot(columns[a], columns[b]);
        }
    }
    result += factor(cross);
    const std::vector<double> explained = forward(cross, right);
    return result + dot(y, y) - dot(explained, explained) +
           static_cast<double>(n - p) * std::log(2 * std::numbers::pi);
}

std::vector<double> variancesOf(const MixedModel& fit)
{
    std::vector<double> variances;
    for (const VarianceComponent& component : fit.components()) {
        variances.push_back(component.variance);
    }
    return variances;
}

} // namespace

TEST(MixedModel, ReportsTheCriterionOfItsDefinition)
{
    for (const std::vector<TermColumns>& random :
         {std::vector<TermColumns>{{"trial"}}, std::vector<TermColumns>{{"trial"}, {"shelf"}}}) {
        const MixedModel fit =
            granted(MixedModel::fit(trials(), {"y", {{"medium"}, {"seed"}}, random}));
        EXPECT_NEAR(fit.remlCriterion(),
                    criterionByDefinition(fit.design(), variancesOf(fit), fit.residualVariance()),
                    1e-8);
    }
}

TEST(MixedModel, StandsAtTheLowestCriterion)
{
    const MixedModel fit =
        granted(MixedModel::fit(trials(), {"y", {{"medium"}}, {{"trial"}, {"shelf"}}}));
    ASSERT_FALSE(fit.isSingular());
    const std::vector<double> best = variancesOf(fit);
    for (std::size_t k = 0; k < 3; ++k) {
        double slope = 0;
        for (const double side : {-1.0, 1.0}) {
            std::vector<double> variances = best;
            double residual = fit.residualVariance();
            double& moved = k < 2 ? variances[k] : residual;
            moved *= 1 + side * 1e-3;
            const double there = criterionByDefinition(fit.design(), variances, residual);
            EXPECT_GT(there, fit.remlCriterion());
            slope += side * (there - fit.remlCriterion());
        }
        EXPECT_NEAR(slope / 2e-3, 0, 1e-4);
    }
}

// In a balanced complete block design the blocks drop out of differences: they are those of the
// fixed blocks, with the residual's df.
TEST(MixedModel, LeavesBalancedDifferencesToTheResidual)
{
    DataTable table;
    std::vector<std::string> medium;
    std::vector<std::string> block;
    std::vector<std::optional<double>> y;
    for (std::size_t i = 0; i < 20; ++i) {
        medium.push_back("M" + std::to_string(i % 4));
        block.push_back("B" + std::to_string(i / 4));
        y.emplace_back(10.0 * static_cast<double>((i / 4) % 3) + static_cast<double>(i % 4) +
                       std::sin(static_cast<double>(i * i)));
    }
    ASSERT_TRUE(table.addFactor("medium", medium));
    ASSERT_TRUE(table.addFactor("block", block));
    ASSERT_TRUE(table.addNumbers("y", y));
    const LinearModel fixed = granted(LinearModel::fit(table, {"y", {{"medium"}, {"block"}}, {}}));
    const MixedModel fit = granted(MixedModel::fit(table, {"y", {{"medium"}}, {{"block"}}}));
    EXPECT_NEAR(fit.residualVariance(), fixed.residualSs() / fixed.residualDf(), 1e-10);
    const auto estimator = fit.estimator();
    const auto pair =
        granted(allPairs(*estimator, granted(marginalMeans(*estimator, "medium"))))[2];
    const auto same = granted(allPairs(fixed, granted(marginalMeans(fixed, "medium"))))[2];
    EXPECT_NEAR(*pair.raw.estimate, *same.raw.estimate, 1e-10);
    EXPECT_NEAR(*pair.raw.se, *same.raw.se, 1e-10);
    EXPECT_NEAR(*pair.raw.df, 12, 1e-8);
    const FTest test = granted(fit.termTest("medium"));
    EXPECT_NEAR(test.f, *fixed.anova(SumOfSquares::TypeII)[0].f, 1e-8);
    EXPECT_NEAR(test.df2, 12, 1e-7);
}

TEST(MixedModel, BecomesTheLinearModelWhereTheGroupsDoNotDiffer)
{
    DataTable table;
    ASSERT_TRUE(table.addFactor("medium", {"a", "b", "a", "b", "a", "b", "a", "b"}));
    ASSERT_TRUE(table.addFactor("trial", {"1", "1", "1", "1", "2", "2", "2", "2"}));
    ASSERT_TRUE(table.addNumbers("y", {10.0, 13.0, 14.0, 19.0, 11.0, 12.5, 13.0, 19.5}));
    const MixedModel fit = granted(MixedModel::fit(table, {"y", {{"medium"}}, {{"trial"}}}));
    EXPECT_TRUE(fit.isSingular());
    EXPECT_EQ(fit.components()[0].variance, 0);
    EXPECT_EQ(fit.predictedEffects(0)[1].value, 0);
    const LinearModel plain = granted(LinearModel::fit(table, {"y", {{"medium"}}, {}}));
    const auto estimator = fit.estimator();
    const auto means = granted(marginalMeans(*estimator, "medium"));
    const auto same = granted(marginalMeans(plain, "medium"));
    EXPECT_NEAR(*means[1].mean, *same[1].mean, 1e-12);
    EXPECT_NEAR(*means[1].se, *same[1].se, 1e-12);
    EXPECT_NEAR(*means[1].df, 6, 1e-9);
}

// D was grown in a trial of its own: with fixed trials it cannot be compared, with random ones it
// can, at the price of the trials' variance.
TEST(MixedModel, ComparesAcrossRandomTrialsWhatFixedTrialsCannot)
{
    const reference::Table file("sim_confounded_a.csv");
    DataTable table;
    ASSERT_TRUE(table.addFactor("medium", file.texts("medium")));
    ASSERT_TRUE(table.addFactor("trial", file.texts("trial")));
    ASSERT_TRUE(table.addNumbersFromText("y", file.texts("yield_g")));
    const MixedModel fit = granted(MixedModel::fit(table, {"y", {{"medium"}}, {{"trial"}}}));
    const auto estimator = fit.estimator();
    for (const MarginalMean& mean : granted(marginalMeans(*estimator, "medium"))) {
        EXPECT_TRUE(mean.estimable);
    }
}

// A fixed term confounded with another: what is left of it is tested, the rest named.
TEST(MixedModel, KeepsToWhatIsEstimable)
{
    const DataTable base = trials();
    DataTable table = base;
    std::vector<std::string> batch;
    for (const auto& code : base.factor("medium")->codes) {
        batch.push_back(*code == 2 ? "late" : "early");
    }
    ASSERT_TRUE(table.addFactor("batch", batch));
    const MixedModel fit =
        granted(MixedModel::fit(table, {"y", {{"medium"}, {"batch"}, {"seed"}}, {{"trial"}}}));
    const MixedModel without =
        granted(MixedModel::fit(base, {"y", {{"medium"}, {"seed"}}, {{"trial"}}}));
    EXPECT_NEAR(fit.residualVariance(), without.residualVariance(), 1e-9);
    const auto estimator = fit.estimator();
    const auto same = without.estimator();
    const auto pairs = granted(allPairs(*estimator, granted(marginalMeans(*estimator, "medium"))));
    const auto clean = granted(allPairs(*same, granted(marginalMeans(*same, "medium"))));
    EXPECT_TRUE(pairs[0].raw.estimable);
    EXPECT_FALSE(pairs[1].raw.estimable);
    EXPECT_NEAR(*pairs[0].raw.se, *clean[0].raw.se, 1e-9);
    EXPECT_NEAR(*pairs[0].raw.df, *clean[0].raw.df, 1e-6);
    EXPECT_EQ(granted(fit.termTest("medium")).df1, 1);
    EXPECT_EQ(fit.termTest("batch").error(),
              fail(ErrorKind::NotEstimable, ModelReason::Inseparable, "batch").value());
    EXPECT_EQ(fit.termTest("x").error().kind, ErrorKind::NotFound);
}

TEST(MixedModel, RefusesAVarianceThatCannotBeTold)
{
    DataTable table = trials();
    std::vector<std::string> own;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        own.push_back(std::to_string(row));
    }
    ASSERT_TRUE(table.addFactor("own", own));
    const auto errorOf = [&](const ModelDescription& model) {
        return MixedModel::fit(table, model).error();
    };
    EXPECT_EQ(errorOf({"y", {{"medium"}}, {{"own"}}}),
              fail(ErrorKind::NotEstimable, ModelReason::Inseparable, "own").value());
    EXPECT_EQ(errorOf({"y", {{"trial"}}, {{"trial"}}}),
              fail(ErrorKind::NotEstimable, ModelReason::Inseparable, "trial").value());
    EXPECT_EQ(errorOf({"y", {{"medium"}}, {{"trial"}, {"trial"}}}).values.at(0), "trial");
    EXPECT_EQ(errorOf({"y", {{"medium"}}, {}}),
              fail(ErrorKind::Missing, ModelReason::RandomMissing).value());
}

TEST(MixedModel, RefusesAResponseWithoutSpread)
{
    DataTable table = trials();
    ASSERT_TRUE(table.addNumbers("flat", std::vector<std::optional<double>>(table.rows(), 3.3)));
    EXPECT_EQ(MixedModel::fit(table, {"flat", {{"medium"}}, {{"trial"}}}).error(),
              fail(ErrorKind::NotEstimable, ModelReason::NoSpread).value());
}

TEST(MixedModel, LeavesResidualsThatSumToNothing)
{
    const MixedModel fit = granted(MixedModel::fit(trials(), {"y", {{"medium"}}, {{"trial"}}}));
    double sum = 0;
    for (const double residual : fit.residuals()) {
        sum += residual;
    }
    EXPECT_NEAR(sum, 0, 1e-8);
    double effects = 0;
    for (const RandomEffect& effect : fit.predictedEffects(0)) {
        effects += effect.value;
    }
    EXPECT_NEAR(effects, 0, 1e-8);
}

} // namespace plumule::stats
