#include "core/stats/samples/ranks.h"

#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

using RankedGroups = std::vector<std::vector<double>>;

TEST(Ranks, ShareTheMeanAmongEqualValues)
{
    EXPECT_EQ(midranks(std::vector<double>{3, 1, 3, 2}), (std::vector<double>{3.5, 1, 3.5, 2}));
    EXPECT_EQ(tieSum(std::vector<double>{3, 1, 3, 2}), 6);
    EXPECT_EQ(tieSum(std::vector<double>{5, 5, 5, 1}), 24);
    EXPECT_TRUE(midranks({}).empty());
}

TEST(KruskalWallis, AgreesWithConoversCorn)
{
    // Conover 1999, corn yields under four methods: H 25.629.
    const reference::Table table("handbook/stat_data/conover_corn_kruskal.csv");
    const auto corn = reference::grouped(table, "observation", "method");
    const auto result = kruskalWallis(corn.values);
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->h, 25.629, 0.0005);
    EXPECT_EQ(result->df, 3);
    EXPECT_NEAR(result->p, 1.141e-05, 1e-7);
}

// Two groups: H is the square of the rank sum's normal deviate, its variance corrected for ties.
TEST(KruskalWallis, IsTheSquaredNormalOfTheRankSumForTwoGroups)
{
    const RankedGroups groups = {{1.2, 3.4, 3.4, 5.1}, {2.2, 6.1, 7.3, 7.3, 8}};
    // Ranks 1, 3.5, 3.5, 5 of the first group; two ties of two in nine values.
    const double distance = 13 - 4 * 10 / 2.0;
    const double variance = 4 * 5 / 12.0 * (10 - 12 / (9.0 * 8));
    const auto h = kruskalWallis(groups);
    ASSERT_TRUE(h);
    EXPECT_NEAR(h->h, distance * distance / variance, 1e-12);
}

TEST(KruskalWallis, RefusesGroupsThatSayNothing)
{
    const auto kindOf = [](const RankedGroups& groups) {
        const auto result = kruskalWallis(groups);
        return result ? ErrorKind::Cancelled : result.error().kind;
    };
    EXPECT_EQ(kindOf({{1, 2, 3}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{1, 2, 3}, {}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{4, 4}, {4, 4, 4}}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({{4, std::nan("")}, {4, 4, 4}}), ErrorKind::Invalid);
}
