#include "core/review/comparison/variety_comparison.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

using stats::NoVerdictReason;
using stats::Verdict;

ComparedMedium mediumOf(std::int64_t id)
{
    ComparedMedium medium;
    medium.medium.id = {id};
    return medium;
}

MediaPair pairOf(std::size_t a, std::size_t b, double percent, Verdict verdict)
{
    MediaPair pair;
    pair.a = a;
    pair.b = b;
    pair.percent = percent;
    pair.verdict = verdict;
    return pair;
}

Sowing sowingOf(const std::vector<std::string>& varieties)
{
    Sowing sowing;
    sowing.varieties = varieties;
    return sowing;
}

// A season of radish and pea on media 1, 2 and 3; peas grew on 3 and 2 alone, so that they are
// numbered otherwise in their own comparison.
class VarietyComparisonTest : public testing::Test
{
protected:
    VarietyComparisonTest()
    {
        whole.means = {mediumOf(1), mediumOf(2), mediumOf(3)};
        whole.sowings = {sowingOf({"Radish"}), sowingOf({"Radish", "Pea"})};
        whole.scope = stats::AnswerScope::NextSowing;
        whole.level = 0.01;
        whole.series.kind = SeriesKind::Season;
        whole.gate = stats::VarietyGate();
        whole.gate->isOpen = true;
        VarietyPart peas;
        peas.id = {2};
        peas.pairs = {pairOf(2, 1, 30, Verdict::More)}; // medium 3 over medium 2
        whole.byVariety = {peas};

        alone.means = {mediumOf(2), mediumOf(3)};
        alone.pairs = {pairOf(0, 1, 12, Verdict::NoVerdict)};
        alone.pairs[0].why = NoVerdictReason::Filtered;
        alone.series.kind = SeriesKind::ByHand;
        alone.scope = stats::AnswerScope::TheseSowings;
        alone.level = 0.05;
        alone.n = 17;
    }

    SeasonComparison of(VarietyId variety, const char* name)
    {
        return ofOneVariety(whole, alone, variety, name);
    }

    SeasonComparison whole;
    SeasonComparison alone;
};

TEST_F(VarietyComparisonTest, TakesTheVerdictsOutOfTheSeriesUnderItsOwnNumbers)
{
    const SeasonComparison peas = of({2}, "Pea");
    ASSERT_EQ(peas.pairs.size(), 1u);
    EXPECT_EQ(peas.means[peas.pairs[0].a].medium.id, MediumId{3});
    EXPECT_EQ(peas.means[peas.pairs[0].b].medium.id, MediumId{2});
    EXPECT_EQ(peas.pairs[0].percent, 30);
    EXPECT_EQ(peas.pairs[0].verdict, Verdict::More);
    EXPECT_EQ(peas.level, 0.01);
    EXPECT_EQ(peas.scope, stats::AnswerScope::NextSowing);
    EXPECT_EQ(peas.series.kind, SeriesKind::Season);
    EXPECT_TRUE(peas.gate && peas.gate->isOpen);
    EXPECT_EQ(peas.n, 17) << "trays are the variety's own";
    EXPECT_EQ(peas.variety, VarietyId{2});
    EXPECT_EQ(peas.varietyName, "Pea");
}

TEST_F(VarietyComparisonTest, TakesThemTheSameWayRoundToo)
{
    whole.byVariety[0].pairs = {pairOf(1, 2, 8, Verdict::CantTellYet)}; // medium 2 over medium 3
    const SeasonComparison peas = of({2}, "Pea");
    EXPECT_EQ(peas.means[peas.pairs[0].a].medium.id, MediumId{2});
    EXPECT_EQ(peas.pairs[0].percent, 8);
}

TEST_F(VarietyComparisonTest, APairThatTheSeriesSaysNothingOfHasFewSowings)
{
    whole.byVariety.clear();
    const SeasonComparison peas = of({2}, "Pea");
    EXPECT_EQ(peas.pairs[0].verdict, Verdict::NoVerdict);
    EXPECT_EQ(peas.pairs[0].why, NoVerdictReason::FewSowings) << "it was not filtered";
    alone.pairs[0].why = NoVerdictReason::NeverMet;
    EXPECT_EQ(of({2}, "Pea").pairs[0].why, NoVerdictReason::NeverMet) << "another reason stays";
}

TEST_F(VarietyComparisonTest, AVarietyThatGrewAloneHasTheWholeAnswer)
{
    whole.sowings = {sowingOf({"Radish"}), sowingOf({"Radish"})};
    whole.pairs = {pairOf(0, 1, 5, Verdict::SameWithinMargin)};
    whole.n = 40;
    const SeasonComparison radish = of({1}, "Radish");
    EXPECT_EQ(radish.n, 40);
    EXPECT_EQ(radish.pairs.at(0).verdict, Verdict::SameWithinMargin);
    EXPECT_EQ(radish.means.size(), 3u);
    EXPECT_EQ(radish.variety, VarietyId{1});
    EXPECT_EQ(radish.varietyName, "Radish");
    EXPECT_EQ(of({2}, "Pea").n, 17) << "another one did not";
}

} // namespace
} // namespace plumule
