#include "core/forecast/forecast_total.h"

#include "core/forecast/forecast_sums.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace plumule {
namespace {

YieldModel modelOf(int medium, double rate)
{
    YieldModel model;
    model.variety = {1};
    model.medium = {medium};
    model.logMean = std::log(200);
    model.meanVariance = 0.02 * 0.02;
    model.sowingVariance = 0.10 * 0.10;
    model.trayVariance = 0.07 * 0.07;
    model.degreesOfFreedom = 20;
    model.discardRate = rate;
    model.discardWeight = 1000;
    return model;
}

constexpr double kNever = 1e-9;
constexpr Date kSowingDay{20'500};

Mass spanOf(const ForecastTotal& total)
{
    return total.quantile(0.9) - total.quantile(0.1);
}

TEST(ForecastTotal, OfOneTrayIsThatTrays)
{
    const YieldModel model = modelOf(1, kNever);
    const YieldForecast one = yieldOf(model);
    const ForecastTotal total({{model, 1, kSowingDay}});
    EXPECT_NEAR(inGrams(total.quantile(0.1)), inGrams(one.low), 0.05);
    EXPECT_NEAR(inGrams(total.quantile(0.5)), inGrams(one.middle), 0.05);
    EXPECT_NEAR(inGrams(total.quantile(0.9)), inGrams(one.high), 0.05);
    EXPECT_NEAR(total.chanceOf(one.low), 0.9, 1e-4);
}

// Trays of one sowing share its luck, so that more sowings are surer.
TEST(ForecastTotal, OfSeveralSowingsIsNarrower)
{
    const YieldModel model = modelOf(1, kNever);
    const ForecastTotal together({{model, 12, kSowingDay}});
    const ForecastTotal apart(
        {{model, 4, kSowingDay}, {model, 4, kSowingDay + 7}, {model, 4, kSowingDay + 14}});
    EXPECT_EQ(together.mean(), apart.mean());
    EXPECT_LT(spanOf(apart), spanOf(together));
}

// Twelve trays of one sowing: the coefficient of variation of their sum, by hand.
TEST(ForecastTotal, HasTheSumsFirstTwoMoments)
{
    YieldModel model = modelOf(1, kNever);
    model.degreesOfFreedom = 1e7;
    const ForecastTotal total({{model, 12, kSowingDay}});
    const double tray = std::expm1(0.0004 + 0.01 + 0.0049);
    const double sowing = std::expm1(0.0004 + 0.01);
    const double squared = (12 * tray + 12 * 11 * sowing) / 144;
    const double sd = std::sqrt(std::log1p(squared));
    EXPECT_NEAR(std::log(total.quantile(0.9) / total.quantile(0.1)), 2 * 1.2815515655 * sd, 1e-3);
    EXPECT_NEAR(inGrams(total.mean()), 12 * 200 * std::exp(0.0153 / 2), 0.01);
}

TEST(ForecastTotal, CountsThoseThrownAwayAsNothing)
{
    const ForecastTotal total({{modelOf(1, 0.2), 10, kSowingDay}});
    EXPECT_NEAR(inGrams(total.mean()), 8 * 200 * std::exp(0.0153 / 2), 0.5);
    const ForecastTotal one({{modelOf(1, 0.2), 1, kSowingDay}});
    EXPECT_EQ(one.quantile(0.1), Mass{});
    EXPECT_NEAR(one.chanceOf(milligrams(1)), 0.8, 1e-6);
}

TEST(ForecastTotal, AddsUnlikeMedia)
{
    const ForecastTotal both(
        {{modelOf(1, 0.05), 3, kSowingDay}, {modelOf(2, 0.05), 3, kSowingDay}});
    const ForecastTotal alone({{modelOf(1, 0.05), 3, kSowingDay}});
    EXPECT_NEAR(inGrams(both.mean()), 2 * inGrams(alone.mean()), 0.01);
    EXPECT_GT(both.chanceOf(grams(600)), alone.chanceOf(grams(600)));
}

// Six trays of one sowing are as uncertain on two media as on one, but for the error of the trays.
TEST(ForecastTotal, MediaOfOneSowingShareItsLuck)
{
    const YieldModel one = modelOf(1, kNever);
    const YieldModel two = modelOf(2, kNever);
    const ForecastTotal sameMedium({{one, 6, kSowingDay}});
    const ForecastTotal sameDay({{one, 3, kSowingDay}, {two, 3, kSowingDay}});
    const ForecastTotal otherDay({{one, 3, kSowingDay}, {two, 3, kSowingDay + 7}});
    EXPECT_NEAR(inGrams(spanOf(sameDay)), inGrams(spanOf(sameMedium)), 0.1);
    EXPECT_LT(spanOf(otherDay), spanOf(sameDay));
    YieldModel stranger = two;
    stranger.variety = {2};
    const ForecastTotal otherVariety({{one, 3, kSowingDay}, {stranger, 3, kSowingDay}});
    EXPECT_LT(spanOf(otherVariety), spanOf(otherDay));
}

TEST(ForecastTotal, MoreTraysMeetAPromiseMoreOften)
{
    double last = 0;
    for (int trays = 1; trays <= 12; ++trays) {
        const double chance =
            ForecastTotal({{modelOf(1, 0.05), trays, kSowingDay}}).chanceOf(grams(1000));
        EXPECT_GE(chance, last);
        last = chance;
    }
    EXPECT_GT(last, 0.99);
}

// One draw of all trays, each by itself; its media were sown side by side.
double drawnSum(std::mt19937& lot, int varieties, int media, int trays, double rate)
{
    const auto normal = [&lot](double sd) { return std::normal_distribution<>(0, sd)(lot); };
    double sum = 0;
    for (int variety = 0; variety < varieties; ++variety) {
        const double shared = std::log(200) + normal(0.02) + normal(0.10);
        for (int tray = 0; tray < media * trays; ++tray) {
            const bool isLost = std::bernoulli_distribution(rate)(lot);
            sum += isLost ? 0 : std::exp(shared + normal(0.07));
        }
    }
    return sum;
}

// Nine stands of twenty trays have more outcomes than are kept apart.
TEST(ForecastTotal, OfVeryManyOutcomesIsWhatSimulatedTraysGive)
{
    constexpr int kDraws = 20'000;
    std::vector<SumPart> parts;
    for (int stand = 0; stand < 9; ++stand) {
        YieldModel model = modelOf(stand % 3, 0.1);
        model.variety = {stand / 3 + 1};
        model.degreesOfFreedom = 1e7;
        model.discardWeight = 1e7;
        parts.push_back({model, 20, kSowingDay});
    }
    const ForecastTotal total(parts);
    EXPECT_NEAR(inGrams(total.mean()), 0.9 * 180 * 200 * std::exp(0.0153 / 2), 3);
    std::mt19937 lot(20'261'129);
    std::vector<double> sums(kDraws);
    std::generate(sums.begin(), sums.end(), [&lot] { return drawnSum(lot, 3, 3, 20, 0.1); });
    std::sort(sums.begin(), sums.end());
    for (const double p : {0.05, 0.1, 0.5, 0.9, 0.95}) {
        const double drawn = sums[static_cast<std::size_t>(p * kDraws)];
        EXPECT_NEAR(inGrams(total.quantile(p)) / drawn, 1, 0.004) << p;
        // Four standard errors of such a share.
        EXPECT_NEAR(total.chanceOf(grams(drawn)), 1 - p, 4 * std::sqrt(p * (1 - p) / kDraws)) << p;
    }
}

TEST(ForecastTotal, OfNothingIsNothing)
{
    const ForecastTotal total({});
    EXPECT_EQ(total.mean(), Mass{});
    EXPECT_EQ(total.quantile(0.9), Mass{});
    EXPECT_DOUBLE_EQ(total.chanceOf(grams(1)), 0);
    EXPECT_DOUBLE_EQ(total.chanceOf(Mass{}), 1);
}

} // namespace
} // namespace plumule
