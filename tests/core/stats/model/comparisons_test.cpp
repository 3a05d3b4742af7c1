#include "core/stats/model/comparisons.h"
#include "core/stats/probability/holm.h"

#include "core/stats/model/linear_model.h"
#include "core/stats/samples/letter_display.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <gtest/gtest.h>

namespace plumule::stats {

namespace {

using reference::granted;
using reference::Table;

LinearModel oneWay(const std::string& file, const std::string& response, const std::string& factor,
                   const std::vector<std::size_t>& dropped = {})
{
    const Table read(file);
    DataTable table;
    EXPECT_TRUE(table.addFactor(factor, read.texts(factor)));
    EXPECT_TRUE(table.addNumbersFromText(response, read.texts(response)));
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (std::find(dropped.begin(), dropped.end(), row + 1) == dropped.end()) {
            rows.push_back(row);
        }
    }
    return granted(LinearModel::fit(table.withRows(rows), {response, {{factor}}, {}}));
}

std::vector<std::pair<std::size_t, std::size_t>> differing(const std::vector<PairComparison>& pairs)
{
    std::vector<std::pair<std::size_t, std::size_t>> result;
    for (const PairComparison& pair : pairs) {
        if (*pair.pTukey < 0.05) {
            result.emplace_back(pair.a, pair.b);
        }
    }
    return result;
}

std::vector<double> valuesOf(const std::vector<MarginalMean>& means)
{
    std::vector<double> values;
    for (const MarginalMean& mean : means) {
        values.push_back(*mean.mean);
    }
    return values;
}

} // namespace

// Sweet potato virus data of the International Potato Center, as in the tutorial of the agricolae
// package: honest significant difference 12.4, letters oo a, ff ab, cc bc, fc c.
TEST(Comparisons, AgreeWithTheSweetPotatoLetters)
{
    const LinearModel fit = oneWay("handbook/stat_data/sweetpotato_crd.csv", "yield", "virus");
    const auto means = granted(marginalMeans(fit, "virus"));
    const auto pairs = granted(allPairs(fit, means));
    EXPECT_NEAR((*pairs[0].upperTukey - *pairs[0].lowerTukey) / 2, 12.400, 0.0005);
    EXPECT_NEAR((*pairs[0].raw.upper - *pairs[0].raw.lower) / 2, 8.929, 0.0005);
    const auto letters = letterDisplay(valuesOf(means), differing(pairs));
    const std::vector<std::string> order{means[0].level, means[1].level, means[2].level,
                                         means[3].level};
    ASSERT_EQ(order, (std::vector<std::string>{"cc", "fc", "ff", "oo"}));
    EXPECT_EQ(letters, (std::vector<std::string>{"bc", "c", "ab", "a"}));
}

// The same without rows 4, 5 and 7: Tukey-Kramer, printed to three digits in the tutorial.
TEST(Comparisons, AgreeWithTheUnbalancedSweetPotato)
{
    const LinearModel fit =
        oneWay("handbook/stat_data/sweetpotato_crd.csv", "yield", "virus", {4, 5, 7});
    const auto means = granted(marginalMeans(fit, "virus"));
    const auto pairs = granted(allPairs(fit, means));
    const std::vector<double> printed{0.3165, 0.2974, 0.0961, 0.0714, 0.0334, 0.8849};
    ASSERT_EQ(pairs.size(), printed.size());
    for (std::size_t i = 0; i < printed.size(); ++i) {
        EXPECT_NEAR(*pairs[i].pTukey, printed[i], 0.00006) << i;
    }
    EXPECT_EQ(pairs[0].a, 1U);
    EXPECT_EQ(pairs[0].b, 0U);
    EXPECT_EQ(means[1].n, 1U);
}

// Dunnett 1955, JASA 50:1096, blood counts of 6, 4 and 5 animals.
TEST(Comparisons, AgreeWithDunnettsBloodCounts)
{
    const LinearModel fit = oneWay("handbook/stat_data/dunnett1955_blood.csv", "y", "group");
    const auto means = granted(marginalMeans(fit, "group"));
    ASSERT_EQ(means[0].level, "control");
    const auto result = granted(againstControl(fit, means, 0));
    EXPECT_NEAR(*result[0].raw.t, 0.857, 0.0005);
    EXPECT_NEAR(*result[1].raw.t, 3.694, 0.0005);
    EXPECT_NEAR(*result[0].pDunnett, 0.6201, 0.00006);
    EXPECT_NEAR(*result[1].pDunnett, 0.0058, 0.00006);
}

TEST(Comparisons, GiveDunnettOfOneContrastItsOwnT)
{
    const LinearModel fit = granted(LinearModel::fit(
        [] {
            DataTable table;
            EXPECT_TRUE(table.addFactor("g", {"a", "a", "a", "b", "b", "b"}));
            EXPECT_TRUE(table.addNumbers("y", {1.0, 2.0, 4.0, 5.0, 4.0, 8.0}));
            return table;
        }(),
        {"y", {{"g"}}, {}}));
    const auto result = granted(againstControl(fit, granted(marginalMeans(fit, "g")), 1));
    EXPECT_EQ(result[0].level, 0U);
    EXPECT_NEAR(*result[0].pDunnett, *result[0].raw.p, 1e-10);
}

TEST(Comparisons, StepDownByHolm)
{
    const auto adjusted = holmAdjusted({0.01, std::nullopt, 0.04, 0.03, 0.5});
    EXPECT_DOUBLE_EQ(*adjusted[0], 0.04);
    EXPECT_FALSE(adjusted[1].has_value());
    EXPECT_DOUBLE_EQ(*adjusted[3], 0.09);
    EXPECT_DOUBLE_EQ(*adjusted[2], 0.09);
    EXPECT_DOUBLE_EQ(*adjusted[4], 0.5);
    EXPECT_DOUBLE_EQ(*holmAdjusted({0.9, 0.8})[0], 1.0);
}

TEST(Comparisons, RefuseWeightsThatAreNoContrast)
{
    const LinearModel fit = oneWay("handbook/stat_data/sweetpotato_crd.csv", "yield", "virus");
    const auto means = granted(marginalMeans(fit, "virus"));
    const auto errorOf = [&](std::vector<double> weights) {
        return meansContrast(fit, means, weights).error();
    };
    EXPECT_TRUE(errorOf({1, 0, 0, 0}).is(ModelReason::ContrastSum));
    EXPECT_TRUE(errorOf({0, 0, 0, 0}).is(ModelReason::ContrastSum));
    EXPECT_TRUE(marginalMeans(fit, "virus", 1).error().is(ModelReason::ConfidenceLevel));
    EXPECT_EQ(marginalMeans(fit, "yield").error(),
              fail(ErrorKind::NotFound, ModelReason::TermUnknown, "yield").value());
    const std::vector<double> thirds{1, -1.0 / 3, -1.0 / 3, -1.0 / 3};
    EXPECT_TRUE(meansContrast(fit, means, thirds));
}

TEST(Comparisons, WidenIntervalsWithTheLevel)
{
    const LinearModel fit = oneWay("handbook/stat_data/sweetpotato_crd.csv", "yield", "virus");
    const auto narrow = granted(marginalMeans(fit, "virus", 0.5));
    const auto wide = granted(marginalMeans(fit, "virus", 0.99));
    EXPECT_LT(*wide[0].lower, *narrow[0].lower);
    const auto half = granted(allPairs(fit, narrow, 0.5))[0];
    const auto most = granted(allPairs(fit, wide, 0.99))[0];
    EXPECT_LT(*most.lowerTukey, *half.lowerTukey);
    EXPECT_DOUBLE_EQ(*most.pTukey, *half.pTukey);
}

// The 90 % interval lies within the margin exactly when the p of both one-sided tests is below 5 %.
TEST(Comparisons, CallMeansEquivalentWhenTheIntervalLiesWithinTheMargin)
{
    const LinearModel fit = oneWay("handbook/stat_data/sweetpotato_crd.csv", "yield", "virus");
    const auto means = granted(marginalMeans(fit, "virus"));
    const std::vector<double> weights{1, 0, -1, 0};
    const ContrastTest test = granted(meansContrast(fit, means, weights, 0.9));
    const double reach = std::max(std::abs(*test.lower), std::abs(*test.upper));
    EXPECT_NEAR(**equivalenceP(test, reach), 0.05, 1e-9);
    EXPECT_LT(**equivalenceP(test, reach + 1), 0.05);
    EXPECT_GT(**equivalenceP(test, reach - 1), 0.05);
    EXPECT_TRUE(equivalenceP(test, 0).error().is(ModelReason::Margin));
}

TEST(LetterDisplay, SharesALetterOnlyWhereMeansDoNotDiffer)
{
    const std::vector<double> falling{3, 2, 1};
    EXPECT_EQ(letterDisplay(falling, {}), (std::vector<std::string>{"a", "a", "a"}));
    EXPECT_EQ(letterDisplay(falling, {{0, 2}}), (std::vector<std::string>{"a", "ab", "b"}));
    EXPECT_EQ(letterDisplay(falling, {{0, 1}, {0, 2}, {1, 2}}),
              (std::vector<std::string>{"a", "b", "c"}));
    EXPECT_TRUE(letterDisplay({}, {}).empty());
}

TEST(LetterDisplay, GivesTheHighestMeanTheFirstLetter)
{
    const std::vector<double> means{1.5, 4, 2};
    EXPECT_EQ(letterDisplay(means, {{0, 1}, {1, 2}}), (std::vector<std::string>{"b", "a", "b"}));
}

TEST(LetterDisplay, HoldsForEveryPatternOfFiveMeans)
{
    for (unsigned pattern = 0; pattern < 1024; ++pattern) {
        std::vector<std::pair<std::size_t, std::size_t>> apart;
        unsigned bit = 0;
        std::vector<std::vector<bool>> differ(5, std::vector<bool>(5));
        for (std::size_t a = 0; a < 5; ++a) {
            for (std::size_t b = a + 1; b < 5; ++b, ++bit) {
                if ((pattern >> bit & 1U) != 0) {
                    apart.emplace_back(a, b);
                    differ[a][b] = true;
                }
            }
        }
        const auto letters = letterDisplay(std::vector<double>{2, 5, 1, 4, 3}, apart);
        for (std::size_t a = 0; a < 5; ++a) {
            ASSERT_FALSE(letters[a].empty()) << pattern;
            for (std::size_t b = a + 1; b < 5; ++b) {
                const bool shared = letters[a].find_first_of(letters[b]) != std::string::npos;
                ASSERT_EQ(shared, !differ[a][b]) << pattern;
            }
        }
    }
}

} // namespace plumule::stats
