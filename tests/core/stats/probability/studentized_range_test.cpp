#include "core/stats/probability/studentized_range.h"

#include "core/stats/probability/distributions.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

using namespace plumule::stats;

TEST(StudentizedRange, IsTheTwoSidedTForTwoGroups)
{
    for (const double df : {1.0, 2.0, 3.7, 27.0, 1e6, kInfiniteDf}) {
        for (const double q : {0.05, 1.0, 3.5, 8.0, 40.0}) {
            const double t = tTwoSided(q / std::numbers::sqrt2, df);
            EXPECT_NEAR(studentizedRangeUpper(q, 2, df).value(), t, 1e-11 * t) << q << ' ' << df;
        }
    }
}

// Printed tables of the upper 5 % and 1 % points, as in any textbook (Harter 1960); from memory.
TEST(StudentizedRange, MeetsThePrintedTables)
{
    struct Row
    {
        int groups;
        double df;
        double p;
        double printed;
        double step;
    };
    constexpr std::array kRows = {
        Row{3, 10, 0.95, 3.88, 0.005},           Row{4, 20, 0.95, 3.96, 0.005},
        Row{10, 60, 0.99, 5.45, 0.005},          Row{20, 20, 0.95, 5.71, 0.005},
        Row{20, kInfiniteDf, 0.95, 5.01, 0.005}, Row{20, 1, 0.99, 298, 0.5},
        Row{10, 2, 0.99, 31.69, 0.005},          Row{5, kInfiniteDf, 0.99, 4.60, 0.005}};
    for (const Row& row : kRows) {
        EXPECT_NEAR(studentizedRangeQuantile(row.p, row.groups, row.df).value(), row.printed,
                    row.step)
            << row.groups << ' ' << row.df;
    }
}

TEST(StudentizedRange, TurnsItsQuantileBackIntoTheProbability)
{
    for (const int groups : {2, 3, 8, 20, 60}) {
        for (const double df : {1.0, 2.5, 12.0, 500.0, kInfiniteDf}) {
            for (const double p : {0.001, 0.3, 0.5, 0.95, 0.9999}) {
                const double q = studentizedRangeQuantile(p, groups, df).value();
                EXPECT_NEAR(studentizedRangeUpper(q, groups, df).value(), 1 - p, 1e-11)
                    << groups << ' ' << df << ' ' << p;
            }
        }
    }
}

TEST(StudentizedRange, GrowsWithTheGroupsAndStaysUnderBonferroni)
{
    double last = 0;
    for (int groups = 2; groups <= 20; ++groups) {
        const double p = studentizedRangeUpper(7, groups, 15).value();
        const double pairs = groups * (groups - 1) / 2.0;
        EXPECT_GT(p, last);
        EXPECT_LE(p, pairs * tTwoSided(7 / std::numbers::sqrt2, 15) * (1 + 1e-12));
        last = p;
    }
}

TEST(StudentizedRange, RefusesWhatItCannotAnswer)
{
    EXPECT_EQ(studentizedRangeUpper(3, 1, 10).error().kind, plumule::ErrorKind::Invalid);
    EXPECT_FALSE(studentizedRangeUpper(3, 3, 0));
    EXPECT_FALSE(studentizedRangeUpper(std::nan(""), 3, 10));
    EXPECT_FALSE(studentizedRangeQuantile(1, 3, 10));
    EXPECT_FALSE(studentizedRangeQuantile(0, 3, 10));
    EXPECT_EQ(studentizedRangeUpper(0, 3, 10).value(), 1);
    EXPECT_EQ(studentizedRangeUpper(kInfiniteDf, 3, 10).value(), 0);
}
