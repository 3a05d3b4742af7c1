#include "core/stats/probability/steady_draw.h"

#include "core/stats/probability/distributions.h"

#include <gtest/gtest.h>
#include <limits>
#include <map>
#include <set>
#include <string>

namespace plumule::stats {
namespace {

// P of a χ² statistic as large, over equally likely outcomes.
double evenness(const std::vector<int>& counts)
{
    double total = 0;
    for (const int count : counts) {
        total += count;
    }
    const double expected = total / static_cast<double>(counts.size());
    double chi = 0;
    for (const int count : counts) {
        chi += (count - expected) * (count - expected) / expected;
    }
    return chiSquareUpper(chi, static_cast<double>(counts.size()) - 1);
}

// ISO C++ [rand.predef]: the 10000th number of a generator with the seed 5489 is
// 9981545732273789042. The bound is all of its numbers but one, so that it comes through as it is.
TEST(SteadyDraw, IsTheStandardsOwnGenerator)
{
    SteadyDraw draw(5489);
    constexpr std::size_t kAll = std::numeric_limits<std::uint64_t>::max();
    std::size_t last = 0;
    for (int i = 0; i < 10'000; ++i) {
        last = draw.below(kAll);
    }
    EXPECT_EQ(last, 9981545732273789042U);
}

TEST(SteadyDraw, StaysBelowItsBound)
{
    SteadyDraw draw(1);
    for (int i = 0; i < 100; ++i) {
        EXPECT_EQ(draw.below(1), 0U);
    }
    for (const std::size_t bound :
         {std::size_t{2}, std::size_t{3}, std::size_t{1000}, (std::size_t{1} << 63U) + 1}) {
        for (int i = 0; i < 200; ++i) {
            EXPECT_LT(draw.below(bound), bound);
        }
    }
}

// Seeds 0 to 199: of p values that are spread evenly 10 ± 3 lie under 0.05 (binomial), and one
// under one in a million in five thousand such tests.
TEST(SteadyDraw, GivesEveryNumberTheSameChance)
{
    int under = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        SteadyDraw draw(seed);
        std::vector<int> counts(7);
        for (int i = 0; i < 14'000; ++i) {
            ++counts[draw.below(7)];
        }
        under += evenness(counts) < 0.05 ? 1 : 0;
        EXPECT_GT(evenness(counts), 1e-6) << seed;
    }
    EXPECT_LE(under, 20);
}

// Just over half of all numbers: without rejection the low half would come up twice as often.
TEST(SteadyDraw, RejectsWhatWouldFavourTheFirst)
{
    SteadyDraw draw(3);
    constexpr std::size_t kBound = (std::size_t{1} << 63U) + (std::size_t{1} << 62U);
    std::vector<int> thirds(3);
    for (int i = 0; i < 30'000; ++i) {
        ++thirds[draw.below(kBound) >> 62U];
    }
    EXPECT_GT(evenness(thirds), 0.001);
}

TEST(SteadyDraw, ShufflesEveryOrderAlike)
{
    SteadyDraw draw(11);
    std::map<std::string, int> orders;
    for (int i = 0; i < 24'000; ++i) {
        std::vector<char> letters{'a', 'b', 'c', 'd'};
        draw.shuffle(letters);
        ++orders[std::string(letters.begin(), letters.end())];
    }
    ASSERT_EQ(orders.size(), 24U);
    std::vector<int> counts;
    for (const auto& [order, count] : orders) {
        counts.push_back(count);
    }
    EXPECT_GT(evenness(counts), 0.001);
}

TEST(SteadyDraw, GivesTheSameAgainForTheSameNumberOnly)
{
    const auto drawn = [](std::uint64_t seed) {
        SteadyDraw draw(seed);
        std::vector<int> items{1, 2, 3, 4, 5, 6, 7, 8, 9};
        draw.shuffle(items);
        return items;
    };
    EXPECT_EQ(drawn(77), drawn(77));
    std::set<std::vector<int>> layouts;
    for (std::uint64_t seed = 0; seed < 50; ++seed) {
        layouts.insert(drawn(seed));
    }
    EXPECT_EQ(layouts.size(), 50U);
    std::vector<int> nothing;
    SteadyDraw(1).shuffle(nothing);
    EXPECT_TRUE(nothing.empty());
}

} // namespace
} // namespace plumule::stats
