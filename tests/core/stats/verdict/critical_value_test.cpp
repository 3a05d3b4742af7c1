#include "core/stats/verdict/critical_value.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"

#include <gtest/gtest.h>
#include <numbers>

namespace plumule::stats {
namespace {

TEST(CriticalValue, BetweenWholeDegreesAgreesWithTheStudentizedRange)
{
    for (const std::size_t media : {3U, 5U}) {
        for (const double level : {0.05, 0.002}) {
            for (const double df : {1.3, 2.04, 3.8545866, 7.5, 19.2, 150.7}) {
                const double direct =
                    *studentizedRangeQuantile(1 - level, static_cast<int>(media), df) /
                    std::numbers::sqrt2;
                EXPECT_NEAR(criticalValue(media, df, level) / direct, 1, 1e-6)
                    << media << " media, " << df << " df, " << level;
            }
        }
    }
}

TEST(CriticalValue, OfTwoMediaIsStudentsT)
{
    EXPECT_DOUBLE_EQ(criticalValue(2, 7.4, 0.05), tQuantile(0.975, 7.4));
    EXPECT_NEAR(*studentizedRangeQuantile(0.95, 2, 7.4) / std::numbers::sqrt2,
                criticalValue(2, 7.4, 0.05), 1e-9);
}

TEST(CriticalValue, GoesToTheNormalRange)
{
    EXPECT_NEAR(criticalValue(3, kInfiniteDf, 0.05), criticalValue(3, 1e9, 0.05), 1e-6);
    EXPECT_GT(criticalValue(3, 1e4 + 0.5, 0.05), criticalValue(3, kInfiniteDf, 0.05));
}

} // namespace
} // namespace plumule::stats
