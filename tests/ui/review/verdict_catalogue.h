#pragma once

#include "ui/review/verdict_sentence.h"

#include <cstdio>
#include <gtest/gtest.h>

namespace plumule::ui {

// Steel mesh and jute felt in that many trials.
inline SeasonComparison comparisonOf(int trials, Response response = Response::YieldPerTray)
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

inline void judge(SeasonComparison& comparison, stats::Verdict verdict, double low, double mid,
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

} // namespace plumule::ui
