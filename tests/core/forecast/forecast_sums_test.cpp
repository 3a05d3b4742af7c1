#include "core/forecast/forecast_sums.h"

#include "core/starter/starter_yields.h"
#include "forecast_facts_of.h"

#include <gtest/gtest.h>

#include <cmath>

namespace plumule {
namespace {

using namespace forecast_test;

// Of one tray, which is the only one that grows.
TrayForecast forecastOf(ForecastFacts facts, const TrayFact& tray)
{
    facts.trays.push_back(tray);
    const ForecastReport report = forecastReport(facts);
    EXPECT_EQ(report.growing.size(), 1U);
    return report.growing.front();
}

// One whose stages have begun up to that number.
TrayFact growingTray(const ForecastFacts& facts, int daysAgo, std::size_t begun)
{
    TrayFact tray = sownTray(900, kRadish, facts.now.date - daysAgo);
    for (std::size_t stage = begun; stage < tray.stages.size(); ++stage) {
        tray.stages[stage].started.reset();
    }
    return tray;
}

TEST(Forecast, OfFewTraysIsTheLibrarysAndSaysSo)
{
    ForecastFacts facts = emptyRoom();
    for (int tray = 1; tray < kFewestForOwnPast; ++tray) {
        facts.trays.push_back(cutTray(tray, kRadish, kDay + 7 * tray, 500));
    }
    const TrayForecast forecast = forecastOf(facts, growingTray(facts, 2, 1));
    const LibraryYield library = libraryYield("Radish");
    EXPECT_EQ(forecast.yield.basis.from, ForecastSource::Library);
    EXPECT_EQ(forecast.yield.basis.source, library.source);
    EXPECT_EQ(forecast.yield.basis.trays, kFewestForOwnPast - 1);
    EXPECT_NEAR(inGrams(forecast.yield.middle),
                facts.trayArea * std::sqrt(library.gramsLow * library.gramsHigh), 0.01);
    EXPECT_EQ(forecast.day->basis.from, ForecastSource::Library);
    EXPECT_EQ(forecast.day->basis.source, kFromMemory);
    EXPECT_EQ(forecast.day->middle, forecast.day->asPlanned);
}

TEST(Forecast, FromFiveTraysOnIsTheRoomsOwn)
{
    ForecastFacts facts = emptyRoom();
    for (int tray = 1; tray <= kFewestForOwnPast; ++tray) {
        facts.trays.push_back(cutTray(tray, kRadish, kDay + 7 * tray, 500));
    }
    const TrayForecast forecast = forecastOf(facts, growingTray(facts, 2, 1));
    EXPECT_EQ(forecast.yield.basis.from, ForecastSource::OwnPast);
    EXPECT_EQ(forecast.yield.basis.trays, kFewestForOwnPast);
    EXPECT_EQ(forecast.yield.basis.sowings, kFewestForOwnPast);
    EXPECT_EQ(forecast.yield.middle, grams(500));
    EXPECT_LT(forecast.yield.low, grams(500));
    EXPECT_GT(forecast.yield.high, grams(500));
}

TEST(Forecast, OfTheDayFollowsHowLateThePastWas)
{
    ForecastFacts facts = emptyRoom();
    for (int n = 0; n < 8; ++n) {
        facts.trays.push_back(cutTray(n + 1, kRadish, kDay + 7 * n, 200, 2));
    }
    const TrayFact tray = growingTray(facts, 6, 3);
    const DayForecast day = *forecastOf(facts, tray).day;
    EXPECT_EQ(day.asPlanned, tray.sownAt.date + 10);
    EXPECT_EQ(day.middle, tray.sownAt.date + 12);
    EXPECT_GE(day.chance, kForecastLevel);
    EXPECT_TRUE(day.holds(day.middle));
}

TEST(Forecast, CountsFromTheStagesAsTheyBegan)
{
    const ForecastFacts facts = roomOf(8);
    TrayFact tray = growingTray(facts, 6, 3);
    const Date usual = forecastOf(facts, tray).day->middle;
    // Its light began a day and a half late.
    tray.stages[2].started = *tray.stages[2].started + 36 * 60;
    EXPECT_GE(forecastOf(facts, tray).day->middle - usual, 1);
}

TEST(Forecast, OfAStagePutOffMovesAsFar)
{
    const ForecastFacts facts = roomOf(8);
    TrayFact tray = growingTray(facts, 1, 1);
    const Date usual = forecastOf(facts, tray).day->middle;
    tray.stages[0].delayMinutes = 4 * kMinutesPerDay;
    const int later = forecastOf(facts, tray).day->middle - usual;
    EXPECT_GE(later, 3);
    EXPECT_LE(later, 5);
}

TEST(Forecast, OfATrayNotCutYetIsNeverPast)
{
    const ForecastFacts facts = roomOf(8);
    const TrayForecast forecast = forecastOf(facts, growingTray(facts, 30, 3));
    EXPECT_GE(forecast.day->low, facts.now.date);
    EXPECT_LT(forecast.day->asPlanned, facts.now.date);
}

TEST(Forecast, WithoutStagesKnowsTheYieldAlone)
{
    const ForecastFacts facts = roomOf(8);
    TrayFact tray = growingTray(facts, 2, 1);
    tray.stages.clear();
    const TrayForecast forecast = forecastOf(facts, tray);
    EXPECT_FALSE(forecast.day.has_value());
    EXPECT_EQ(forecast.yield.basis.from, ForecastSource::OwnPast);
}

TEST(Forecast, LeavesOutWhatWasSetAside)
{
    ForecastFacts facts = roomOf(8);
    const Mass before = YieldModels(facts, {}).of(kRadish, kCoir).basis.trays == 16
                            ? yieldOf(YieldModels(facts, {}).of(kRadish, kCoir)).middle
                            : Mass{};
    TrayFact odd = cutTray(99, kRadish, kDay + 3, 5);
    odd.isSetAside = true;
    facts.trays.push_back(odd);
    EXPECT_EQ(yieldOf(YieldModels(facts, {}).of(kRadish, kCoir)).middle, before);
}

TEST(Forecast, UsesTheTimeOfYearWhereItHasEnough)
{
    ForecastFacts facts = emptyRoom();
    for (int n = 0; n < 12; ++n) {
        const bool isNear = n >= 6;
        const Date on = isNear ? facts.now.date - 20 - 5 * (n - 6) : kDay + n;
        facts.trays.push_back(cutTray(n + 1, kRadish, on, isNear ? 300 : 200));
    }
    const YieldModel model = YieldModels(facts, {}).of(kRadish, kCoir);
    EXPECT_EQ(model.basis.span, PastSpan::Season);
    EXPECT_EQ(model.basis.trays, 6);
    EXPECT_NEAR(model.logMean, std::log(300), 1e-9);
}

TEST(Forecast, RateOfDiscardsIsDrawnToTheRooms)
{
    ForecastFacts facts = roomOf(10);
    for (int n = 0; n < 5; ++n) {
        TrayFact lost = sownTray(100 + n, kRadish, kDay + 7 * n);
        lost.discardedAt = Moment{kDay + 7 * n + 8, kMorning};
        facts.trays.push_back(lost);
    }
    const YieldModel model = YieldModels(facts, {}).of(kRadish, kCoir);
    EXPECT_EQ(model.discarded, 5);
    EXPECT_EQ(model.ended, 25);
    const double ofRoom = (5 + 0.05 * 8) / (25 + 8);
    EXPECT_NEAR(model.discardRate, (5 + 10 * ofRoom) / (25 + 10), 1e-12);
    const YieldModel unknown = YieldModels(emptyRoom(), {}).of(kPea, kCoir);
    EXPECT_NEAR(unknown.discardRate, 0.05, 1e-12);
}

} // namespace
} // namespace plumule
