#include "core/stats/samples/oneway.h"

#include "core/stats/samples/two_samples.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;
using plumule::ErrorKind;

namespace {

using Values = std::vector<std::vector<double>>;

Values sweetPotato()
{
    return reference::grouped(reference::Table("handbook/stat_data/sweetpotato_crd.csv"), "yield",
                              "virus")
        .values;
}

} // namespace

// International Potato Center data as printed in a tutorial: MSE 22.49 on 8 df, mean 27.6, CV 17 %,
// F 17.34 with p 0.000733.
TEST(OneWay, AgreesWithTheSweetPotatoTrial)
{
    const Values groups = sweetPotato();
    const OneWayAnova anova = oneWayAnova(groups).value();
    EXPECT_NEAR(anova.f, 17.34, 0.005);
    EXPECT_NEAR(anova.p, 0.000733, 5e-7);
    EXPECT_NEAR(anova.msWithin, 22.49, 0.005);
    EXPECT_EQ(anova.dfWithin, 8);
    const GroupSums sums = sumGroups(groups).value();
    EXPECT_NEAR(sums.grandMean, 27.625, 1e-12);
    EXPECT_NEAR(100 * anova.residualSd / sums.grandMean, 17.167, 5e-4);
}

TEST(OneWay, LosesNothingToLeadingDigits)
{
    const Values small = {{0.5, 0.25, 1.0}, {2.0, 1.5}, {0.75, 3.0}};
    Values large = small;
    for (auto& group : large)
        for (double& x : group)
            x += 1099511627776.0; // 2^40: still exact in these eighths
    const OneWayAnova plain = oneWayAnova(small).value();
    const OneWayAnova shifted = oneWayAnova(large).value();
    EXPECT_NEAR(shifted.f / plain.f, 1, 1e-13);
    EXPECT_NEAR(welchAnova(large).value().f / welchAnova(small).value().f, 1, 1e-13);
}

TEST(OneWay, IsTheSquareOfTForTwoGroups)
{
    const Values groups = {{1.2, 3.4, 2.2}, {4.1, 3.9, 6.0, 5.5}};
    const OneWayAnova anova = oneWayAnova(groups).value();
    const TEstimate pooled = pooledT(groups[1], groups[0]).value();
    EXPECT_NEAR(anova.f, pooled.t * pooled.t, 1e-12);
    EXPECT_NEAR(anova.p, pooled.p, 1e-14);
    const VarianceRatio welch = welchAnova(groups).value();
    const TEstimate own = welchT(groups[1], groups[0]).value();
    EXPECT_NEAR(welch.f, own.t * own.t, 1e-12);
    EXPECT_NEAR(welch.df2, own.df, 1e-11);
    EXPECT_NEAR(welch.p, own.p, 1e-13);
}

TEST(OneWay, TakesASingleValueInAGroupButNotForWelch)
{
    const Values groups = {{1, 2, 4}, {6}};
    EXPECT_EQ(oneWayAnova(groups).value().dfWithin, 2);
    EXPECT_EQ(welchAnova(groups).error().kind, ErrorKind::TooFew);
    EXPECT_FALSE(summarize(groups[1]).value().sd.has_value());
}

TEST(OneWay, SaysWhatIsMissingInsteadOfANumber)
{
    EXPECT_EQ(oneWayAnova(Values{}).error().subject, "groups");
    EXPECT_EQ(oneWayAnova(Values{{1, 2}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(oneWayAnova(Values{{1, 2}, {}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(oneWayAnova(Values{{1}, {2}}).error().subject, "values");
    EXPECT_EQ(oneWayAnova(Values{{0.1, 0.1, 0.1}, {0.3, 0.3}}).error().kind,
              ErrorKind::NotEstimable);
    EXPECT_EQ(oneWayAnova(Values{{1, std::nan("")}, {2, 3}}).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(welchAnova(Values{{1, 1}, {2, 3}}).error().kind, ErrorKind::NotEstimable);
}

TEST(OneWay, HasNothingBetweenLikeMeans)
{
    const OneWayAnova anova = oneWayAnova(Values{{1, 3}, {0, 4}}).value();
    EXPECT_EQ(anova.f, 0);
    EXPECT_EQ(anova.p, 1);
    EXPECT_LT(anova.omega2, 0);
}

TEST(Contrast, NeedsWeightsThatSumToZero)
{
    const Values groups = {{1, 2}, {3, 5}, {4, 4.5}};
    EXPECT_EQ(oneWayContrast(groups, std::vector<double>{1, 0, 0}).error().subject, "weights");
    EXPECT_EQ(oneWayContrast(groups, std::vector<double>{1, -1}).error().subject, "weights");
    EXPECT_EQ(oneWayContrast(groups, std::vector<double>{0, 0, 0}).error().subject, "weights");
    const TEstimate half = oneWayContrast(groups, std::vector<double>{-1, 0.5, 0.5}).value();
    EXPECT_NEAR(half.estimate, (4 + 4.25) / 2 - 1.5, 1e-14);
    EXPECT_NEAR(half.upper - half.estimate, half.estimate - half.lower, 1e-13);
    EXPECT_EQ(oneWayContrast(groups, std::vector<double>{-1, 1, 0}, 1).error().subject, "level");
}

TEST(Ratios, LeaveOutWhatTheControlCannotBear)
{
    // A control not clearly off zero: the ratio stands, its interval does not.
    const auto ratios = ratiosToControl(Values{{-1, 2, 0.5}, {5, 6, 7}}, 0).value();
    ASSERT_EQ(ratios.size(), 1U);
    EXPECT_NEAR(ratios[0].ratio, 12, 1e-12);
    EXPECT_FALSE(ratios[0].lower || ratios[0].upper);
    EXPECT_FALSE(ratios[0].geometric);
    EXPECT_EQ(ratiosToControl(Values{{-1, 1}, {5, 6}}, 0).error().subject, "control");
    EXPECT_EQ(ratiosToControl(Values{{1, 2}, {5, 6}}, 2).error().subject, "control");
}

TEST(Ratios, DoNotDependOnTheUnit)
{
    const Values grams = {{101, 95, 99}, {120, 131, 118}};
    Values ounces = grams;
    for (auto& group : ounces)
        for (double& x : group)
            x /= 28.349523125;
    const RatioToControl a = ratiosToControl(grams, 0).value().front();
    const RatioToControl b = ratiosToControl(ounces, 0).value().front();
    EXPECT_NEAR(*a.lower, *b.lower, 1e-12);
    EXPECT_NEAR(*a.upper, *b.upper, 1e-12);
    EXPECT_NEAR(a.geometric->lower, b.geometric->lower, 1e-12);
}

TEST(TwoSamples, ReportMissingSpreadAndMissingValues)
{
    const std::vector<double> flat = {2, 2, 2};
    const std::vector<double> values = {1, 2, 4};
    const std::vector<double> single = {3};
    EXPECT_EQ(pooledT(flat, flat).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(welchT(flat, flat).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(welchT(values, single).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(pooledT(single, single).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(pooledT(values, single).value().df, 2);
    EXPECT_EQ(pairedT(values, flat).value().df, 2);
    EXPECT_EQ(pairedT(values, values).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(pairedT(values, single).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(varianceRatio(flat, values).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(oneSampleT(std::vector<double>{}, 0).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(pooledT(values, std::vector<double>{}).error().kind, ErrorKind::TooFew);
}

TEST(TwoSamples, CompareOneSampleWithAReference)
{
    // Mean 2, sd 1, n 3: t = (2 - 1) / (1 / sqrt(3)).
    const TEstimate test = oneSampleT(std::vector<double>{1, 2, 3}, 1).value();
    EXPECT_NEAR(test.t, std::sqrt(3.0), 1e-13);
    EXPECT_NEAR(pGreater(test), test.p / 2, 1e-15);
}
