#include "core/stats/samples/permutation.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

using DealtGroups = std::vector<std::vector<double>>;

TEST(PermuteTwoGroups, CountsEverySplit)
{
    const auto result =
        permuteTwoGroups(std::vector<double>{7, 8, 9}, std::vector<double>{1, 2, 3});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->permutations, 20U);
    EXPECT_NEAR(result->observed, 6, 1e-12);
    EXPECT_EQ(result->countTwoSided, 2U);
    EXPECT_EQ(result->countGreater, 1U);
    EXPECT_EQ(result->countLess, 20U);
    EXPECT_NEAR(result->pTwoSided(), 0.1, 1e-15);
}

TEST(PermuteTwoGroups, TakesUnequalGroupsInEitherOrder)
{
    const std::vector<double> few = {5.1, 6.2};
    const std::vector<double> many = {1.1, 2.7, 5.1, 3.3, 4.9};
    const auto one = permuteTwoGroups(few, many);
    const auto other = permuteTwoGroups(many, few);
    ASSERT_TRUE(one && other);
    EXPECT_EQ(one->permutations, 21U);
    EXPECT_EQ(other->permutations, 21U);
    EXPECT_NEAR(one->observed, -other->observed, 1e-12);
    EXPECT_EQ(one->countGreater, other->countLess);
    EXPECT_EQ(one->countTwoSided, other->countTwoSided);
}

TEST(PermuteTwoGroups, IsNotMisledByTheRoundingOfTies)
{
    // 0.1 + 0.2 and 0.3 + 0.0 are the same sum but not the same doubles.
    const auto result =
        permuteTwoGroups(std::vector<double>{0.1, 0.2}, std::vector<double>{0.3, 0.0});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->countTwoSided, 6U);
}

TEST(FlipSigns, CountsEverySign)
{
    const auto result = flipSigns(std::vector<double>{1, 2, 3});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->permutations, 8U);
    EXPECT_EQ(result->countTwoSided, 2U);
    EXPECT_EQ(result->countGreater, 1U);
    EXPECT_NEAR(result->observed, 2, 1e-15);
}

TEST(PermuteGroups, CountsAssignmentsOfThreeGroups)
{
    const auto result = permuteGroups(DealtGroups{{1, 2}, {5, 6}, {9, 10}});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->permutations, 90U);
    // Only the six ways to name the same three pairs are as far apart.
    EXPECT_EQ(result->count, 6U);
    EXPECT_NEAR(result->f, (64.0 / 2) / (1.5 / 3), 1e-9);
}

TEST(PermuteGroups, AgreesWithTheTwoGroupTest)
{
    const DealtGroups groups = {{3.1, 4.7, 2.2, 5.0}, {4.4, 6.9, 7.1}};
    const auto f = permuteGroups(groups);
    const auto difference = permuteTwoGroups(groups[0], groups[1]);
    ASSERT_TRUE(f && difference);
    EXPECT_EQ(f->permutations, difference->permutations);
    EXPECT_EQ(f->count, difference->countTwoSided);
}

TEST(PermuteWithinBlocks, CountsOrdersWithinBlocks)
{
    const auto result = permuteWithinBlocks(DealtGroups{{1, 2, 4}, {2, 3, 5}, {1, 2, 5}});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->permutations, 216U);
    // All blocks alike in order: the six ways to name the treatments.
    EXPECT_EQ(result->count, 6U);
    EXPECT_NEAR(result->p(), 6.0 / 216, 1e-15);
}

TEST(PermuteWithinBlocks, HasAnInfiniteRatioWhereNothingIsLeft)
{
    const auto result = permuteWithinBlocks(DealtGroups{{1, 2}, {3, 4}, {7, 8}});
    ASSERT_TRUE(result);
    EXPECT_TRUE(std::isinf(result->f));
    EXPECT_EQ(result->count, 2U);
}

TEST(Permutation, RefusesWhatItCannotWorkThrough)
{
    const std::vector<double> twenty(20, 1.5);
    std::vector<double> rising;
    for (int i = 0; i < 30; ++i)
        rising.push_back(i);
    const auto many = permuteTwoGroups(rising, twenty);
    ASSERT_FALSE(many);
    EXPECT_EQ(many.error().subject, "permutation.many");
    EXPECT_EQ(flipSigns(rising).error().subject, "permutation.many");
    EXPECT_EQ(permuteTwoGroups(twenty, twenty).error().subject, "permutation.constant");
    EXPECT_EQ(flipSigns(std::vector<double>{0, 0}).error().subject, "permutation.constant");
    EXPECT_EQ(permuteGroups(DealtGroups{{1, 2}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(permuteGroups(DealtGroups{{1, 2}, {}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(permuteGroups(DealtGroups{{1}, {2}}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(permuteWithinBlocks(DealtGroups{{1, 1}, {2, 2}}).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(permuteWithinBlocks(DealtGroups{{1, 2}, {2}}).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(flipSigns(std::vector<double>{1, std::nan("")}).error().kind, ErrorKind::Invalid);
}
