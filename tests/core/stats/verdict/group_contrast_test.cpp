#include "core/stats/verdict/group_contrast.h"
#include "core/stats/verdict/sown_trays.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::fourSowings;
using verdicts::sown;

// Common practice, no source: two reusable meshes against soil, one tray each.
TEST(GroupContrast, TwoMeshesAgainstSoilFromOneTrayEachGiveMeansButNoVerdict)
{
    const MediaAnswer answer = answerOfSowings(sown({{{306.1}, {315.3}, {276.1}}}), {});
    const GroupAnswer groups = groupsOf(answer, {{0, 1}, {2}}, logMargin(10));
    EXPECT_NEAR(groups.groups[0].value.value(), 310.7, 0.05);
    EXPECT_NEAR(groups.groups[1].value.value(), 276.1, 1e-9);
    EXPECT_NEAR(*groups.groups[0].value - *groups.groups[1].value, 34.6, 0.05);
    EXPECT_NEAR(*groups.groups[1].value * std::expm1(groups.pairs.at(0).difference.value()), 34.6,
                0.05);
    EXPECT_EQ(groups.pairs[0].verdict, Verdict::NoVerdict);
    EXPECT_EQ(groups.pairs[0].why, NoVerdictReason::OneTrayEach);
}

TEST(GroupContrast, IsTheMeanOfThePairsAcross)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    const GroupAnswer groups = groupsOf(answer, {{2}, {0, 1}}, logMargin(10));
    const GroupContrast& pair = groups.pairs.at(0);
    // The pairs are 0 over 2 and 1 over 2.
    EXPECT_NEAR(*pair.difference, -(*answer.pairs[1].difference + *answer.pairs[2].difference) / 2,
                1e-12);
    EXPECT_NEAR(*pair.halfWidth, (*answer.pairs[1].halfWidth + *answer.pairs[2].halfWidth) / 2,
                1e-12);
    EXPECT_EQ(pair.verdict, verdictOf(*pair.interval(), logMargin(10)));
    EXPECT_NEAR(*groups.groups[1].value, std::sqrt(*answer.means[0].value * *answer.means[1].value),
                1e-9);
}

TEST(GroupContrast, OfSingleMediaAreThePairs)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    const GroupAnswer groups = groupsOf(answer, {{0}, {1}, {2}}, logMargin(10));
    ASSERT_EQ(groups.pairs.size(), answer.pairs.size());
    for (std::size_t i = 0; i < groups.pairs.size(); ++i) {
        EXPECT_DOUBLE_EQ(*groups.pairs[i].difference, *answer.pairs[i].difference);
        EXPECT_DOUBLE_EQ(*groups.pairs[i].halfWidth, *answer.pairs[i].halfWidth);
        EXPECT_EQ(groups.pairs[i].verdict, answer.pairs[i].verdict);
        EXPECT_FALSE(groups.groups[i].widest.has_value());
    }
}

TEST(GroupContrast, SaysHowUnlikeTheMembersAre)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    const GroupAnswer groups = groupsOf(answer, {{0, 2}, {1}}, logMargin(10));
    EXPECT_NEAR(groups.groups[0].widest.value(), std::abs(*answer.pairs[1].difference), 1e-12);
    EXPECT_TRUE(groups.groups[0].areToldApart);
    EXPECT_FALSE(groupsOf(answer, {{0, 1}, {2}}, logMargin(10)).groups[0].areToldApart);
}

TEST(GroupContrast, LeavesOutMembersWithoutTrays)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    const GroupAnswer with = groupsOf(answer, {{0, 7}, {2}, {9}}, logMargin(10));
    EXPECT_DOUBLE_EQ(*with.pairs[0].difference, *answer.pairs[1].difference);
    EXPECT_EQ(with.pairs[1].why, NoVerdictReason::NothingHarvested);
    EXPECT_FALSE(with.groups[2].value.has_value());
}

TEST(GroupContrast, TakesThePairsReasons)
{
    VerdictAsk ask;
    ask.confounded = {{1, 2}};
    const GroupAnswer groups =
        groupsOf(answerOfSeries(fourSowings(), ask), {{0, 1}, {2}}, logMargin(10));
    EXPECT_EQ(groups.pairs[0].verdict, Verdict::NotComparable);
    EXPECT_EQ(groups.pairs[0].why, NoVerdictReason::Confounded);
}

} // namespace
} // namespace plumule::stats
