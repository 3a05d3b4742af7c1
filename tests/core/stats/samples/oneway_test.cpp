#include "core/stats/samples/oneway.h"

#include "core/stats/probability/distributions.h"
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
    EXPECT_NEAR(100 * std::sqrt(anova.msWithin) / 27.625, 17.167, 5e-4);
}

TEST(OneWay, LosesNothingToLeadingDigits)
{
    const Values small = {{0.5, 0.25, 1.0}, {2.0, 1.5}, {0.75, 3.0}};
    Values large = small;
    for (auto& group : large) {
        for (double& x : group) {
            x += 1099511627776.0; // 2^40: still exact in these eighths
        }
    }
    const OneWayAnova plain = oneWayAnova(small).value();
    const OneWayAnova shifted = oneWayAnova(large).value();
    EXPECT_NEAR(shifted.f / plain.f, 1, 1e-13);
    EXPECT_NEAR(welchAnova(large).value().f / welchAnova(small).value().f, 1, 1e-13);
}

TEST(OneWay, IsTheSquareOfTForTwoGroups)
{
    const Values groups = {{1.2, 3.4, 2.2}, {4.1, 3.9, 6.0, 5.5}};
    const GroupSummary a = summarize(groups[0]).value();
    const GroupSummary b = summarize(groups[1]).value();
    const double difference = b.mean - a.mean;
    const double pooled = (2 * *a.sd * *a.sd + 3 * *b.sd * *b.sd) / 5;
    const double t = difference / std::sqrt(pooled * (1 / 3.0 + 1 / 4.0));
    const OneWayAnova anova = oneWayAnova(groups).value();
    EXPECT_NEAR(anova.f, t * t, 1e-12);
    EXPECT_NEAR(anova.p, tTwoSided(t, 5), 1e-14);
    // Welch's t and Satterthwaite's degrees of freedom.
    const double ofA = *a.sd * *a.sd / 3;
    const double ofB = *b.sd * *b.sd / 4;
    const double own = difference / std::sqrt(ofA + ofB);
    const double df = (ofA + ofB) * (ofA + ofB) / (ofA * ofA / 2 + ofB * ofB / 3);
    const VarianceRatio welch = welchAnova(groups).value();
    EXPECT_NEAR(welch.f, own * own, 1e-12);
    EXPECT_NEAR(welch.df2, df, 1e-11);
    EXPECT_NEAR(welch.p, tTwoSided(own, df), 1e-13);
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
    EXPECT_TRUE(oneWayAnova(Values{}).error().is(GroupsReason::TooFewGroups));
    EXPECT_EQ(oneWayAnova(Values{{1, 2}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(oneWayAnova(Values{{1, 2}, {}}).error().kind, ErrorKind::TooFew);
    EXPECT_TRUE(oneWayAnova(Values{{1}, {2}}).error().is(GroupsReason::TooFewValues));
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
}
