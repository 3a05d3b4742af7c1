#include "core/journal/review/review_answers.h"
#include "tests/core/review/comparison/comparison_samples.h"

#include "core/review/comparison/margin.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using stats::NoVerdictReason;
using stats::Verdict;

TEST(OneSowing, SaysWhatMediaGaveOfTheDearerOrHeavierFirst)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251});
    season.addTrays(kMesh, {298, 300, 303, 299});
    const SeasonComparison answer = season.compare();
    EXPECT_EQ(answer.scope, stats::AnswerScope::TheseSowings);
    EXPECT_EQ(answer.trials, 1);
    EXPECT_EQ(answer.level, 0.05);
    const MediaPair& pair = answer.pairs.at(0);
    EXPECT_EQ(pair.verdict, Verdict::More);
    EXPECT_EQ(answer.means[pair.a].medium.name, "Mesh");
    const double ratio = std::pow(298.0 * 300 * 303 * 299 / (248.0 * 250 * 252 * 251), 0.25);
    EXPECT_NEAR(*pair.percent, 100 * (ratio - 1), 1e-9);
    EXPECT_NEAR(*pair.difference, *answer.means[1].mean - *answer.means[0].mean, 1e-9);
    EXPECT_GT(*pair.lowerPercent, 10);
    EXPECT_FALSE(pair.more);
    ASSERT_EQ(answer.byTrial.size(), 1u);
    EXPECT_EQ(answer.byTrial[0].trays, (std::vector<int>{4, 4}));
}

TEST(OneSowing, IsTheSameOnlyWhereThePrintedIntervalLiesWithinTheMargin)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251, 247, 252});
    season.addTrays(kMesh, {249, 251, 253, 247, 250, 251});
    const MediaPair pair = season.onlyPair(8);
    EXPECT_EQ(pair.verdict, Verdict::SameWithinMargin);
    EXPECT_LT(*pair.upperPercent, 8);
    EXPECT_GT(*pair.lowerPercent, 100 * (1 / 1.08 - 1));
    EXPECT_EQ(season.onlyPair(0.2).verdict, Verdict::CantTellYet);
}

TEST(OneSowing, IsRealButTooSmallWhereBothHold)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251, 250});
    season.addTrays(kMesh, {254, 255, 256, 255});
    EXPECT_EQ(season.onlyPair(8).verdict, Verdict::RealButTooSmall);
}

TEST(OneSowing, CantTellYetSaysHowManyTrialsItTakes)
{
    ComparisonSamples season;
    season.addTrays(kMix, {220, 250, 280});
    season.addTrays(kMesh, {230, 260, 290, 260});
    const MediaPair pair = season.onlyPair();
    EXPECT_EQ(pair.verdict, Verdict::CantTellYet);
    ASSERT_TRUE(pair.more && pair.more->trials);
    EXPECT_GE(*pair.more->trials, 2) << "three sowings at least";
    EXPECT_EQ(pair.more->traysEach, 4);
}

TEST(OneSowing, OneTrayEachGivesNoVerdictAndPlansByTheRoomsSpread)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240});
    season.addTrays(kMesh, {260});
    const MediaPair byDefault = season.onlyPair();
    EXPECT_EQ(byDefault.verdict, Verdict::NoVerdict);
    EXPECT_EQ(byDefault.why, NoVerdictReason::OneTrayEach);
    EXPECT_NEAR(*byDefault.difference, 20, 1e-9);
    EXPECT_FALSE(byDefault.lower);
    ASSERT_TRUE(byDefault.more && byDefault.more->trials);
    for (const double yield : {294.0, 300.0, 306.0, 294.0, 306.0}) {
        season.facts.past.push_back({kMix, {2}, std::nullopt, date(2025, 11, 3), grams(yield)});
    }
    const MediaPair bySteadyRoom = season.onlyPair();
    EXPECT_LT(*bySteadyRoom.more->trials, *byDefault.more->trials) << "a spread of 2, not of 10 %";
}

TEST(OneSowing, TraysThatAreAllAlikeGiveNothingToJudgeBy)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 250, 250});
    season.addTrays(kMesh, {260, 260, 260});
    EXPECT_EQ(season.onlyPair().why, NoVerdictReason::NoSpread);
}

TEST(OneSowing, IsNotComparableWhereNoVarietyGrewOnBoth)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252}, {1});
    season.addTrays(kMesh, {398, 400, 403}, {2});
    const MediaPair pair = season.onlyPair();
    EXPECT_EQ(pair.verdict, Verdict::NotComparable);
    EXPECT_EQ(pair.why, NoVerdictReason::NeverMet);
    EXPECT_FALSE(pair.difference);
}

TEST(OneSowing, AnswersNothingBeforeItsLastTrayIsIn)
{
    ComparisonSamples season;
    season.addTrial(1, 10, {250, 252, 251}, {298, 301, 300});
    season.facts.standings[TrialId{1}] = {date(2026, 1, 11), 7, 0};
    season.series.kind = SeriesKind::Trial;
    season.filter.trials = {TrialId{1}};
    const SeasonComparison waits = season.compare();
    EXPECT_TRUE(waits.isWaiting);
    EXPECT_EQ(waits.pairs.at(0).why, NoVerdictReason::PlanRunning);
    EXPECT_FALSE(waits.pairs[0].lower);
    EXPECT_TRUE(waits.means[0].mean);
    EXPECT_EQ(waits.sowings.at(0).in, 6);
    EXPECT_EQ(waits.sowings[0].trays, 7);
    season.facts.standings[TrialId{1}].sown = 6;
    EXPECT_EQ(season.compare().pairs.at(0).verdict, Verdict::More);
    season.facts.standings[TrialId{1}].unsown = 2;
    EXPECT_TRUE(season.compare().isWaiting);
}

TEST(Confounding, ByShelfOrSeedLotIsNotComparableByFeedingIsAsFed)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252, 251});
    season.addTrays(kMesh, {298, 300, 303, 299});
    for (SeasonRecord& record : season.facts.trays) {
        record.use.waterings = 10;
        record.nutrientWaterings = record.tray.medium == kMesh ? 4 : 0;
    }
    const MediaPair asFed = season.onlyPair();
    EXPECT_EQ(asFed.verdict, Verdict::More);
    EXPECT_EQ(asFed.as, ComparedAs::AsFed);
    for (SeasonRecord& record : season.facts.trays) {
        record.tray.seedLot = SeedLotId{record.tray.medium.value};
    }
    const MediaPair lots = season.onlyPair();
    EXPECT_EQ(lots.verdict, Verdict::NotComparable);
    EXPECT_EQ(lots.mixedWith, Aspect::SeedLot);
    for (SeasonRecord& record : season.facts.trays) {
        record.tray.seedLot = SeedLotId{1};
        record.shelf = ShelfId{record.tray.medium.value};
    }
    EXPECT_EQ(season.onlyPair().mixedWith, Aspect::Shelf);
}

// Trays thrown away change what a mean is one of.
TEST(Discards, ThatDifferLeaveTheVerdictToTheYieldPerTraySown)
{
    ComparisonSamples season;
    season.addTrays(kMix, std::vector<double>(12, 250));
    season.addTrays(kMesh, std::vector<double>(12, 300));
    for (std::size_t i = 0; i < season.facts.trays.size(); ++i) {
        season.facts.trays[i].yield += grams(static_cast<double>(i % 5));
    }
    for (std::size_t i = 0; i < 6; ++i) {
        season.discard(i);
        season.facts.trays[i].tray.endedOn = date(2026, 2, 10);
    }
    const SeasonComparison answer = season.compare();
    ASSERT_EQ(answer.discards.size(), 2u);
    EXPECT_EQ(answer.discards[0].sown, 12);
    EXPECT_EQ(answer.discards[0].discarded, 6);
    EXPECT_TRUE(answer.discards[0].differs);
    EXPECT_TRUE(answer.discards[0].isInOneTrial);
    EXPECT_EQ(answer.pairs.at(0).why, NoVerdictReason::SurvivorsOnly);
    EXPECT_EQ(answer.n, 18);
    const SeasonComparison sown = season.compare(Response::YieldPerTraySown);
    EXPECT_TRUE(sown.isSideMetric);
    EXPECT_NE(sown.pairs.at(0).why, NoVerdictReason::SurvivorsOnly);
    EXPECT_NEAR(*sown.means[0].mean, (250 * 6 + (1 + 2 + 3 + 4 + 0 + 1)) / 12.0, 1.0);
}

TEST(Discards, CarryTheirCost)
{
    ComparisonSamples season;
    season.price(PriceItem::Medium, 1, MediumId{1});
    season.price(PriceItem::Medium, 2, MediumId{2});
    season.price(PriceItem::Washing, 0.1);
    season.addTrays(kMix, {200, 200});
    season.addTrays(kMesh, {200, 200});
    season.facts.trays[0].tray.state = TrayState::Harvested;
    const double whole = *season.compare(Response::CostPerGram).means[0].mean;
    season.discard(1);
    season.facts.trays[1].tray.endedOn = date(2026, 2, 10);
    EXPECT_NEAR(*season.compare(Response::CostPerGram).means[0].mean, 2 * whole, 1e-9);
    EXPECT_NEAR(*season.review().media.at(0).costPerGram, 2 * whole, 1e-9);
}

class SeriesTest : public testing::Test
{
protected:
    // Mesh gives a tenth more, but for what differs from trial to trial.
    void addTrials(int count)
    {
        for (int trial = 1; trial <= count; ++trial) {
            const double base = 240 + 10 * trial;
            const double off = 1 + 0.004 * (trial % 3 - 1);
            season.addTrial(trial, 7 * trial, {base - 3, base, base + 3},
                            {1.1 * base * off - 3, 1.1 * base * off, 1.1 * base * off + 3});
        }
    }

    SeriesTest() { season.series = {SeriesKind::Season, "2026", std::nullopt, {}}; }

    ComparisonSamples season;
};

TEST_F(SeriesTest, SaysFromThreeSowingsOnWhatToExpectOfTheNext)
{
    addTrials(2);
    EXPECT_EQ(season.compare().scope, stats::AnswerScope::TheseSowings);
    addTrials(5);
    season.facts.trays.erase(season.facts.trays.begin(), season.facts.trays.begin() + 12);
    const SeasonComparison answer = season.compare();
    EXPECT_EQ(answer.scope, stats::AnswerScope::NextSowing);
    EXPECT_EQ(answer.trials, 5);
    EXPECT_NEAR(*answer.level, 0.04 / 5, 1e-12) << "shared by all looks";
    EXPECT_EQ(answer.pairs.at(0).verdict, Verdict::More);
    EXPECT_EQ(answer.pairs[0].trialsShared, 5);
    EXPECT_NEAR(*answer.pairs[0].percent, 10, 0.2);
    EXPECT_EQ(answer.byTrial.size(), 5u);
    EXPECT_TRUE(answer.trialSpreadPercent);
    EXPECT_EQ(answer.sowings.front().code, "T1");
}

TEST_F(SeriesTest, AnswersAPlanOnceWithItsLastTrial)
{
    season.series.plannedTrials = 4;
    addTrials(3);
    const SeasonComparison waits = season.compare();
    EXPECT_TRUE(waits.isWaiting);
    EXPECT_EQ(waits.trialsIn, 3);
    EXPECT_EQ(waits.pairs.at(0).why, NoVerdictReason::PlanRunning);
    season.facts.trays.clear();
    addTrials(4);
    const SeasonComparison four = season.compare();
    EXPECT_EQ(four.level, 0.05);
    EXPECT_EQ(four.pairs.at(0).verdict, Verdict::More);
    season.facts.trays.clear();
    addTrials(6);
    const SeasonComparison six = season.compare();
    EXPECT_EQ(six.trials, 4) << "later trials are of the next season";
    EXPECT_EQ(six.pairs.at(0).percent, four.pairs.at(0).percent);
}

TEST_F(SeriesTest, LeavesOutASowingThatStillGrows)
{
    addTrials(4);
    season.facts.unfinished.push_back({season.facts.trays.back().tray, false, std::nullopt,
                                       season.facts.trays.back().trialSownOn});
    season.facts.unfinished.back().tray.id = TrayId{999};
    season.facts.unfinished.back().tray.state = TrayState::Growing;
    const SeasonComparison answer = season.compare();
    EXPECT_EQ(answer.trials, 3);
    EXPECT_EQ(answer.n, 18);
    EXPECT_FALSE(answer.trays.back().isIn);
}

TEST_F(SeriesTest, SharesTheLevelAmongSideMetrics)
{
    addTrials(5);
    EXPECT_FALSE(season.compare(Response::YieldPerArea).isSideMetric) << "it says what yield says";
    const SeasonComparison days = season.compare(Response::YieldPerDay);
    EXPECT_TRUE(days.isSideMetric);
    EXPECT_NEAR(*days.level, 0.04 / 5 / kSideMetrics, 1e-12);
}

TEST_F(SeriesTest, ChosenByHandGivesIntervalsAndNoVerdict)
{
    addTrials(5);
    season.filter.trials = {TrialId{1}, TrialId{2}, TrialId{3}, TrialId{4}};
    const MediaPair pair = season.compare().pairs.at(0);
    EXPECT_EQ(pair.why, NoVerdictReason::Filtered);
    EXPECT_TRUE(pair.lowerPercent);
    season.filter.trials.clear();
    season.filter.shelves = {ShelfId{1}};
    EXPECT_EQ(season.compare().series.kind, SeriesKind::ByHand);
}

TEST_F(SeriesTest, OneVarietyHasItsOwnAnswerOutOfTheSeries)
{
    addTrials(5);
    season.filter.varieties = {VarietyId{1}};
    const SeasonComparison alone = season.compare();
    EXPECT_EQ(alone.pairs.at(0).verdict, Verdict::More) << "there is no other";
    EXPECT_EQ(alone.varietyName, "Radish");
    for (int trial = 11; trial <= 14; ++trial) {
        const double base = 100 + trial;
        season.addTrial(trial, 3 * trial, {base - 3, base, base + 2},
                        {0.7 * base - 2, 0.7 * base, 0.7 * base + 2}, {2});
    }
    const SeasonComparison radish = season.compare();
    ASSERT_TRUE(radish.gate && radish.gate->isOpen);
    EXPECT_EQ(radish.pairs.at(0).verdict, Verdict::More);
    season.filter.varieties = {VarietyId{2}};
    const SeasonComparison pea = season.compare();
    EXPECT_EQ(pea.pairs.at(0).verdict, Verdict::More) << "of the mix over the mesh";
    EXPECT_EQ(pea.means[pea.pairs[0].a].medium.name, "Loose mix");
    EXPECT_LT(*pea.level, 0.05);
    season.filter.varieties = {VarietyId{1}, VarietyId{2}};
    EXPECT_EQ(season.compare().pairs.at(0).why, NoVerdictReason::Filtered);
}

// Common practice, no source: two reusable meshes of 306.1 and 315.3 g against soil of 276.1 g.
TEST(Groups, AnswerAsMediaDo)
{
    ComparisonSamples season;
    Medium other = season.facts.media.at(kMesh);
    other.id = {3};
    other.name = "Other mesh";
    season.facts.media[other.id] = other;
    season.addTrays(kMix, {276.1});
    season.addTrays(kMesh, {306.1});
    season.addTrays({3}, {315.3});
    ComparisonAsk ask;
    ask.groups = Grouping::Reuse;
    const SeasonComparison answer = season.compare(ask);
    ASSERT_EQ(answer.groups.size(), 2u);
    EXPECT_EQ(answer.groups[0].name, "single_use");
    EXPECT_EQ(answer.groups[1].members, (std::vector<std::size_t>{1, 2}));
    EXPECT_NEAR(*answer.groups[1].mean, 310.7, 0.05);
    EXPECT_NEAR(*answer.groups[0].mean, 276.1, 1e-9);
    ASSERT_EQ(answer.groupPairs.size(), 1u);
    const MediaPair& pair = answer.groupPairs[0];
    EXPECT_EQ(answer.groups[pair.a].name, "reusable");
    EXPECT_NEAR(*pair.difference, 34.6, 0.05);
    EXPECT_EQ(pair.verdict, Verdict::NoVerdict);
    EXPECT_EQ(pair.why, NoVerdictReason::OneTrayEach);
    EXPECT_NEAR(*answer.groups[1].widestPercent, 3.0, 0.05);
    ask.groups = Grouping::Own;
    EXPECT_TRUE(season.compare(ask).groups.empty());
    season.facts.mediumGroups = {{kMix, "soil"}, {kMesh, "cloth"}};
    EXPECT_EQ(season.compare(ask).groups.size(), 2u);
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
    }

    ComparisonSamples season;
};

TEST_F(MarginTest, IsTheSmallestOfTheTrialsAsAShareOfTheYield)
{
    EXPECT_EQ(season.compare().margin, (Margin{12, MarginFrom::Trials}));
    season.addTrays(kMix, {240, 250, 260}, {1}, TrialId{2});
    EXPECT_EQ(season.compare().margin, (Margin{8, MarginFrom::Trials}));
    EXPECT_EQ(season.compare(Response::YieldPerDay).margin, (Margin{8, MarginFrom::Trials}));
    EXPECT_EQ(season.compare(Response::DaysToHarvest).margin.from, MarginFrom::Default);
}

TEST_F(MarginTest, AskedForComesFirstElseItIsTenPercent)
{
    EXPECT_EQ(season.compare(Response::YieldPerTray, 5).margin, (Margin{5, MarginFrom::Asked}));
    season.facts.margins.clear();
    EXPECT_EQ(season.compare().margin, (Margin{10, MarginFrom::Default}));
}

TEST_F(MarginTest, IsSymmetricOnTheLogScaleAndAShareOfTheMeanOnALinearOne)
{
    const ComparedTrays trays = comparedTrays(season.facts, season.filter, {});
    EXPECT_NEAR(marginOnScale({10, {}}, stats::CellScale::Log, trays), std::log(1.1), 1e-12);
    EXPECT_NEAR(marginOnScale({10, {}}, stats::CellScale::Linear, trays), 25, 1e-9);
}

} // namespace
} // namespace plumule
