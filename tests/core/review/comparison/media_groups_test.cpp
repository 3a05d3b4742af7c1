#include "core/review/comparison/media_groups.h"

#include "tests/core/review/facts/season_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using Members = std::vector<std::size_t>;

class MediaGroupsTest : public testing::Test
{
protected:
    MediaGroupsTest()
    {
        Medium felt = season.facts.media.at(kMesh);
        felt.id = {3};
        felt.form = MediumForm::Mat;
        felt.isReusable = false;
        felt.isNutrientBearing = true;
        season.facts.media[felt.id] = felt;
        for (const auto& [id, medium] : season.facts.media) {
            media.push_back(&medium);
        }
    }

    std::vector<GroupOfMedia> groups(std::optional<Grouping> by)
    {
        return groupsAmong(season.facts, media, by);
    }

    SeasonSamples season;
    std::vector<const Medium*> media; // mix, mesh, felt
};

TEST_F(MediaGroupsTest, StandInTheOrderOfTheirFirstMembers)
{
    const auto byReuse = groups(Grouping::Reuse);
    ASSERT_EQ(byReuse.size(), 2u);
    EXPECT_EQ(byReuse[0].name, "single_use");
    EXPECT_EQ(byReuse[0].members, (Members{0, 2}));
    EXPECT_EQ(byReuse[1].name, "reusable");
    EXPECT_EQ(byReuse[1].members, (Members{1}));
    const auto byNutrients = groups(Grouping::Nutrients);
    ASSERT_EQ(byNutrients.size(), 2u);
    EXPECT_EQ(byNutrients[0].name, "inert");
    EXPECT_EQ(byNutrients[0].members, (Members{0, 1}));
    EXPECT_EQ(byNutrients[1].name, "nutrient_bearing");
    const auto byForm = groups(Grouping::Form);
    ASSERT_EQ(byForm.size(), 3u);
    EXPECT_EQ(byForm[0].name, "loose_mix");
    EXPECT_EQ(byForm[1].name, "mesh");
    EXPECT_EQ(byForm[2].name, "mat");
}

TEST_F(MediaGroupsTest, OfTheGrowersOwnLeaveOutMediaWithoutAWord)
{
    season.facts.mediumGroups = {{MediumId{3}, "cloth"}, {kMesh, "cloth"}, {kMix, ""}};
    const auto own = groups(Grouping::Own);
    ASSERT_EQ(own.size(), 1u);
    EXPECT_EQ(own[0].name, "cloth");
    EXPECT_EQ(own[0].members, (Members{1, 2}));
}

TEST_F(MediaGroupsTest, AreNoneWhereNoneAreAskedForOrNoMediaGrew)
{
    EXPECT_TRUE(groups(std::nullopt).empty());
    media.clear();
    EXPECT_TRUE(groups(Grouping::Form).empty());
}

// Media of 100, 400 and 300 g; the first two are a group, of √(100 · 400) = 200 g.
class GroupAnswerTest : public testing::Test
{
protected:
    GroupAnswerTest()
    {
        const double means[] = {100, 400, 300};
        for (std::size_t medium = 0; medium < 3; ++medium) {
            stats::MediumMean mean;
            mean.medium = medium;
            mean.trays = 5;
            mean.value = means[medium];
            mean.onScale = std::log(means[medium]);
            answer.means.push_back(mean);
        }
        add(0, 1, std::log(0.25), 0.2);
        add(0, 2, std::log(1.0 / 3), 0.1);
        add(1, 2, std::log(4.0 / 3), 0.3);
        comparison.groups.resize(2);
        comparison.groups[0].members = {0, 1};
        comparison.groups[1].members = {2};
        comparison.pairs.resize(3);
        share(0, 1, 0, 9);
        share(1, 2, 0, 6); // read the other way round
        share(2, 1, 2, 4);
    }

    void add(std::size_t a, std::size_t b, double difference, double halfWidth)
    {
        stats::PairAnswer pair;
        pair.a = a;
        pair.b = b;
        pair.difference = difference;
        pair.halfWidth = halfWidth;
        pair.verdict = stats::Verdict::Less;
        answer.pairs.push_back(pair);
    }
    void share(std::size_t at, std::size_t a, std::size_t b, int trials)
    {
        comparison.pairs[at].a = a;
        comparison.pairs[at].b = b;
        comparison.pairs[at].trialsShared = trials;
    }

    stats::MediaAnswer answer;
    SeasonComparison comparison;
};

TEST_F(GroupAnswerTest, IsTheMeanOfTheMembersAndOfThePairsAcross)
{
    answerForGroups(comparison, answer, std::log(1.1));
    EXPECT_NEAR(*comparison.groups[0].mean, 200, 1e-9);
    EXPECT_NEAR(*comparison.groups[1].mean, 300, 1e-9);
    ASSERT_EQ(comparison.groupPairs.size(), 1u);
    const MediaPair& pair = comparison.groupPairs[0];
    EXPECT_EQ(pair.a, 1u) << "the one with more";
    EXPECT_EQ(pair.b, 0u);
    EXPECT_NEAR(*pair.percent, 50, 1e-9);
    EXPECT_NEAR(*pair.difference, 100, 1e-9);
    // Half-widths of 0.1 and 0.3 are 0.2 together.
    EXPECT_NEAR(*pair.lowerPercent, 100 * (1.5 * std::exp(-0.2) - 1), 1e-9);
    EXPECT_EQ(pair.verdict, stats::Verdict::More);
    EXPECT_EQ(pair.trialsShared, 4) << "the fewest across, none within a group";
}

TEST_F(GroupAnswerTest, SaysHowUnlikeItsMembersAre)
{
    answerForGroups(comparison, answer, std::log(1.1));
    EXPECT_NEAR(*comparison.groups[0].widestPercent, 300, 1e-9) << "the larger over the smaller";
    EXPECT_TRUE(comparison.groups[0].areToldApart);
    EXPECT_FALSE(comparison.groups[1].widestPercent) << "it has one member";
    EXPECT_FALSE(comparison.groups[1].areToldApart);
}

TEST_F(GroupAnswerTest, OfALinearScaleIsAShareOfTheMean)
{
    comparison.scale = stats::CellScale::Linear;
    answer.scale = stats::CellScale::Linear;
    answer.means[0].onScale = 10; // days
    answer.means[1].onScale = 14;
    answer.means[2].onScale = 9;
    answer.pairs[0].difference = -4;
    answer.pairs[1].difference = 1;
    answer.pairs[2].difference = 5;
    answerForGroups(comparison, answer, 0.5);
    EXPECT_NEAR(*comparison.groups[0].mean, 12, 1e-12);
    EXPECT_NEAR(*comparison.groups[0].widestPercent, 100 * 4.0 / 12, 1e-12);
    const MediaPair& pair = comparison.groupPairs.at(0);
    EXPECT_EQ(pair.a, 0u);
    EXPECT_NEAR(*pair.difference, 3, 1e-12);
    EXPECT_NEAR(*pair.percent, 100 * 3.0 / 9, 1e-12);
}

TEST_F(GroupAnswerTest, WithoutTraysHasNoMeanAndNoVerdict)
{
    answer.means[2].trays = 0;
    answer.means[2].value.reset();
    answer.means[2].onScale.reset();
    answerForGroups(comparison, answer, std::log(1.1));
    EXPECT_FALSE(comparison.groups[1].mean);
    const MediaPair& pair = comparison.groupPairs.at(0);
    EXPECT_EQ(pair.verdict, stats::Verdict::NoVerdict);
    EXPECT_EQ(pair.why, stats::NoVerdictReason::NothingHarvested);
    EXPECT_FALSE(pair.difference);
}

} // namespace
} // namespace plumule
