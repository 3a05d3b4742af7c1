#include "core/stats/samples/samples.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <random>

namespace plumule::stats {
namespace {

// As NIST StRD makes its univariate sets NumAcc3 and NumAcc4: one value, then one a tenth below and
// one a tenth above by turns, 1001 in all.
std::vector<double> nistAlternating(double middle)
{
    std::vector<double> values{middle};
    for (int i = 0; i < 500; ++i) {
        values.push_back(middle - 0.1);
        values.push_back(middle + 0.1);
    }
    return values;
}

// NIST Statistical Reference Datasets, univariate: certified mean and standard deviation.
TEST(Summarize, AgreesWithTheCertifiedHardCases)
{
    const auto first = summarize(std::vector<double>{10000001, 10000003, 10000002}).value();
    EXPECT_EQ(first.mean, 10000002);
    EXPECT_NEAR(*first.sd, 1, 1e-15);

    const auto third = summarize(nistAlternating(1000000.2)).value();
    EXPECT_EQ(third.n, 1001U);
    EXPECT_NEAR(third.mean, 1000000.2, 1e-9);
    EXPECT_NEAR(*third.sd, 0.1, 1e-10);

    const auto fourth = summarize(nistAlternating(10000000.2)).value();
    EXPECT_NEAR(fourth.mean, 10000000.2, 1e-8);
    // The decimals themselves are kept to 1e-9 in a double of that size.
    EXPECT_NEAR(*fourth.sd, 0.1, 1e-9);
}

TEST(Summarize, KnowsNoSpreadOfOneValue)
{
    const auto one = summarize(std::vector<double>{4.5}).value();
    EXPECT_EQ(one.mean, 4.5);
    EXPECT_FALSE(one.sd.has_value());
    EXPECT_EQ(*summarize(std::vector<double>(9, 0.1)).value().sd, 0)
        << "like values have no spread, not even by rounding";
}

TEST(Summarize, SaysWhyThereIsNone)
{
    EXPECT_TRUE(summarize({}).error().is(GroupsReason::TooFewValues));
    for (const double stray : {std::nan(""), std::numeric_limits<double>::infinity()}) {
        EXPECT_TRUE(summarize(std::vector<double>{1, stray}).error().is(GroupsReason::NotFinite));
    }
}

TEST(SumGroups, TellsWhichGroupIsEmpty)
{
    const std::vector<std::vector<double>> groups{{1, 2}, {3}, {}};
    const Error error = sumGroups(groups).error();
    EXPECT_TRUE(error.is(GroupsReason::EmptyGroup));
    EXPECT_EQ(error.values, std::vector<std::string>{"3"});
    const std::vector<std::vector<double>> one{{1, 2}};
    EXPECT_TRUE(sumGroups(one).error().is(GroupsReason::TooFewGroups));
    const std::vector<std::vector<double>> stray{{1, 2}, {std::nan("")}};
    EXPECT_TRUE(sumGroups(stray).error().is(GroupsReason::NotFinite));
}

// Seed 36: within and between add up to the whole, and shifting all values changes nothing.
TEST(SumGroups, PartsTheWholeSumOfSquares)
{
    std::mt19937 draw(36);
    std::normal_distribution<double> noise(0, 3);
    for (int round = 0; round < 50; ++round) {
        std::vector<std::vector<double>> groups(2 + draw() % 4);
        std::vector<std::vector<double>> shifted;
        std::vector<double> all;
        for (auto& group : groups) {
            group.resize(1 + draw() % 6);
            auto& far = shifted.emplace_back();
            for (double& value : group) {
                value = noise(draw);
                all.push_back(value);
                far.push_back(value + 4096);
            }
        }
        const GroupSums sums = sumGroups(groups).value();
        const GroupSums far = sumGroups(shifted).value();
        double mean = 0;
        for (const double value : all) {
            mean += value / static_cast<double>(all.size());
        }
        double whole = 0;
        for (const double value : all) {
            whole += (value - mean) * (value - mean);
        }
        EXPECT_NEAR(sums.between + sums.within, whole, 1e-9 * (1 + whole));
        EXPECT_NEAR(far.between, sums.between, 1e-8 * (1 + whole));
        EXPECT_NEAR(far.within, sums.within, 1e-8 * (1 + whole));
        EXPECT_EQ(sums.total, all.size());
        EXPECT_EQ(sums.dfBetween() + sums.dfWithin() + 1, static_cast<double>(all.size()));
    }
}

TEST(MedianOf, IsTheMiddleOrHalfWayBetweenTheTwo)
{
    EXPECT_EQ(medianOf(std::vector<double>{7}), 7);
    EXPECT_EQ(medianOf(std::vector<double>{9, 1, 5}), 5);
    EXPECT_EQ(medianOf(std::vector<double>{9, 1, 5, 6}), 5.5);
    EXPECT_EQ(medianOf(std::vector<double>{2, 2, 2, 100}), 2);
}

TEST(HaveNoSpread, LooksWithinEachGroupOnly)
{
    const std::vector<std::vector<double>> apart{{1, 1}, {2}, {3, 3, 3}};
    const std::vector<std::vector<double>> spread{{1, 1}, {2, 2.0000001}};
    EXPECT_TRUE(haveNoSpread(apart));
    EXPECT_FALSE(haveNoSpread(spread));
}

} // namespace
} // namespace plumule::stats
