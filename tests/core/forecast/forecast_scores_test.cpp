#include "core/forecast/forecast_scores.h"

#include "core/forecast/forecast_chart.h"
#include "core/forecast/forecast_sums.h"
#include "forecast_facts_of.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

using namespace forecast_test;

const ScoredForecast& scoredOf(const std::vector<ScoredForecast>& scored, TrayId tray)
{
    for (const ScoredForecast& one : scored) {
        if (one.forecast.tray == tray) {
            return one;
        }
    }
    throw std::logic_error("not scored");
}

TEST(ForecastScores, AreMadeOfWhatWasKnownThatDay)
{
    const ForecastFacts facts = roomOf(10);
    const TrayFact& tray = facts.trays[13]; // of the seventh sowing
    const ScoredForecast scored = scoredOf(latestForecasts(facts), tray.tray);
    // The same that was shown then, as a growing tray's.
    const ForecastReport then = forecastReport(knownAt(facts, tray.begunAt()));
    for (const TrayForecast& shown : then.growing) {
        if (shown.tray == tray.tray) {
            EXPECT_EQ(shown.yield.basis.widened, 1);
            EXPECT_EQ(scored.forecast, shown);
            EXPECT_EQ(scored.weighed, tray.cut);
            return;
        }
    }
    FAIL() << "it did not grow then";
}

// Whatever happens later, in however many trays, a forecast of the past stays as it was.
TEST(ForecastScores, KnowNothingOfWhatCameAfter)
{
    const ForecastFacts facts = roomOf(10);
    const TrayFact& tray = facts.trays[13];
    const Moment day = tray.begunAt();
    const ScoredForecast before = scoredOf(latestForecasts(facts), tray.tray);
    ForecastFacts changed = facts;
    for (TrayFact& each : changed.trays) {
        if (each.cutAt && *each.cutAt > day) {
            each.cut = each.cut * 3;
            each.cutAt = *each.cutAt + 5 * kMinutesPerDay;
        }
        for (StageFact& stage : each.stages) {
            stage.delayMinutes = 700;
            if (stage.started && *stage.started > day) {
                stage.started = *stage.started + 3 * kMinutesPerDay;
            }
        }
    }
    changed.trays.push_back(cutTray(500, kRadish, day.date + 1, 900));
    const ScoredForecast after = scoredOf(latestForecasts(changed), tray.tray);
    EXPECT_EQ(after.forecast, before.forecast);
    EXPECT_NE(after.weighed, before.weighed);
}

TEST(ForecastScores, ForgetStagesCutsAndDiscardsOfLater)
{
    ForecastFacts facts = roomOf(4);
    facts.trays[2].cutAt.reset();
    facts.trays[2].discardedAt = Moment{kDay + 15, kMorning};
    const ForecastFacts known = knownAt(facts, {kDay + 9, 12 * 60});
    ASSERT_EQ(known.trays.size(), 4U); // two sowings have begun
    EXPECT_FALSE(known.trays[0].cutAt.has_value());
    EXPECT_EQ(known.trays[0].cut, Mass{});
    EXPECT_TRUE(known.trays[0].stages[2].started.has_value());
    EXPECT_FALSE(known.trays[2].stages[1].started.has_value());
    EXPECT_FALSE(known.trays[2].discardedAt.has_value());
    EXPECT_EQ(knownAt(facts, facts.now), facts);
}

TEST(ForecastScores, DoNotCountTheLibrarys)
{
    const ForecastFacts facts = roomOf(10);
    const ForecastReport report = forecastReport(facts);
    ASSERT_EQ(report.scored.size(), 20U);
    // The sowings that began before five trays were cut: the first four, and a fifth was sown on a
    // day when two sowings had been.
    EXPECT_GT(report.unscored, 0);
    EXPECT_EQ(report.all.harvests + report.unscored, 20);
}

ScoredForecast outcome(int number, double weighed)
{
    ScoredForecast one;
    one.forecast.variety = kRadish;
    one.forecast.sownOn = kDay + number;
    one.forecast.yield = {grams(180), grams(200), grams(222), {}};
    one.forecast.yield.basis.from = ForecastSource::OwnPast;
    one.weighed = grams(weighed);
    return one;
}

TEST(ForecastScores, SayThatTheyAreBadAndWiden)
{
    std::vector<ScoredForecast> scored;
    for (int n = 0; n < 6; ++n) {
        scored.push_back(outcome(n, n < 3 ? 205 : 235));
    }
    const VarietyScore score = scoreOf(scored, kRadish);
    EXPECT_EQ(score.harvests, 6);
    EXPECT_EQ(score.yieldInside, 3);
    // log(235/200) over log(222/200)
    EXPECT_DOUBLE_EQ(score.yieldWidened, 1.5);
    EXPECT_DOUBLE_EQ(score.dayWidened, 1);
    EXPECT_EQ(scoreOf(scored, kPea).harvests, 0);
    EXPECT_EQ(scoreOf(scored, std::nullopt).yieldInside, 3);
}

TEST(ForecastScores, CountASowingOnce)
{
    std::vector<ScoredForecast> scored;
    for (int n = 0; n < 6; ++n) {
        // The three that fell outside are of one sowing: bad luck once.
        scored.push_back(outcome(n < 3 ? n : 3, n < 3 ? 205 : 235));
    }
    EXPECT_DOUBLE_EQ(scoreOf(scored, kRadish).yieldWidened, 1);
}

TEST(ForecastScores, OfFewHarvestsWidenNothing)
{
    std::vector<ScoredForecast> scored;
    for (int n = 0; n < kFewestForOwnPast - 1; ++n) {
        scored.push_back(outcome(n, 400));
    }
    EXPECT_DOUBLE_EQ(scoreOf(scored, kRadish).yieldWidened, 1);
}

TEST(ForecastScores, WidenWhatIsShownAndWhatOrdersRestOn)
{
    const ForecastFacts facts = roomOf(8);
    ForecastReport bad;
    VarietyScore score;
    score.variety = kRadish;
    score.harvests = 10;
    score.yieldWidened = 1.5;
    bad.scores = {score};
    const YieldModel usual = YieldModels(facts, {}).of(kRadish, kCoir);
    const YieldModel wide = YieldModels(facts, bad).of(kRadish, kCoir);
    EXPECT_EQ(wide.basis.widened, 1.5);
    EXPECT_NEAR(wide.trayVariance, 2.25 * usual.trayVariance, 1e-12);
    EXPECT_LT(yieldOf(wide).low, yieldOf(usual).low);
    EXPECT_EQ(yieldOf(wide).middle, yieldOf(usual).middle);
    // The library's values were not scored, and stay.
    EXPECT_EQ(YieldModels(facts, bad).of(kPea, kCoir).basis.widened, 1);
}

TEST(ForecastScores, StandInAChartInOrder)
{
    std::vector<ScoredForecast> scored;
    for (int n = 0; n < 45; ++n) {
        scored.push_back(outcome(n, n == 44 ? 240 : 200));
    }
    const ChartSpec spec = coverageChart(scored);
    ASSERT_EQ(spec.series.size(), 2U);
    ASSERT_EQ(spec.series[1].points.size(), kHarvestsInChart);
    EXPECT_DOUBLE_EQ(spec.series[1].points.front().y, 100);
    EXPECT_FALSE(spec.series[1].points.front().isHollow);
    EXPECT_NEAR(spec.series[1].points.back().y, 120, 1e-9);
    EXPECT_TRUE(spec.series[1].points.back().isHollow);
    EXPECT_NEAR(spec.series[0].intervals.back().low, 90, 1e-9);
    EXPECT_TRUE(coverageChart({}).series.empty());
}

} // namespace
} // namespace plumule
