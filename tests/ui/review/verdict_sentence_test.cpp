#include "tests/ui/review/verdict_catalogue.h"

namespace plumule::ui {
namespace {

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

TEST_F(Catalogue, OfTraysOutsideTrials)
{
    SeasonComparison one = comparisonOf(1);
    one.sowings.front().trial.reset();
    judge(one, stats::Verdict::SameWithinMargin, -6, 1, 8);
    expect("one sowing", one,
           "In this sowing Steel mesh and Jute felt: no difference that matters, within 10 % "
           "either way (−6 to 8 %).");
    SeasonComparison two = comparisonOf(2);
    two.sowings.back().trial.reset();
    judge(two, stats::Verdict::CantTellYet, -6, 1, 8);
    expect("a trial and a sowing", two,
           "In these two sowings Steel mesh and Jute felt: can't tell yet (−6 to 8 %).");
}

TEST_F(Catalogue, OfAMarginThatIsNoWholeNumber)
{
    SeasonComparison five = comparisonOf(5);
    five.margin.percent = 2.5;
    judge(five, stats::Verdict::SameWithinMargin, -2, 0.6, 2.2);
    expect("a margin of 2.5 %", five,
           "Steel mesh and Jute felt: no difference that matters, within 2.5 % either way (−2 to 2 "
           "%).");
}

// What stands in the table beside the numbers.
TEST(PairWords, AreAFewWordsOfEachVerdict)
{
    using stats::Verdict;
    SeasonComparison five = comparisonOf(5);
    MediaPair& pair = five.pairs.front();
    const std::pair<Verdict, const char*> said[] = {
        {Verdict::More, "more"},
        {Verdict::Less, "less"},
        {Verdict::SameWithinMargin, "the same, within ±10 %"},
        {Verdict::RealButTooSmall, "real, but too small to matter"},
        {Verdict::NotComparable, "not comparable"},
        {Verdict::CantTellYet, "can't tell yet"}};
    for (const auto& [verdict, words] : said) {
        pair.verdict = verdict;
        EXPECT_EQ(pairWords(pair, five).toStdString(), words);
    }
    pair.more = MoreTrials{1, 4};
    EXPECT_EQ(pairWords(pair, five), "can't tell yet: about 1 more trial");
    pair.more = MoreTrials{4, 4};
    EXPECT_EQ(pairWords(pair, five), "can't tell yet: about 4 more trials");
    pair.more = MoreTrials{std::nullopt, 4};
    EXPECT_EQ(pairWords(pair, five), "can't tell yet: more than a year of trials");
    pair.verdict = Verdict::NoVerdict;
    pair.why = stats::NoVerdictReason::OneTrayEach;
    pair.more = MoreTrials{3, 2};
    EXPECT_EQ(pairWords(pair, five),
              "no verdict from one tray of each. About 3 more trials with 2 trays of each.");
}

TEST(IntervalText, ShowsOnWhichSideOfNothingABoundLies)
{
    SeasonComparison five = comparisonOf(5);
    judge(five, stats::Verdict::More, 4, 12, 21);
    const auto text = [&] { return intervalText(five.pairs.front(), five).toStdString(); };
    EXPECT_EQ(text(), "4 to 21 %");
    judge(five, stats::Verdict::CantTellYet, -0.4, 12, 21);
    EXPECT_EQ(text(), "−0.4 to 21.0 %");
    judge(five, stats::Verdict::CantTellYet, 0, 12, 21);
    EXPECT_EQ(text(), "0 to 21 %");
    five.pairs.front().upperPercent.reset();
    EXPECT_EQ(text(), "");
    five.scale = stats::CellScale::Linear;
    five.pairs.front().lower.reset();
    EXPECT_EQ(text(), "") << "days without an interval";
}

TEST(PairName, PutsTheOneWithMoreFirst)
{
    SeasonComparison five = comparisonOf(5);
    MediaPair pair = five.pairs.front();
    const QString there = pairName(pair, five);
    EXPECT_LT(there.indexOf("Steel mesh"), there.indexOf("Jute felt"));
    std::swap(pair.a, pair.b);
    const QString back = pairName(pair, five);
    EXPECT_LT(back.indexOf("Jute felt"), back.indexOf("Steel mesh"));
}

} // namespace
} // namespace plumule::ui
