#include "core/stats/model/linear_model.h"

#include "core/stats/model/comparisons.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {

namespace {

using reference::granted;
using reference::Table;

DataTable fromFile(const std::string& file, const std::vector<std::string>& factors,
                   const std::vector<std::string>& numbers)
{
    const Table read(file);
    DataTable table;
    for (const std::string& name : factors) {
        EXPECT_TRUE(table.addFactor(name, read.texts(name)));
    }
    for (const std::string& name : numbers) {
        EXPECT_TRUE(table.addNumbersFromText(name, read.texts(name)));
    }
    return table;
}

const AnovaRow& rowOf(const std::vector<AnovaRow>& rows, const std::string& term)
{
    for (const AnovaRow& row : rows) {
        if (row.term == term) {
            return row;
        }
    }
    throw std::runtime_error("no term " + term);
}

LinearModel fitOf(const DataTable& table, std::vector<TermColumns> terms)
{
    return granted(LinearModel::fit(table, {"y", std::move(terms), {}}));
}

std::vector<double> lastColumn(const LinearModel& fit)
{
    std::vector<double> weights(fit.design().columns(), 0.0);
    weights.back() = 1;
    return weights;
}

// The slope of the last covariate in its own units.
double slopeOf(const LinearModel& fit)
{
    return fit.estimate(lastColumn(fit)).value /
           fit.design().columnScale(fit.design().columns() - 1);
}

// Two factors and a covariate, nothing balanced, one cell empty when wanted.
DataTable unbalanced(bool emptyCell)
{
    std::vector<std::string> a;
    std::vector<std::string> b;
    std::vector<std::optional<double>> c;
    std::vector<std::optional<double>> y;
    for (std::size_t i = 0; i < 29; ++i) {
        const std::size_t p = i % 3;
        const std::size_t q = (i * i + i / 4) % 3;
        if (emptyCell && p == 2 && q == 1) {
            continue;
        }
        a.push_back(std::string(1, static_cast<char>('a' + p)));
        b.push_back(std::string(1, static_cast<char>('p' + q)));
        c.emplace_back(2000 + static_cast<double>((7 * i) % 11));
        y.emplace_back(100 + 3 * static_cast<double>(p) - 2 * static_cast<double>(q * p) +
                       0.4 * *c.back() + std::sin(static_cast<double>(i * i)));
    }
    DataTable table;
    EXPECT_TRUE(table.addFactor("a", a));
    EXPECT_TRUE(table.addFactor("b", b));
    EXPECT_TRUE(table.addNumbers("c", c));
    EXPECT_TRUE(table.addNumbers("y", y));
    return table;
}

} // namespace

// Gomez & Gomez 1984, Statistical Procedures for Agricultural Research, p. 26: rice seeding rates,
// six rates in four blocks. Data read in a published copy; the printed F and CV from memory, the
// rest computed from the data by other means.
TEST(LinearModel, AgreesWithTheRiceSeedingRateBlocks)
{
    const DataTable table =
        fromFile("handbook/stat_data/gomez_seedrate_rcbd.csv", {"rate", "rep"}, {"yield"});
    const LinearModel fit = granted(LinearModel::fit(table, {"yield", {{"rep"}, {"rate"}}, {}}));
    const auto rows = fit.anova(SumOfSquares::TypeI);
    EXPECT_NEAR(*rows[0].ss, 1944361, 0.5);
    EXPECT_NEAR(*rows[0].f, 5.862, 0.0005);
    EXPECT_NEAR(*rows[1].ss, 1198331, 0.5);
    EXPECT_NEAR(*rows[1].f, 2.168, 0.0005);
    EXPECT_NEAR(*rows[1].p, 0.1128, 0.00005);
    EXPECT_NEAR(fit.residualSs() / fit.residualDf(), 110558, 0.5);

    const auto means = granted(marginalMeans(fit, "rate"));
    double grand = 0;
    for (const MarginalMean& mean : means) {
        grand += *mean.mean / 6;
    }
    EXPECT_NEAR(100 * fit.residualSd() / grand, 6.704, 0.0005);
    const auto pairs = granted(allPairs(fit, means));
    EXPECT_NEAR((*pairs[0].raw.upper - *pairs[0].raw.lower) / 2, 501.1, 0.05);
    EXPECT_NEAR((*pairs[0].upperTukey - *pairs[0].lowerTukey) / 2, 763.9, 0.05);
}

// Pearce 1953, apple trees: the crop before (boxes) as a covariate of the crop after (lb). Data and
// the slope read, the rest computed from the data by other means.
TEST(LinearModel, AgreesWithTheAppleCovariance)
{
    const DataTable table =
        fromFile("handbook/stat_data/pearce_apple_ancova.csv", {"block", "trt"}, {"prev", "yield"});
    const LinearModel without =
        granted(LinearModel::fit(table, {"yield", {{"block"}, {"trt"}}, {}}));
    EXPECT_NEAR(*rowOf(without.anova(SumOfSquares::TypeII), "trt").f, 0.096, 0.0005);
    EXPECT_NEAR(without.residualSs() / without.residualDf(), 1562, 0.5);

    const LinearModel with =
        granted(LinearModel::fit(table, {"yield", {{"block"}, {"trt"}, {"prev"}}, {}}));
    const AnovaRow treatment = rowOf(with.anova(SumOfSquares::TypeII), "trt");
    EXPECT_NEAR(*treatment.f, 3.137, 0.0005);
    EXPECT_NEAR(*treatment.p, 0.0417, 0.00005);
    EXPECT_NEAR(with.residualSs() / with.residualDf(), 278, 0.5);
    EXPECT_NEAR(slopeOf(with), 28.401, 0.0005);
}

// NIST StRD one-way sets: the same F by the general model.
TEST(LinearModel, KeepsTheDigitsOfTheNistSets)
{
    int sets = 0;
    for (const auto& testCase : reference::references().at("cases")) {
        if (testCase.at("kind") != "one-way ANOVA, NIST StRD certified") {
            continue;
        }
        ++sets;
        const auto& data = testCase.at("data");
        const Table read(data.at("file").get<std::string>());
        const std::string response = data.at("response");
        const std::string factor = data.value("factor", data.value("group", ""));
        DataTable table;
        ASSERT_TRUE(table.addNumbersFromText(response, read.texts(response)));
        ASSERT_TRUE(table.addFactor(factor, read.texts(factor)));
        const LinearModel fit = granted(LinearModel::fit(table, {response, {{factor}}, {}}));
        const double exact = testCase.at("expected").at("exact_on_double_rounded_data").at("F");
        EXPECT_NEAR(*fit.anova(SumOfSquares::TypeI)[0].f / exact, 1, 1e-9) << testCase.at("id");
    }
    EXPECT_EQ(sets, 6);
}

// Each sum of squares is the difference of two residual sums of squares, fitted apart.
TEST(LinearModel, TakesTypeTwoAfterAllThatDoNotContainTheTerm)
{
    const DataTable table = unbalanced(false);
    const auto rest = [&](std::vector<TermColumns> terms) {
        return fitOf(table, std::move(terms)).residualSs();
    };
    const LinearModel fit = fitOf(table, {{"a"}, {"c"}, {"b"}, {"a", "b"}});
    const auto rows = fit.anova(SumOfSquares::TypeII);
    EXPECT_NEAR(*rowOf(rows, "a").ss, rest({{"b"}, {"c"}}) - rest({{"a"}, {"b"}, {"c"}}), 1e-8);
    EXPECT_NEAR(*rowOf(rows, "b").ss, rest({{"a"}, {"c"}}) - rest({{"a"}, {"b"}, {"c"}}), 1e-8);
    EXPECT_NEAR(*rowOf(rows, "a:b").ss, rest({{"a"}, {"b"}, {"c"}}) - fit.residualSs(), 1e-8);
    EXPECT_NEAR(*rowOf(rows, "c").ss, rest({{"a"}, {"b"}, {"a", "b"}}) - fit.residualSs(), 1e-8);
    EXPECT_EQ(rowOf(rows, "a:b").df, 4);
}

TEST(LinearModel, TakesTypeOneInTheOrderGiven)
{
    const DataTable table = unbalanced(false);
    const auto rows = fitOf(table, {{"c"}, {"b"}, {"a"}}).anova(SumOfSquares::TypeI);
    const double c = fitOf(table, {{"c"}}).residualSs();
    const double cb = fitOf(table, {{"c"}, {"b"}}).residualSs();
    EXPECT_EQ(rows[1].term, "b");
    EXPECT_NEAR(*rows[1].ss, c - cb, 1e-8);
}

// With the interaction in, type III of a main effect is the test that its marginal means, equally
// weighted, are alike: for two levels the square of that contrast's t.
TEST(LinearModel, TestsEqualMarginalMeansByTypeThree)
{
    const DataTable whole = unbalanced(false);
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < whole.rows(); ++row) {
        if (whole.factor("a")->codes[row] != 2U) {
            rows.push_back(row);
        }
    }
    const LinearModel fit = fitOf(whole.withRows(rows), {{"a"}, {"b"}, {"a", "b"}});
    const auto means = granted(marginalMeans(fit, "a"));
    const auto pairs = granted(allPairs(fit, means));
    const double t = *pairs[0].raw.t;
    EXPECT_NEAR(*rowOf(fit.anova(SumOfSquares::TypeIII), "a").f, t * t, 1e-9 * t * t);
    EXPECT_GT(std::abs(*rowOf(fit.anova(SumOfSquares::TypeII), "a").f - t * t), 1e-3);
}

TEST(LinearModel, GivesNoMeanWhereACellOfTheInteractionIsEmpty)
{
    const LinearModel fit = fitOf(unbalanced(true), {{"a"}, {"b"}, {"a", "b"}});
    EXPECT_EQ(fit.design().columns(), 9U);
    EXPECT_EQ(fit.residualDf(), static_cast<double>(fit.design().rows()) - 8);
    const auto means = granted(marginalMeans(fit, "a"));
    EXPECT_TRUE(means[0].estimable);
    EXPECT_TRUE(means[1].estimable);
    EXPECT_FALSE(means[2].estimable);
    EXPECT_FALSE(means[2].mean.has_value());
    const auto pairs = granted(allPairs(fit, means));
    EXPECT_TRUE(pairs[0].raw.estimable);
    EXPECT_FALSE(pairs[1].pTukey.has_value());
    EXPECT_EQ(rowOf(fit.anova(SumOfSquares::TypeIII), "a:b").df, 3);
}

// Units and far-off zero points of a covariate change nothing but its own coefficient.
TEST(LinearModel, DoesNotHangOnTheUnitsOfACovariate)
{
    const DataTable table = unbalanced(false);
    DataTable other;
    std::vector<std::string> a;
    for (const auto& code : table.factor("a")->codes) {
        a.push_back(table.factor("a")->levels[*code]);
    }
    std::vector<std::optional<double>> c;
    for (const auto& value : table.numbers("c")->values) {
        c.emplace_back(1e-9 * *value + 3);
    }
    ASSERT_TRUE(other.addFactor("a", a));
    ASSERT_TRUE(other.addNumbers("c", c));
    ASSERT_TRUE(other.addNumbers("y", table.numbers("y")->values));
    const LinearModel one = fitOf(table, {{"a"}, {"c"}});
    const LinearModel two = fitOf(other, {{"a"}, {"c"}});
    EXPECT_EQ(two.residualDf(), static_cast<double>(two.design().rows()) - 4);
    EXPECT_NEAR(one.residualSd(), two.residualSd(), 1e-6);
    EXPECT_NEAR(*granted(marginalMeans(one, "a"))[0].mean,
                *granted(marginalMeans(two, "a"))[0].mean, 1e-6);
    EXPECT_NEAR(slopeOf(one) * 1e9, slopeOf(two), 1e4);
    EXPECT_NEAR(one.influence().front().fitted, two.influence().front().fitted, 1e-6);
}

TEST(LinearModel, NamesACovariateThatDoesNotVary)
{
    DataTable table = unbalanced(false);
    ASSERT_TRUE(
        table.addNumbers("constant", std::vector<std::optional<double>>(table.rows(), 0.1)));
    const LinearModel fit = fitOf(table, {{"a"}, {"constant"}});
    EXPECT_EQ(fit.residualDf(), static_cast<double>(fit.design().rows()) - 3);
    EXPECT_FALSE(fit.isEstimable(lastColumn(fit)));
    const AnovaRow row = rowOf(fit.anova(SumOfSquares::TypeIII), "constant");
    EXPECT_EQ(row.df, 0);
    EXPECT_FALSE(row.p.has_value());
    EXPECT_TRUE(granted(marginalMeans(fit, "a"))[1].estimable);
}

// The definition: the deleted residual over the spread of the fit without the row.
TEST(LinearModel, StudentizesByAFitWithoutTheRow)
{
    const DataTable table = unbalanced(false);
    const LinearModel whole = fitOf(table, {{"a"}, {"c"}});
    std::vector<std::size_t> others;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (row != 5) {
            others.push_back(row);
        }
    }
    const LinearModel without = fitOf(table.withRows(others), {{"a"}, {"c"}});
    const Influence row = whole.influence()[5];
    const double spread = without.residualSd() * std::sqrt(1 - row.leverage);
    EXPECT_NEAR(*row.external, row.residual / spread, 1e-9);
    EXPECT_NEAR(*row.internal, row.residual / (whole.residualSd() * std::sqrt(1 - row.leverage)),
                1e-12);
    double trace = 0;
    for (const Influence& one : whole.influence()) {
        trace += one.leverage;
    }
    EXPECT_NEAR(trace, 4, 1e-10);
}

TEST(LinearModel, SaysWhenNoSpreadIsLeft)
{
    DataTable table;
    ASSERT_TRUE(table.addFactor("a", {"x", "x", "y", "y"}));
    ASSERT_TRUE(table.addNumbers("y", {1.1, 1.1, 2.3, 2.3}));
    const LinearModel fit = fitOf(table, {{"a"}});
    EXPECT_TRUE(fit.isPerfect());
    EXPECT_FALSE(fit.anova(SumOfSquares::TypeI)[0].f.has_value());
    const auto pair = granted(allPairs(fit, granted(marginalMeans(fit, "a"))))[0];
    EXPECT_NEAR(*pair.raw.estimate, 1.2, 1e-12);
    EXPECT_FALSE(pair.raw.p.has_value());
    EXPECT_FALSE(pair.pTukey.has_value());
    EXPECT_FALSE(fit.influence()[0].external.has_value());
}

TEST(LinearModel, RefusesAModelWithoutRowsForTheSpread)
{
    DataTable table;
    ASSERT_TRUE(table.addFactor("a", {"x", "y"}));
    ASSERT_TRUE(table.addNumbers("y", {1.0, 2.0}));
    EXPECT_EQ(LinearModel::fit(table, {"y", {{"a"}}, {}}).error(),
              fail(ErrorKind::TooFew, ModelReason::NoRowsToRest).value());
}

TEST(LinearModel, HasNoShareExplainedOfAConstantResponse)
{
    DataTable table;
    ASSERT_TRUE(table.addFactor("a", {"x", "x", "y", "y"}));
    ASSERT_TRUE(table.addNumbers("y", {7.0, 7.0, 7.0, 7.0}));
    EXPECT_FALSE(fitOf(table, {{"a"}}).rSquared().has_value());
}

} // namespace plumule::stats
