#include "ui/review/ageing_card.h"
#include "ui/review/payback_text.h"
#include "ui/review/verdict_sentence.h"
#include "ui/review/verdict_text.h"

#include <cstdio>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

Payback meshPayback()
{
    Payback payback;
    payback.medium.name = "Steel mesh";
    payback.against.name = "Coir mix";
    payback.at = 16;
    payback.hasBand = true;
    payback.low = 10;
    payback.high = 35;
    return payback;
}

TEST(PaybackWords, SaysTheUseAndHowSureItIs)
{
    Payback payback = meshPayback();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (95% interval 10 to 35).");
    payback.high.reset();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (95% interval 10 to never).");
    payback.at.reset();
    payback.low.reset();
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh never pays back against Coir mix (as these trays differ, mostly never).");
    payback.at = 16;
    payback.hasBand = false;
    EXPECT_EQ(paybackWords({payback}).join('|'),
              "Steel mesh pays back against Coir mix at use 16 (no interval from fewer than three "
              "trays of each).");
}

TEST(AgeingWords, TellsAClearSlopeFromNone)
{
    PieceAgeing ageing;
    ageing.medium.name = "Steel mesh";
    ageing.trays = 38;
    ageing.pieces = 6;
    ageing.mostUses = 9;
    EXPECT_TRUE(ageingWords(ageing).contains("can't tell"));
    ageing.slope = -6.1;
    ageing.lower = -10.5;
    ageing.upper = -1.8;
    EXPECT_EQ(ageingWords(ageing).toStdString(),
              "Steel mesh yields 6.1 g a tray less with each further use (95% interval −10.5 to "
              "−1.8; 38 trays on 6 pieces, up to their use 9).");
    ageing.upper = 0.4;
    EXPECT_TRUE(ageingWords(ageing).contains("no ageing to be told"));
}

// Steel mesh and jute felt in that many trials.
SeasonComparison comparisonOf(int trials, Response response = Response::YieldPerTray)
{
    SeasonComparison comparison;
    comparison.ask.response = response;
    comparison.series.kind = SeriesKind::Season;
    comparison.scope =
        trials < 3 ? stats::AnswerScope::TheseSowings : stats::AnswerScope::NextSowing;
    comparison.trials = trials;
    comparison.means.resize(2);
    comparison.means[0].medium.name = "Steel mesh";
    comparison.means[1].medium.name = "Jute felt";
    for (int trial = 0; trial < trials; ++trial) {
        Sowing sowing;
        sowing.trial = TrialId{trial + 1};
        sowing.code = "T" + std::to_string(trial + 8);
        sowing.sownOn = date(2026, 1, 5) + 60 * trial;
        comparison.sowings.push_back(sowing);
        comparison.byTrial.push_back({static_cast<std::size_t>(trial), {4, 4}, {}});
    }
    MediaPair pair;
    pair.b = 1;
    pair.trialsShared = trials;
    comparison.pairs = {pair};
    return comparison;
}

void judge(SeasonComparison& comparison, stats::Verdict verdict, double low, double mid,
           double high)
{
    MediaPair& pair = comparison.pairs.front();
    pair.verdict = verdict;
    pair.percent = mid;
    pair.lowerPercent = low;
    pair.upperPercent = high;
    pair.lower = low / 10;
    pair.difference = mid / 10;
    pair.upper = high / 10;
}

// Prints situation and sentence, so that they can be read from top to bottom.
class Catalogue : public testing::Test
{
protected:
    static void expect(const char* situation, const SeasonComparison& comparison,
                       const char* sentence)
    {
        const QString said = pairSentence(comparison.pairs.front(), comparison);
        std::printf("%-44s %s\n", situation, qPrintable(said));
        EXPECT_EQ(said.toStdString(), sentence) << situation;
    }
    static SeasonComparison unjudged(int trials, stats::NoVerdictReason why)
    {
        SeasonComparison comparison = comparisonOf(trials);
        comparison.pairs.front().why = why;
        return comparison;
    }
};

TEST_F(Catalogue, OfWhatMediaGaveAndGive)
{
    SeasonComparison one = comparisonOf(1);
    judge(one, stats::Verdict::More, 2, 13, 24);
    expect("one trial, more", one,
           "In trial T8 Steel mesh gave 13 % more than Jute felt (2 to 24 %). Whether it will next "
           "time, one sowing can't say.");
    SeasonComparison two = comparisonOf(2);
    judge(two, stats::Verdict::More, 2, 13, 24);
    expect("two trials, more", two,
           "In the trials T8 and T9 Steel mesh gave 13 % more than Jute felt (2 to 24 %). Whether "
           "it will next time, two sowings can't say.");
    SeasonComparison five = comparisonOf(5);
    judge(five, stats::Verdict::More, 4, 12, 21);
    expect("five trials, more", five,
           "Steel mesh gives 12 % more than Jute felt (4 to 21 %): 5 sowings, on the varieties you "
           "grew.");
    judge(five, stats::Verdict::SameWithinMargin, -6, 1, 8);
    expect("five trials, the same", five,
           "Steel mesh and Jute felt: no difference that matters, within 10 % either way (−6 to 8 "
           "%).");
    judge(five, stats::Verdict::RealButTooSmall, 1, 4, 7);
    expect("five trials, real but small", five,
           "Steel mesh gives 4 % more than Jute felt (1 to 7 %): real, but not the 10 % you care "
           "about.");
    judge(five, stats::Verdict::More, 0.3, 6, 12);
    expect("a bound beside nothing", five,
           "Steel mesh gives 6 % more than Jute felt (0.3 to 12.0 %): 5 sowings, on the varieties "
           "you grew.");
    five.variety = VarietyId{1};
    five.varietyName = "Radish";
    expect("of one variety", five,
           "Steel mesh gives 6 % more than Jute felt (0.3 to 12.0 %): 5 sowings of Radish.");
}

TEST_F(Catalogue, OfWhatCantBeToldYet)
{
    SeasonComparison five = comparisonOf(5);
    judge(five, stats::Verdict::CantTellYet, -3, 7, 18);
    five.pairs.front().more = MoreTrials{4, 4};
    expect(
        "five trials, can't tell yet", five,
        "Steel mesh and Jute felt: can't tell yet (−3 to 18 %). About 4 more trials with 4 trays "
        "of each.");
    five.pairs.front().more = MoreTrials{std::nullopt, 4};
    expect("… nor in a year", five,
           "Steel mesh and Jute felt: can't tell yet (−3 to 18 %). More than a year of trials.");
}

TEST_F(Catalogue, OfEachMetric)
{
    const std::pair<Response, const char*> said[] = {
        {Response::YieldPerTraySown, "Steel mesh gives 12 % more a tray sown than Jute felt"},
        {Response::YieldPerArea, "Steel mesh gives 12 % more by area than Jute felt"},
        {Response::YieldPerSeed, "Steel mesh gives 12 % more for its seed than Jute felt"},
        {Response::YieldPerDay, "Steel mesh gives 12 % more a day than Jute felt"},
        {Response::CostPerGram, "A gram from Steel mesh costs 12 % more than from Jute felt"},
        {Response::HeightOnDay, "On Steel mesh they stand 12 % taller than on Jute felt"},
        {Response::Residue, "Steel mesh leaves 12 % more residue than Jute felt"},
        {Response::Work, "Steel mesh takes 12 % more work than Jute felt"}};
    for (const auto& [response, sentence] : said) {
        SeasonComparison five = comparisonOf(5, response);
        judge(five, stats::Verdict::More, 4, 12, 21);
        expect(toText(response), five,
               (std::string(sentence) + " (4 to 21 %): 5 sowings, on the varieties you grew.")
                   .c_str());
    }
    SeasonComparison days = comparisonOf(5, Response::DaysToHarvest);
    days.scale = stats::CellScale::Linear;
    days.grandMean = 12;
    judge(days, stats::Verdict::More, 4, 12, 21);
    expect("days", days,
           "Steel mesh takes 1.2 days longer than Jute felt (0.4 to 2.1 days): 5 sowings, on the "
           "varieties you grew.");
}

TEST_F(Catalogue, OfWhyThereIsNoVerdict)
{
    using stats::NoVerdictReason;
    SeasonComparison apart = unjudged(0, NoVerdictReason::NeverMet);
    apart.pairs.front().verdict = stats::Verdict::NotComparable;
    expect("never met", apart,
           "Steel mesh and Jute felt never grew in one sowing: not comparable.");
    apart.pairs.front().mixedWith = Aspect::Shelf;
    expect("a shelf of its own", apart,
           "Steel mesh and Jute felt never stood on one shelf: not comparable.");
    apart.pairs.front().mixedWith = Aspect::SeedLot;
    expect("a lot of its own", apart,
           "Steel mesh and Jute felt were never sown from one seed lot: not comparable.");
    expect("nothing harvested", unjudged(1, NoVerdictReason::NothingHarvested),
           "Steel mesh and Jute felt: of one of them nothing was harvested.");
    expect("fewer than three", unjudged(5, NoVerdictReason::FewSowings),
           "Steel mesh and Jute felt: no verdict from fewer than three sowings with both.");
    SeasonComparison single = unjudged(1, NoVerdictReason::OneTrayEach);
    single.pairs.front().more = MoreTrials{3, 2};
    expect("one tray each", single,
           "Steel mesh and Jute felt: no verdict from one tray of each. About 3 more trials with 2 "
           "trays of each.");
    expect("too few trays", unjudged(1, NoVerdictReason::FewDegrees),
           "Steel mesh and Jute felt: no verdict: too few trays to judge chance by.");
    expect("all alike", unjudged(1, NoVerdictReason::NoSpread),
           "Steel mesh and Jute felt: no verdict: all alike, there is nothing to judge chance by.");
    expect("survivors", unjudged(5, NoVerdictReason::SurvivorsOnly),
           "Steel mesh and Jute felt: no verdict on survivors; the yield per tray sown answers.");
    expect("chosen by hand", unjudged(5, NoVerdictReason::Filtered),
           "Steel mesh and Jute felt: no verdict on trays chosen by hand.");
    expect("varieties alike", unjudged(5, NoVerdictReason::VarietiesAlike),
           "Steel mesh and Jute felt: media don't differ otherwise from variety to variety; the "
           "answer over all of them holds.");
}

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
        {Aspect::Person, "Let the same people sow Steel mesh and Jute felt"}};
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

} // namespace
} // namespace plumule::ui
