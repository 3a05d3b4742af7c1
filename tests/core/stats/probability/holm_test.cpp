#include "core/stats/probability/holm.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numeric>
#include <random>

namespace plumule::stats {
namespace {

using MissingPs = std::vector<std::optional<double>>;

// Holm 1979, Scand. J. Stat. 6:65: the smallest of n by n, the next by n − 1, never below one
// before it.
TEST(Holm, StepsDownAndNeverBack)
{
    const auto adjusted = holmAdjusted({0.01, 0.04, 0.03, 0.005});
    EXPECT_DOUBLE_EQ(*adjusted[3], 0.02);
    EXPECT_DOUBLE_EQ(*adjusted[0], 0.03);
    EXPECT_DOUBLE_EQ(*adjusted[2], 0.06);
    EXPECT_DOUBLE_EQ(*adjusted[1], 0.06);
}

TEST(Holm, LeavesOneAloneAndStopsAtOne)
{
    EXPECT_DOUBLE_EQ(*holmAdjusted({0.3})[0], 0.3);
    for (const auto& p : holmAdjusted({0.6, 0.7, 1.0})) {
        EXPECT_DOUBLE_EQ(*p, 1.0);
    }
    EXPECT_TRUE(holmAdjusted({}).empty());
    EXPECT_FALSE(holmAdjusted({std::nullopt})[0].has_value());
}

// Seed 7: whatever the p values, they lie between themselves and Bonferroni's, keep their order,
// and hang neither on the order given nor on what is missing.
TEST(Holm, KeepsItsBoundsAndItsOrder)
{
    std::mt19937 draw(7);
    std::uniform_real_distribution<double> any(0, 1);
    for (int round = 0; round < 200; ++round) {
        const std::size_t count = 1 + draw() % 8;
        MissingPs p(count);
        for (auto& one : p) {
            one = any(draw) < 0.2 ? std::nullopt : std::optional(any(draw) * any(draw));
        }
        const auto given = static_cast<double>(
            std::count_if(p.begin(), p.end(), [](const auto& one) { return one.has_value(); }));
        const MissingPs adjusted = holmAdjusted(p);
        std::vector<std::size_t> order(count);
        std::iota(order.begin(), order.end(), 0U);
        std::shuffle(order.begin(), order.end(), draw);
        MissingPs shuffled;
        for (const std::size_t i : order) {
            shuffled.push_back(p[i]);
        }
        const MissingPs again = holmAdjusted(shuffled);
        for (std::size_t i = 0; i < count; ++i) {
            EXPECT_EQ(again[i], adjusted[order[i]]);
            ASSERT_EQ(adjusted[i].has_value(), p[i].has_value());
            if (!p[i]) {
                continue;
            }
            EXPECT_GE(*adjusted[i], *p[i]);
            EXPECT_LE(*adjusted[i], std::min(1.0, given * *p[i]) + 1e-15);
            for (std::size_t j = 0; j < count; ++j) {
                EXPECT_TRUE(!p[j] || *p[i] > *p[j] || *adjusted[i] <= *adjusted[j]);
            }
        }
    }
}

} // namespace
} // namespace plumule::stats
