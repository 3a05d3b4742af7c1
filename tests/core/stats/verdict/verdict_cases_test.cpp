#include "core/stats/verdict/advice.h"
#include "core/stats/verdict/critical_value.h"
#include "core/stats/verdict/verdict_cases.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

// Nine cases of the decision procedure, worked out in R 4.2.2; tolerances as in
// tests/references/README.md: estimates 1e-6, intervals 1e-3 of their width, verdicts exact.
namespace plumule::stats {
namespace {

using nlohmann::json;
using verdicts::nameOf;
using verdicts::numberOf;
using verdicts::traysOf;
using verdicts::verdictCase;

constexpr double kEstimate = 1e-6;
constexpr double kInterval = 1e-3;

const PairAnswer& pairOf(const std::vector<PairAnswer>& pairs, const json& names)
{
    const auto found = std::find_if(pairs.begin(), pairs.end(), [&](const PairAnswer& pair) {
        return pair.a == numberOf(names.at("a")) && pair.b == numberOf(names.at("b"));
    });
    EXPECT_NE(found, pairs.end());
    return *found;
}

// All fields of the case's pair; returns how many of its fields were compared.
void expectPair(const PairAnswer& pair, const json& expected)
{
    SCOPED_TRACE(expected.dump());
    const auto near = [&](const char* key, std::optional<double> got, double tolerance) {
        if (expected.contains(key)) {
            ASSERT_TRUE(got.has_value()) << key;
            const double want = expected.at(key);
            EXPECT_NEAR(*got, want, tolerance * std::max(1.0, std::abs(want))) << key;
        }
    };
    near("log_difference", pair.difference, kEstimate);
    near("log_se", pair.se, kEstimate);
    near("df", pair.df, kEstimate);
    near("level", pair.level, kEstimate);
    near("critical", pair.critical, kInterval);
    near("difference_percent", percentOfLog(pair.difference.value()), kEstimate);
    const Interval interval = pair.interval().value();
    const double width =
        expected.at("upper_percent").get<double>() - expected.at("lower_percent").get<double>();
    EXPECT_NEAR(percentOfLog(interval.lower()), expected.at("lower_percent"), kInterval * width);
    EXPECT_NEAR(percentOfLog(interval.upper()), expected.at("upper_percent"), kInterval * width);
    EXPECT_EQ(nameOf(pair.verdict), expected.at("verdict"));
    if (expected.contains("trials_shared")) {
        EXPECT_EQ(pair.sowingsShared, expected.at("trials_shared"));
    }
}

void expectPairs(const std::vector<PairAnswer>& pairs, const json& expected)
{
    for (const json& pair : expected) {
        expectPair(pairOf(pairs, pair), pair);
    }
}

void expectMaybe(std::optional<double> got, const json& expected)
{
    ASSERT_EQ(got.has_value(), !expected.is_null());
    if (got) {
        EXPECT_NEAR(*got, expected.get<double>(), kEstimate * std::max(1.0, *got));
    }
}

void expectSeries(const std::string& name)
{
    const json& expected = verdictCase(name).at("expected");
    const MediaAnswer answer = answerOfSeries(traysOf(verdictCase(name).at("input")), {});
    EXPECT_EQ(answer.scope, AnswerScope::NextSowing);
    EXPECT_EQ(answer.sowings, expected.at("trials"));
    EXPECT_EQ(answer.means.size(), expected.at("media"));
    expectMaybe(answer.variance, expected.at("cell_variance"));
    EXPECT_DOUBLE_EQ(answer.df, expected.at("cell_df"));
    expectMaybe(answer.level, expected.at("level"));
    if (expected.contains("unlike_spread")) {
        EXPECT_EQ(answer.spread.isUnlike, expected.at("unlike_spread"));
        expectMaybe(answer.spread.brownForsytheP, expected.at("brown_forsythe_p"));
        expectMaybe(answer.spread.largestToSmallest, expected.at("largest_to_smallest"));
        expectMaybe(answer.spread.limit, expected.at("largest_to_smallest_limit"));
    }
    expectPairs(answer.pairs, expected.at("pairs"));
}

TEST(VerdictCases, TwoMediaInThreeTrialsAreThePairedTOverTrials)
{
    expectSeries("three_trials_two_media");
}

TEST(VerdictCases, BalancedTrialsAnswerAsTheMixedModelDoes)
{
    expectSeries("four_trials_three_media_balanced");
    const json& mixed = verdictCase("four_trials_three_media_balanced")
                            .at("expected")
                            .at("check_mixed_model")
                            .at("kenward_roger");
    const MediaAnswer answer =
        answerOfSeries(traysOf(verdictCase("four_trials_three_media_balanced").at("input")), {});
    ASSERT_EQ(mixed.size(), answer.pairs.size());
    for (std::size_t i = 0; i < mixed.size(); ++i) {
        EXPECT_NEAR(answer.pairs[i].difference.value(), mixed[i].at("estimate"), kEstimate);
        EXPECT_NEAR(answer.pairs[i].se.value(), mixed[i].at("se"), kEstimate);
        EXPECT_NEAR(answer.pairs[i].df.value(), mixed[i].at("df"), kEstimate);
    }
}

TEST(VerdictCases, UnlikeSpreadHalvesTheLevelAndTakesTheLargerVariance)
{
    expectSeries("unlike_spread");
}

TEST(VerdictCases, OneTrialSaysWhatItsMediaGave)
{
    const json& expected = verdictCase("one_trial_four_media").at("expected");
    const MediaAnswer answer =
        answerOfSowings(traysOf(verdictCase("one_trial_four_media").at("input")), {});
    EXPECT_EQ(answer.scope, AnswerScope::TheseSowings);
    expectMaybe(answer.variance, expected.at("tray_variance"));
    EXPECT_DOUBLE_EQ(answer.df, expected.at("tray_df"));
    expectPairs(answer.pairs, expected.at("pairs"));
}

TEST(VerdictCases, MediaThatNeverMetAreNotCompared)
{
    expectSeries("unconnected_media");
    const MediaAnswer answer =
        answerOfSeries(traysOf(verdictCase("unconnected_media").at("input")), {});
    const json& apart = verdictCase("unconnected_media").at("expected").at("not_comparable");
    std::vector<std::string> found;
    for (const PairAnswer& pair : answer.pairs) {
        if (pair.verdict == Verdict::NotComparable) {
            EXPECT_EQ(pair.why, NoVerdictReason::NeverMet);
            found.push_back(std::string(1, static_cast<char>('A' + pair.a)) + "-" +
                            static_cast<char>('A' + pair.b));
        }
    }
    EXPECT_EQ(json(found), apart);
}

TEST(VerdictCases, AFailedTrayCarriesItsCost)
{
    const json& expected = verdictCase("cost_per_gram_failed_tray").at("expected");
    VerdictAsk ask;
    ask.scale = CellScale::LogOfRatio;
    const MediaAnswer answer =
        answerOfSowings(traysOf(verdictCase("cost_per_gram_failed_tray").at("input")), ask);
    expectMaybe(answer.variance, expected.at("relative_variance"));
    EXPECT_DOUBLE_EQ(answer.df, expected.at("df"));
    EXPECT_NEAR(answer.means[0].value.value(), expected.at("cost_per_gram").at("A"), kEstimate);
    EXPECT_NEAR(answer.means[1].value.value(), expected.at("cost_per_gram").at("B"), kEstimate);
    json pair = expected;
    pair.erase("df");
    expectPair(answer.pairs.at(0), pair);
}

TEST(VerdictCases, VarietiesAnswerApartBehindTheirGate)
{
    const json& expected = verdictCase("by_variety").at("expected");
    const MediaAnswer answer = answerOfSeries(traysOf(verdictCase("by_variety").at("input")), {});
    ASSERT_TRUE(answer.gate.has_value());
    EXPECT_NEAR(answer.gate->f, expected.at("gate_F"), 1e-5);
    EXPECT_DOUBLE_EQ(answer.gate->df1, expected.at("gate_df").at(0));
    EXPECT_DOUBLE_EQ(answer.gate->df2, expected.at("gate_df").at(1));
    EXPECT_NEAR(answer.gate->p, expected.at("gate_p"), kEstimate);
    EXPECT_NEAR(answer.gate->level, expected.at("gate_level"), kEstimate);
    EXPECT_NEAR(answer.gate->variance, expected.at("error_variance"), kEstimate);
    EXPECT_EQ(answer.gate->isOpen, expected.at("answers_by_variety"));
    ASSERT_EQ(answer.byVariety.size(), 2U);
    for (const json& pair : expected.at("pairs")) {
        const VarietyAnswer& variety = answer.byVariety.at(numberOf(pair.at("variety")));
        EXPECT_EQ(variety.variety, numberOf(pair.at("variety")));
        expectPair(pairOf(variety.pairs, pair), pair);
    }
}

TEST(VerdictCases, CriticalValuesAreThoseOfTheStudentizedRange)
{
    for (const json& row : verdictCase("critical_values").at("expected")) {
        SCOPED_TRACE(row.dump());
        const std::size_t media = row.at("media");
        const double df = row.at("df");
        const double level = 0.04 / row.at("trials").get<double>();
        EXPECT_NEAR(level, row.at("level"), kEstimate);
        EXPECT_NEAR(criticalValue(media, df, level), row.at("critical_t"), kInterval);
        EXPECT_NEAR(criticalValue(media, df, 0.05), row.at("critical_t_once"), kInterval);
    }
}

TEST(VerdictCases, AdviceCountsTheTrialsStillNeeded)
{
    const json& input = verdictCase("advice").at("input");
    const json& expected = verdictCase("advice").at("expected");
    AdviceGround ground;
    ground.cellVariance = input.at("cell_variance");
    ground.cellDf = input.at("cell_df");
    ground.trayVariance = input.at("tray_variance");
    ground.harmonicTrays = input.at("trays_so_far");
    ground.traysEach = input.at("trays_each");
    ground.media = input.at("media");
    ground.sowings = input.at("trials");
    ground.margin = logMargin(input.at("difference_percent"));
    const Advice advice = sowingsNeeded(ground);
    EXPECT_NEAR(advice.trialVariance, expected.at("interaction_variance"), kEstimate);
    EXPECT_EQ(advice.sowings, expected.at("trials_in_all"));
    EXPECT_EQ(advice.moreSowings, expected.at("more_trials"));
}

} // namespace
} // namespace plumule::stats
