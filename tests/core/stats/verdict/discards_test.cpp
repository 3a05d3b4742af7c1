#include "core/stats/verdict/discards.h"

#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

// 5 of 24 against 0 of 72: only this table is as unlikely, C(24,5)/C(96,5), halved.
TEST(Discards, GiveFishersMidP)
{
    const double seen = 42504.0 / 61124064.0;
    EXPECT_NEAR(fisherMidP(5, 24, 0, 72), seen / 2, 1e-12);
    EXPECT_DOUBLE_EQ(fisherMidP(0, 24, 0, 72), 0.5);
    // A lady tasting tea, three of four cups right (Fisher 1935, from memory): tables of
    // probability 1, 16, 36, 16, 1 in 70, so 2/70 and half of 32/70.
    EXPECT_NEAR(fisherMidP(3, 4, 1, 4), 18.0 / 70, 1e-12);
    EXPECT_NEAR(fisherMidP(1, 4, 3, 4), 18.0 / 70, 1e-12);
}

TEST(Discards, NameTheMediumThatDiffers)
{
    const SownAndDiscarded counts[] = {{1, 0, 12, 3}, {2, 0, 12, 2}, {1, 1, 12, 0},
                                       {2, 1, 12, 0}, {1, 2, 24, 0}, {2, 3, 24, 0}};
    const auto media = discardsOf(counts);
    ASSERT_EQ(media.size(), 4U);
    EXPECT_EQ(media[0].sown, 24);
    EXPECT_EQ(media[0].discarded, 5);
    EXPECT_TRUE(media[0].differs);
    EXPECT_FALSE(media[0].isInOneSowing);
    EXPECT_FALSE(media[1].differs);
}

TEST(Discards, SayWhenAllLossesFellInOneTrial)
{
    const SownAndDiscarded counts[] = {{1, 0, 12, 0}, {2, 0, 12, 5}, {1, 1, 36, 0}, {2, 1, 36, 0}};
    const auto media = discardsOf(counts);
    EXPECT_TRUE(media[0].differs);
    EXPECT_TRUE(media[0].isInOneSowing);
    EXPECT_FALSE(media[1].isInOneSowing);
}

TEST(Discards, SayNothingOfOneMediumOrNone)
{
    const SownAndDiscarded one[] = {{1, 0, 12, 6}};
    EXPECT_FALSE(discardsOf(one).at(0).differs);
    EXPECT_TRUE(discardsOf({}).empty());
}

} // namespace
} // namespace plumule::stats
