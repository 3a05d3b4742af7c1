#include "tests/core/review/comparison/comparison_samples.h"

#include "core/review/comparison/pair_verdict.h"
#include "core/stats/planning/power.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(Verdict, IsMoreOrLessWhereTheIntervalIsClearOfNothing)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251});
    season.addTrays(kMesh, {298, 300, 303, 299});
    const MediaPair more = season.meshAgainstMix(20);
    EXPECT_EQ(more.verdict, PairVerdict::More);
    EXPECT_NEAR(*more.difference, 49.75, 1e-9);
    EXPECT_GT(*more.lower, 20);
    EXPECT_FALSE(more.needed);
    ComparisonSamples other;
    other.addTrays(kMix, {298, 300, 303, 299});
    other.addTrays(kMesh, {248, 250, 252, 251});
    EXPECT_EQ(other.meshAgainstMix(20).verdict, PairVerdict::Less);
}

TEST(Verdict, IsTheSameWithinTheMarginWhereBothOneSidedTestsSaySo)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251, 247, 252});
    season.addTrays(kMesh, {249, 251, 253, 247, 250, 251});
    const MediaPair pair = season.meshAgainstMix(20);
    EXPECT_EQ(pair.verdict, PairVerdict::SameWithinMargin);
    EXPECT_LT(*pair.pWithinMargin, 0.05);
    EXPECT_GT(*pair.lowerWithin, -20);
    EXPECT_LT(*pair.upperWithin, 20);
    // The same trays say nothing of a margin below their own spread.
    EXPECT_EQ(season.meshAgainstMix(0.5).verdict, PairVerdict::CantTellYet);
}

TEST(Verdict, IsRealButTooSmallWhereBothHold)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251, 250});
    season.addTrays(kMesh, {254, 255, 256, 255});
    const MediaPair pair = season.meshAgainstMix(20);
    EXPECT_EQ(pair.verdict, PairVerdict::RealButTooSmall);
    EXPECT_GT(*pair.lower, 0);
}

TEST(Verdict, CantTellYetSaysHowManyMoreTraysItTakes)
{
    ComparisonSamples season;
    season.addTrays(kMix, {220, 250, 280});
    season.addTrays(kMesh, {230, 260, 290, 260});
    const SeasonComparison answer = season.compare(Response::YieldPerTray, 20);
    const MediaPair& pair = answer.pairs.at(0);
    EXPECT_EQ(pair.verdict, PairVerdict::CantTellYet);
    ASSERT_TRUE(pair.needed);
    stats::TPlan plan;
    plan.sd = answer.spread.sd;
    EXPECT_EQ(pair.needed->each, stats::tWholeCountFor(plan, 20, 0.8).value());
    EXPECT_EQ(pair.needed->moreOfA, pair.needed->each - 4);
    EXPECT_EQ(pair.needed->moreOfB, pair.needed->each - 3);
    EXPECT_EQ(pair.needed->from, SpreadFrom::TheseTrays);
    EXPECT_EQ(answer.suggestions.back(), (Suggestion{Advice::GrowMoreTrays, pair.needed->each}));
}

TEST(Verdict, IsNotComparableWhereNoVarietyGrewOnBoth)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252}, {1});
    season.addTrays(kMesh, {398, 400, 403}, {2});
    const MediaPair pair = season.meshAgainstMix();
    EXPECT_EQ(pair.verdict, PairVerdict::NotComparable);
    EXPECT_FALSE(pair.difference);
}

TEST(Verdict, IsNotComparableWhereEachMediumHadATrialOfItsOwn)
{
    ComparisonSamples season;
    season.nameTrials(2);
    season.addTrays(kMix, {248, 250, 252}, {1}, TrialId{1});
    season.addTrays(kMesh, {298, 300, 303}, {1}, TrialId{2});
    const SeasonComparison answer = season.compare();
    EXPECT_EQ(answer.pairs.at(0).verdict, PairVerdict::NotComparable);
    EXPECT_EQ(answer.fairness.at(0).aspect, Aspect::Trial);
    EXPECT_EQ(answer.fairness.at(0).confounding, Confounding::Fully);
}

TEST(Verdict, OneTrayEachGivesNoneAndPlansByTheStatedDefault)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240});
    season.addTrays(kMesh, {260});
    const SeasonComparison answer = season.compare();
    const MediaPair& pair = answer.pairs.at(0);
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    EXPECT_EQ(pair.why, WhyNoVerdict::OneTray);
    EXPECT_FALSE(pair.difference);
    ASSERT_TRUE(pair.needed);
    EXPECT_EQ(pair.needed->from, SpreadFrom::Default);
    EXPECT_DOUBLE_EQ(pair.needed->spread, 25);
    EXPECT_EQ(answer.margin, (Margin{25, MarginFrom::Default}));
    // One standard deviation apart, two-sided 0.05, power 0.8: 17 each (Cohen 1988, Statistical
    // Power Analysis, table 2.4.1; from memory).
    EXPECT_EQ(pair.needed->each, 17);
    EXPECT_EQ(pair.needed->moreOfA, 16);
}

TEST(Verdict, OneTrayEachPlansByTheRoomsOwnSpreadWhereThereIsOne)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240}, {1});
    season.addTrays(kMesh, {260}, {1});
    // Another variety shows a coefficient of variation of 2 %.
    season.addTrays(kMix, {392, 400, 408}, {2});
    season.addTrays(kMesh, {490, 500, 510}, {2});
    season.filter.varieties = {VarietyId{1}};
    const SeasonComparison answer = season.compare();
    const MediaPair& pair = answer.pairs.at(0);
    ASSERT_EQ(answer.n, 2);
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    ASSERT_TRUE(pair.needed);
    EXPECT_EQ(pair.needed->from, SpreadFrom::Room);
    EXPECT_NEAR(pair.needed->spread, 0.02 * 250, 1e-9);
    EXPECT_LT(pair.needed->each, 17);
}

TEST(Verdict, TheRoomsSpreadIsAlsoThatOfEarlierTrays)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240});
    season.addTrays(kMesh, {260});
    for (const double yield : {294.0, 300.0, 306.0, 294.0, 306.0}) {
        season.facts.past.push_back({kMix, {2}, std::nullopt, date(2025, 11, 3), grams(yield)});
    }
    const MediaPair pair = season.meshAgainstMix();
    ASSERT_TRUE(pair.needed);
    EXPECT_EQ(pair.needed->from, SpreadFrom::Room);
    EXPECT_NEAR(pair.needed->spread, 0.02 * 250, 1e-9);
}

TEST(Verdict, ALoneTrayIsNotJudgedBesideReplicatedOnes)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251});
    season.addTrays(kMesh, {300});
    const MediaPair pair = season.meshAgainstMix(20);
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    EXPECT_EQ(pair.why, WhyNoVerdict::OneTray);
    ASSERT_TRUE(pair.needed);
    EXPECT_EQ(pair.needed->from, SpreadFrom::TheseTrays);
}

TEST(Verdict, TraysThatAreAllAlikeGiveNothingToJudgeBy)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 250, 250});
    season.addTrays(kMesh, {260, 260, 260});
    const MediaPair pair = season.meshAgainstMix(20);
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    EXPECT_EQ(pair.why, WhyNoVerdict::NoSpread);
    EXPECT_NEAR(*pair.difference, 10, 1e-9);
    EXPECT_FALSE(pair.lower);
}

TEST(Verdict, TooFewTraysForTheModelIsSaid)
{
    // Two media, two trials, one tray of each in each, and another variety in one of them.
    ComparisonSamples season;
    season.nameTrials(2);
    season.addTrays(kMix, {250}, {1}, TrialId{1});
    season.addTrays(kMesh, {260}, {1}, TrialId{1});
    season.addTrays(kMix, {250}, {2}, TrialId{2});
    season.addTrays(kMesh, {270}, {3}, TrialId{2});
    const MediaPair pair = season.meshAgainstMix();
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    EXPECT_EQ(pair.why, WhyNoVerdict::TooFewTrays);
}

TEST(Verdict, GroundsDecideInTheirOrder)
{
    EXPECT_EQ(verdictOf({true, 1, 5, 1.0, 2.0, false}), PairVerdict::NoVerdict);
    EXPECT_EQ(verdictOf({false, 5, 5, {}, {}, false}), PairVerdict::NotComparable);
    EXPECT_EQ(verdictOf({true, 5, 5, {}, {}, false}), PairVerdict::NoVerdict);
    EXPECT_EQ(verdictOf({true, 5, 5, 1.0, 2.0, false}), PairVerdict::More);
    EXPECT_EQ(verdictOf({true, 5, 5, -2.0, -1.0, false}), PairVerdict::Less);
    EXPECT_EQ(verdictOf({true, 5, 5, -2.0, 1.0, false}), PairVerdict::CantTellYet);
    EXPECT_EQ(verdictOf({true, 5, 5, -2.0, 1.0, true}), PairVerdict::SameWithinMargin);
    EXPECT_EQ(verdictOf({true, 5, 5, 1.0, 2.0, true}), PairVerdict::RealButTooSmall);
    EXPECT_EQ(verdictOf({true, 5, 5, 0.0, 2.0, false}), PairVerdict::CantTellYet);
}

TEST(Verdict, PlansAgainstAllPairsTogether)
{
    EXPECT_NEAR(pairAlpha(2, 20), 0.05, 1e-9);
    EXPECT_LT(pairAlpha(3, 20), 0.025);
    const SpreadOfTrays spread{10, 20, SpreadFrom::TheseTrays, {}};
    const auto two = traysNeeded(spread, 10, 3, 3, pairAlpha(2, 20));
    const auto five = traysNeeded(spread, 10, 3, 3, pairAlpha(5, 20));
    ASSERT_TRUE(two && five);
    EXPECT_GT(five->each, two->each);
    // More trays than that stand already: at least one more is asked for.
    EXPECT_EQ(traysNeeded(spread, 10, 40, 40, 0.05)->each, 41);
    EXPECT_FALSE(traysNeeded({0, {}, SpreadFrom::Default, {}}, 10, 3, 3, 0.05));
    EXPECT_NEAR(*smallestDifference(10, 17, 0.05), 10, 0.15);
    EXPECT_FALSE(smallestDifference(10, 1, 0.05));
}

class MarginTest : public testing::Test
{
protected:
    MarginTest()
    {
        season.nameTrials(2);
        season.facts.margins = {{TrialId{1}, grams(30)}, {TrialId{2}, grams(20)}};
        season.addTrays(kMix, {240, 250, 260}, {1}, TrialId{1});
        season.addTrays(kMesh, {240, 250, 260}, {1}, TrialId{1});
        for (SeasonRecord& record : season.facts.cut) {
            record.tray.seed = grams(25);
        }
    }
    [[nodiscard]] Margin margin(const ComparisonAsk& ask) const
    {
        return comparisonOf(season.facts, season.filter, ask).margin;
    }

    ComparisonSamples season;
};

TEST_F(MarginTest, IsTheTrialsOwn)
{
    EXPECT_EQ(margin({}), (Margin{30, MarginFrom::Trials}));
}

TEST_F(MarginTest, IsTheSmallestOfSeveralTrials)
{
    season.addTrays(kMix, {240, 250}, {1}, TrialId{2});
    season.addTrays(kMesh, {240, 250}, {1}, TrialId{2});
    EXPECT_EQ(margin({}), (Margin{20, MarginFrom::Trials}));
}

TEST_F(MarginTest, IsBroughtToTheUnitOfTheResponse)
{
    // A tray of 254 by 508 mm, 25 g of seed, 13 days.
    const double area = 0.254 * 0.508;
    EXPECT_NEAR(margin({Response::YieldPerArea, {}, {}, {}}).value, 30 / area, 1e-9);
    EXPECT_NEAR(margin({Response::YieldPerSeed, {}, {}, {}}).value, 30.0 / 25, 1e-9);
    EXPECT_NEAR(margin({Response::YieldPerDay, {}, {}, {}}).value, 30.0 / 13, 1e-9);
    EXPECT_EQ(margin({Response::DaysToHarvest, {}, {}, {}}).from, MarginFrom::Default);
}

TEST_F(MarginTest, AskedForComesFirst)
{
    EXPECT_EQ(margin({Response::YieldPerTray, {}, 12.0, {}}), (Margin{12, MarginFrom::Asked}));
    EXPECT_EQ(margin({Response::YieldPerTray, {}, {}, grams(15)}), (Margin{15, MarginFrom::Asked}));
    EXPECT_NEAR(margin({Response::YieldPerSeed, {}, {}, grams(15)}).value, 15.0 / 25, 1e-9);
    EXPECT_EQ(margin({Response::DaysToHarvest, {}, {}, grams(15)}),
              (Margin{1.3, MarginFrom::Default}));
}

TEST_F(MarginTest, IsElseATenthOfTheMean)
{
    season.facts.margins.clear();
    EXPECT_EQ(margin({}), (Margin{25, MarginFrom::Default}));
}

} // namespace
} // namespace plumule
