#include "core/stats/samples/checks.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;
using plumule::ErrorKind;

namespace {

using Lists = std::vector<std::vector<double>>;

} // namespace

TEST(SpreadChecks, AgreeWithTheAnovaOfDeviations)
{
    const Lists groups = {{1, 2, 6}, {3, 3.5, 4.5, 9}};
    // Deviations from the medians 2 and 4, written out.
    const Lists deviations = {{1, 0, 4}, {1, 0.5, 0.5, 5}};
    EXPECT_NEAR(brownForsythe(groups).value().f, oneWayAnova(deviations).value().f, 1e-13);
}

TEST(SpreadChecks, RefuseDeviationsThatAreAllAlike)
{
    EXPECT_EQ(brownForsythe(Lists{{1, 1}, {2, 2}}).error().kind, ErrorKind::NotEstimable);
}

// For three values W has a closed form: a = 1/sqrt(2), so W = (range)^2 / (2 SS), and
// p = 6/pi (asin sqrt W - asin sqrt 0.75).
TEST(ShapiroWilk, IsExactForThreeValues)
{
    const Normality even = shapiroWilk(std::vector<double>{1, 2, 3}).value();
    EXPECT_NEAR(even.w, 1, 1e-15);
    EXPECT_NEAR(even.p, 1, 1e-7);
    const Normality tied = shapiroWilk(std::vector<double>{1, 1, 2}).value();
    EXPECT_NEAR(tied.w, 0.75, 1e-14);
    EXPECT_NEAR(tied.p, 0, 1e-7);
    // 0, 1, 4: range 4, SS = 26/3, W = 16 / (52/3).
    const Normality skewed = shapiroWilk(std::vector<double>{4, 0, 1}).value();
    EXPECT_NEAR(skewed.w, 48.0 / 52, 1e-14);
    EXPECT_NEAR(skewed.p,
                6 / std::acos(-1.0) *
                    (std::asin(std::sqrt(48.0 / 52)) - std::asin(std::sqrt(0.75))),
                1e-13);
}

// Shapiro and Wilk 1965 weigh eleven men: 148 ... 236 lb, W = 0.79, and Royston's p is about 0.004
// to 0.007 in print. Data and values from memory.
TEST(ShapiroWilk, AgreesWithTheWeightsOfElevenMen)
{
    const std::vector<double> men = {148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236};
    const Normality test = shapiroWilk(men).value();
    EXPECT_NEAR(test.w, 0.79, 0.005);
    EXPECT_GT(test.p, 0.003);
    EXPECT_LT(test.p, 0.01);
}

TEST(ShapiroWilk, DoesNotDependOnPlaceOrUnit)
{
    const std::vector<double> values = {3.1, 2.2, 8.4, 4.4, 5.0, 3.9, 4.1};
    std::vector<double> moved;
    for (const double x : values) {
        moved.push_back(1e6 + 512 * x);
    }
    EXPECT_NEAR(shapiroWilk(moved).value().w, shapiroWilk(values).value().w, 1e-12);
}

TEST(ShapiroWilk, StaysWithinItsBoundsAtEveryCount)
{
    for (std::size_t n = 3; n <= 60; ++n) {
        std::vector<double> normal;
        std::vector<double> skewed;
        for (std::size_t i = 0; i < n; ++i) {
            const double p = (static_cast<double>(i) + 0.5) / static_cast<double>(n);
            normal.push_back(normalQuantile(p));
            skewed.push_back(std::exp(3 * normal.back()));
        }
        const Normality fine = shapiroWilk(normal).value();
        const Normality poor = shapiroWilk(skewed).value();
        EXPECT_LE(fine.w, 1);
        EXPECT_GT(fine.w, 0.97) << n;
        EXPECT_GT(fine.p, 0.9) << n;
        EXPECT_LT(poor.w, fine.w);
        EXPECT_LT(poor.p, n < 5 ? 0.5 : 0.05) << n;
    }
}

TEST(ShapiroWilk, SaysWhyItCannotAnswer)
{
    EXPECT_EQ(shapiroWilk(std::vector<double>{1, 2}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(shapiroWilk(std::vector<double>{2, 2, 2}).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(shapiroWilk(std::vector<double>{1, 2, std::nan("")}).error().kind,
              ErrorKind::Invalid);
    EXPECT_EQ(shapiroWilk(std::vector<double>(5001, 1)).error().kind, ErrorKind::Invalid);
}

TEST(Grubbs, FindsTheFarthestValueOnEitherSide)
{
    const StrayValue low = grubbs(std::vector<double>{9, 10, 11, 10, 2, 10.5}).value();
    EXPECT_EQ(low.index, 4U);
    EXPECT_EQ(low.value, 2);
    EXPECT_LT(low.pTwoSided, 0.05);
}

TEST(Grubbs, GivesItsCriticalValueThatVeryP)
{
    // Build six values whose G is exactly critical by moving one of them.
    // The critical value of six values at 5 %, two-sided, by Grubbs' formula from the t quantile.
    const double t = tQuantile(1 - 0.05 / 12, 4);
    const double critical = 5 / std::sqrt(6.0) * std::sqrt(t * t / (4 + t * t));
    double low = 3;
    double high = 100;
    const std::vector<double> rest = {0, 1, 2, 1.5, 0.5};
    for (int round = 0; round < 200; ++round) {
        const double middle = (low + high) / 2;
        std::vector<double> values = rest;
        values.push_back(middle);
        (grubbs(values).value().g < critical ? low : high) = middle;
    }
    std::vector<double> values = rest;
    values.push_back(low);
    EXPECT_NEAR(grubbs(values).value().pTwoSided, 0.05, 1e-10);
}

TEST(Grubbs, SaysWhyItCannotAnswer)
{
    EXPECT_EQ(grubbs(std::vector<double>{1, 9}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(grubbs(std::vector<double>{4, 4, 4}).error().kind, ErrorKind::NotEstimable);
    // The largest G three values allow is (n-1)/sqrt(n).
    EXPECT_NEAR(grubbs(std::vector<double>{0, 0, 5}).value().g, 2 / std::sqrt(3.0), 1e-14);
    EXPECT_NEAR(grubbs(std::vector<double>{0, 0, 5}).value().pTwoSided, 0, 1e-6);
}
