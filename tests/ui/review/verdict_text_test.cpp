#include "tests/ui/review/verdict_catalogue.h"
#include "ui/review/report_parts.h"
#include "ui/review/verdict_text.h"

namespace plumule::ui {
namespace {

TEST_F(Catalogue, OfAPlanUnderWay)
{
    SeasonComparison plan = unjudged(2, stats::NoVerdictReason::PlanRunning);
    plan.series.plannedTrials = 5;
    plan.trialsIn = 2;
    plan.isWaiting = true;
    expect("a plan under way", plan,
           "Steel mesh and Jute felt: 2 of 5 trials in; the answer comes with the fifth.");
    EXPECT_EQ(verdictWords(plan).headline, "2 of 5 trials in; the answer comes with the fifth.");
}

TEST_F(Catalogue, OfWhatWasThrownAwayAndHowItWasFed)
{
    SeasonComparison five = comparisonOf(5);
    judge(five, stats::Verdict::More, 4, 12, 21);
    five.discards = {{0, 24, 0, 0.01, true, false}, {1, 24, 5, 0.01, true, false}};
    const VerdictWords words = verdictWords(five);
    std::printf("%s\n", qPrintable(words.discards.join('\n')));
    EXPECT_EQ(
        words.discards.join('|').toStdString(),
        "5 of 24 trays on Jute felt were thrown away, none of the 24 others: its mean is that "
        "of the survivors.");
    Finding feeding;
    feeding.aspect = Aspect::Feeding;
    feeding.confounding = Confounding::Fully;
    feeding.media = {{0, {{"nutrient", 9}}, {}, 0}, {1, {{"no_nutrient", 9}}, {}, 0}};
    five.fairness = {feeding};
    five.pairs.front().as = ComparedAs::AsFed;
    expect(
        "as fed", five,
        "Steel mesh with nutrient gives 12 % more than Jute felt without nutrient (4 to 21 %): 5 "
        "sowings, on the varieties you grew.");
    EXPECT_TRUE(verdictWords(five).detail.startsWith("Which of the two did it"))
        << verdictWords(five).detail.toStdString();
}

// Of the first two media.
Finding finding(Aspect aspect, Confounding confounding)
{
    Finding made;
    made.aspect = aspect;
    made.confounding = confounding;
    made.worst = {0, 1};
    return made;
}

// The worst first: what the media had nothing in common in, then what was shared unevenly.
TEST_F(Catalogue, OfWhatMakesTheNextTrialFair)
{
    SeasonComparison five = comparisonOf(5);
    const std::vector<std::pair<Aspect, const char*>> kAdvice = {
        {Aspect::Feeding, "Feed Steel mesh and Jute felt alike in one trial"},
        {Aspect::Variety, "Grow the same varieties on Steel mesh and Jute felt"},
        {Aspect::Trial, "Grow Steel mesh and Jute felt in the same sowings"},
        {Aspect::SeedLot, "Sow Steel mesh and Jute felt from one seed lot"},
        {Aspect::SeedDensity, "Sow Steel mesh and Jute felt as densely"},
        {Aspect::Shelf, "Spread Steel mesh and Jute felt over the same shelves by lot"},
        {Aspect::Season, "Sow Steel mesh and Jute felt at the same times of the year"},
        {Aspect::DaysGrown, "Cut Steel mesh and Jute felt on the same day of growth"},
        {Aspect::PieceUses, "Use pieces of Steel mesh and Jute felt that are worn alike"},
        {Aspect::Person, "Let the same people sow Steel mesh and Jute felt"},
        {Aspect::Temperature, "Grow Steel mesh and Jute felt side by side in one climate"},
        {Aspect::Vpd, "Grow Steel mesh and Jute felt side by side in one climate"},
        {Aspect::DailyLight, "Give Steel mesh and Jute felt as much light a day"}};
    for (const auto& [aspect, advice] : kAdvice) {
        five.fairness = {finding(aspect, Confounding::Fully), finding(aspect, Confounding::Partly)};
        const QStringList said = adviceSentences(five);
        std::printf("%s\n", qPrintable(said.join('\n')));
        ASSERT_EQ(said.size(), 2);
        for (const QString& line : said) {
            EXPECT_TRUE(line.startsWith(advice)) << line.toStdString();
        }
        EXPECT_TRUE(said[0].contains("their difference may be that of")) << said[0].toStdString();
        EXPECT_TRUE(said[1].endsWith(" (unevenly shared so far).")) << said[1].toStdString();
    }
}

TEST_F(Catalogue, OfWhatIsSharedUnevenlyInSomeTrialsOrAllowedFor)
{
    SeasonComparison five = comparisonOf(5);
    five.fairness = {finding(Aspect::SeedLot, Confounding::Partly)};
    five.fairness.front().fullyInTrials = {"T4", "T6"};
    std::printf("%s\n", qPrintable(adviceSentences(five).join('\n')));
    EXPECT_EQ(adviceSentences(five).join('|').toStdString(),
              "Sow Steel mesh and Jute felt from one seed lot (wholly apart in trial T4, T6).");
    // What the answer accounts for is no advice, and is said with the sums.
    five.fairness = {finding(Aspect::Variety, Confounding::Partly)};
    five.fairness.front().isInModel = true;
    EXPECT_TRUE(adviceSentences(five).isEmpty());
    EXPECT_EQ(allowedForWords(five).toStdString(),
              "Not shared out evenly, but allowed for in the means: variety.");
}

TEST_F(Catalogue, OfGroups)
{
    SeasonComparison one = comparisonOf(1);
    judge(one, stats::Verdict::More, 2, 13, 24);
    one.groupPairs = one.pairs;
    one.groups = {{"reusable", {0}, 310.7, 3.0, false}, {"single_use", {1}, 276.1, {}, false}};
    const VerdictWords words = verdictWords(one);
    std::printf("%s %s\n", qPrintable(words.headline), qPrintable(words.detail));
    EXPECT_EQ(words.headline.toStdString(), "In trial T8 the reusable group gave 13 % more than "
                                            "the single-use group (2 to 24 %). Whether "
                                            "it will next time, one sowing can't say.");
    EXPECT_EQ(words.detail.toStdString(),
              "Members of the reusable group lie within 3 % of each other, not told apart.");
}

TEST(VerdictWords, SayAtOnceWhenNothingCanBeToldApart)
{
    SeasonComparison five = comparisonOf(5);
    judge(five, stats::Verdict::CantTellYet, -3, 7, 18);
    five.pairs.front().more = MoreTrials{4, 4};
    five.pairs.push_back(five.pairs.front());
    EXPECT_EQ(verdictWords(five).headline.toStdString(),
              "None of the 2 media can be told apart yet. About 4 more trials with 4 trays of "
              "each.");
}

TEST(VerdictWords, CallForTrialsOverTheYearWhereTheyAreBunched)
{
    SeasonComparison five = comparisonOf(5);
    EXPECT_TRUE(cautionWords(five).isEmpty());
    for (std::size_t i = 0; i < five.sowings.size(); ++i) {
        five.sowings[i].sownOn = date(2026, 1, 5) + 14 * static_cast<int>(i);
    }
    EXPECT_TRUE(cautionWords(five).join(' ').contains("Spread trials over the year"));
    five.isSideMetric = true;
    five.level = 0.001;
    EXPECT_TRUE(cautionWords(five).front().startsWith("A side result"));
}

SeasonComparison alikeIn(int sowings)
{
    SeasonComparison comparison = comparisonOf(sowings);
    judge(comparison, stats::Verdict::SameWithinMargin, -2, 1, 3);
    for (TrialPart& part : comparison.byTrial) {
        part.pairs = comparison.pairs;
    }
    return comparison;
}

TEST(SowingsChart, SaysWhereItDrawsNotAllSowings)
{
    EXPECT_EQ(leftOutWords(alikeIn(40), 0), QString());
    EXPECT_EQ(leftOutWords(alikeIn(70), 0),
              "40 of 70 sowings are drawn, trials first, then the newest; all of them count.");
    const ChartSpec chart = sowingsChart(alikeIn(70), 0);
    ASSERT_EQ(chart.rows.size(), 41U);
    EXPECT_EQ(chart.rows.front(), "T38");
    EXPECT_EQ(chart.rows.back(), "All together");
    for (const ChartColumn& column : chart.columns) {
        EXPECT_EQ(column.cells.size(), chart.rows.size());
    }
    EXPECT_EQ(chart.columns.front().cells.front(), "4, 4");
    EXPECT_EQ(chart.columns.front().cells.back(), "280, 280");
}

} // namespace
} // namespace plumule::ui
