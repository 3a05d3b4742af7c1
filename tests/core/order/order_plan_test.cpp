#include "core/forecast/forecast_total.h"
#include "core/order/order_chart.h"
#include "core/order/order_plan.h"
#include "tests/core/order/order_samples.h"

#include <gmock/gmock.h>

#include <cmath>

namespace plumule {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

const Date kToday = date(2026, 11, 28);
constexpr int kGrowthDays = 9;
constexpr int kSowings = 6;
constexpr int kTraysEach = 4;

// A room in which one variety was sown six times on one medium, four trays each, of 250 g more or
// less; nine days under light.
class OrderPlan : public testing::Test
{
protected:
    OrderPlan()
    {
        facts.now = {kToday, 8 * 60};
        facts.morningMinute = 7 * 60;
        facts.places = 16;
        facts.forecast.now = facts.now;
        facts.forecast.trayArea = 0.129;
        facts.forecast.varieties[{1}] = "Radish";
        Medium mix;
        mix.id = {1};
        mix.name = "Mix";
        facts.media[mix.id] = mix;
        facts.forecast.media = facts.media;
        Protocol protocol;
        protocol.variety.id = {1};
        protocol.variety.name = "Radish";
        protocol.variety.seedPerTray = grams(30);
        protocol.stages.resize(1);
        protocol.stages[0].stage = Stage::Light;
        protocol.stages[0].lengthMinutes = kGrowthDays * kMinutesPerDay;
        facts.protocols[{1}] = protocol;
        facts.usualMedia[{1}] = {1};
        facts.seedLeft[{1}] = grams(480);
        for (int sowing = 0; sowing < kSowings; ++sowing) {
            for (int tray = 0; tray < kTraysEach; ++tray) {
                addCut(kToday - 100 + 12 * sowing, 240 + 7 * ((3 * sowing + 5 * tray) % 6));
            }
        }
        facts.report = forecastReport(facts.forecast);
    }

    TrayFact& addTray(Date sownOn)
    {
        TrayFact tray;
        tray.tray = {static_cast<std::int64_t>(facts.forecast.trays.size()) + 1};
        tray.code = "RD" + std::to_string(tray.tray.value);
        tray.variety = {1};
        tray.medium = {1};
        tray.sownAt = {sownOn, 7 * 60};
        StageFact light;
        light.stage = Stage::Light;
        light.lengthMinutes = kGrowthDays * kMinutesPerDay;
        light.started = tray.sownAt;
        tray.stages = {light};
        facts.forecast.trays.push_back(tray);
        return facts.forecast.trays.back();
    }

    void addCut(Date sownOn, double net)
    {
        TrayFact& tray = addTray(sownOn);
        tray.cutAt = Moment{sownOn + kGrowthDays, 7 * 60};
        tray.cut = grams(net);
    }

    void growToday(Date sownOn, int trays)
    {
        for (int i = 0; i < trays; ++i) {
            addTray(sownOn);
            facts.leaving.push_back(sownOn + kGrowthDays);
        }
        facts.report = forecastReport(facts.forecast);
    }

    void promise(const Order& order) { facts.promises.push_back({order, order.day}); }

    OrderLine onlyLine()
    {
        const auto lines = planOrders(facts);
        EXPECT_THAT(lines, SizeIs(1));
        return lines.front();
    }

    OrderFacts facts;
};

TEST_F(OrderPlan, ProposesTheFewestTraysThatMeetItNineTimesInTen)
{
    promise(orderOf(1, 1500, kToday + 12));
    const OrderLine line = onlyLine();
    ASSERT_TRUE(line.sowing);
    const YieldModel model = YieldModels(facts.forecast, facts.report).of({1}, {1});
    EXPECT_EQ(model.basis.from, ForecastSource::OwnPast);
    EXPECT_EQ(line.sowing->model, model);
    const int trays = line.sowing->trays;
    const auto chanceOf = [&](int count) {
        return ForecastTotal({{model, count, kToday}}).chanceOf(grams(1500));
    };
    EXPECT_GE(chanceOf(trays), kChanceWanted);
    EXPECT_LT(chanceOf(trays - 1), kChanceWanted);
    EXPECT_DOUBLE_EQ(line.planned.chance, chanceOf(trays));
    EXPECT_GE(trays, 6); // 6 trays of 257 g are 1,542 g on average
    EXPECT_LE(trays, 8);
}

TEST_F(OrderPlan, CountsBackFromTheMorningOfTheDay)
{
    promise(orderOf(1, 1500, kToday + 12));
    const OrderLine line = onlyLine();
    EXPECT_EQ(line.sowing->times.sow, (Moment{kToday + 3, 7 * 60}));
    EXPECT_FALSE(line.sowing->isLate);
    EXPECT_EQ(line.sowing->seed, grams(30) * line.sowing->trays);
    EXPECT_EQ(line.sowing->seedLeft, grams(480));
    EXPECT_EQ(line.sowing->freePlaces, 16);
}

TEST_F(OrderPlan, ShowsTheChanceOfFewerAndOfMoreTrays)
{
    promise(orderOf(1, 1500, kToday + 12));
    const OrderLine line = onlyLine();
    ASSERT_THAT(line.chances, SizeIs(6));
    for (std::size_t i = 1; i < line.chances.size(); ++i) {
        EXPECT_EQ(line.chances[i].trays, line.chances[i - 1].trays + 1);
        EXPECT_GE(line.chances[i].chance, line.chances[i - 1].chance);
        EXPECT_LT(line.chances[i].low, line.chances[i].mean);
        EXPECT_LT(line.chances[i].mean, line.chances[i].high);
    }
    EXPECT_EQ(line.chances[3].trays, line.sowing->trays);
}

TEST_F(OrderPlan, SaysThatItIsTooLate)
{
    promise(orderOf(1, 1500, kToday + 5));
    const OrderLine line = onlyLine();
    ASSERT_TRUE(line.sowing);
    EXPECT_TRUE(line.sowing->isLate);
    EXPECT_EQ(line.planned.trays, 0);
    EXPECT_EQ(line.planned.chance, 0);
}

TEST_F(OrderPlan, LetsGrowingTraysStandForTheOldestPromiseFirst)
{
    growToday(kToday - 5, 8); // due on the 2nd of December
    promise(orderOf(1, 700, kToday + 4));
    promise(orderOf(2, 700, kToday + 5));
    const auto lines = planOrders(facts);
    ASSERT_THAT(lines, SizeIs(2));
    EXPECT_FALSE(lines[0].sowing);
    EXPECT_GE(lines[0].planned.chance, kChanceWanted);
    EXPECT_LT(lines[0].growing.size(), 6U);
    EXPECT_GE(lines[0].growing.size(), 3U);
    EXPECT_EQ(lines[0].growing.size() + lines[1].growing.size(), 8U);
    for (const GrowingFor& tray : lines[0].growing) {
        EXPECT_EQ(tray.due, kToday + 4);
    }
}

TEST_F(OrderPlan, CountsNoTrayThatIsDueTooEarlyOrTooLate)
{
    growToday(kToday - 5, 4);
    promise(orderOf(1, 700, kToday + 4 + kDaysKept + 1));
    promise(orderOf(2, 700, kToday + 3));
    for (const OrderLine& line : planOrders(facts)) {
        EXPECT_THAT(line.growing, IsEmpty());
    }
}

TEST_F(OrderPlan, TakesWhatWasCutAlreadyFirst)
{
    promise(orderOf(1, 1000, kToday));
    facts.cuts[{kToday, {1}}] = {{{9}, "RD9", kToday, grams(1040), false}};
    const OrderLine line = onlyLine();
    EXPECT_FALSE(line.sowing);
    EXPECT_EQ(line.planned.chance, 1);
    EXPECT_EQ(line.planned.mean, grams(1040));
}

TEST_F(OrderPlan, HoldsPlacesAndSeedAgainstWhatIsSownBefore)
{
    growToday(kToday - 1, 5);
    promise(orderOf(1, 1500, kToday + 14));
    promise(orderOf(2, 1500, kToday + 12));
    const auto lines = planOrders(facts);
    const SowingNeed& first = *lines[0].sowing;
    const SowingNeed& second = *lines[1].sowing;
    EXPECT_EQ(lines[0].promise.day, kToday + 12);
    EXPECT_EQ(first.freePlaces, 11); // the five are cut on the 6th of December
    EXPECT_EQ(second.freePlaces, 11 - first.trays);
    EXPECT_EQ(second.seedLeft, grams(480) - *first.seed);
}

TEST_F(OrderPlan, CountsCleanPiecesOfAReusableMedium)
{
    facts.media[{1}].isReusable = true;
    facts.freePieces[{1}] = 4;
    promise(orderOf(1, 1500, kToday + 12));
    EXPECT_EQ(onlyLine().sowing->freePieces, 4);
}

TEST_F(OrderPlan, FollowsTheMediumThatTheOrderSays)
{
    Medium mat;
    mat.id = {2};
    mat.name = "Mat";
    facts.media[mat.id] = mat;
    facts.forecast.media[mat.id] = mat;
    Order order = orderOf(1, 1500, kToday + 12);
    order.medium = mat.id;
    promise(order);
    const OrderLine line = onlyLine();
    EXPECT_EQ(line.sowing->medium.name, "Mat");
    EXPECT_EQ(line.sowing->model.basis.from, ForecastSource::Library);
    EXPECT_EQ(line.sowing->model.basis.trays, 0);
}

TEST_F(OrderPlan, GoesOnWhereEvenTheMostTraysAreTooFew)
{
    promise(orderOf(1, 900'000, kToday + 12));
    const OrderLine line = onlyLine();
    EXPECT_EQ(line.sowing->trays, kMostTraysProposed);
    EXPECT_LT(line.planned.chance, kChanceWanted);
}

TEST_F(OrderPlan, DrawsTheChanceByTrays)
{
    promise(orderOf(1, 1500, kToday + 12));
    const OrderLine line = onlyLine();
    const ChartSpec spec = chanceChart(line.chances, 3);
    EXPECT_EQ(spec.key, "chance_by_trays");
    ASSERT_THAT(spec.series, SizeIs(2));
    EXPECT_EQ(spec.series[1].marker, 3);
    ASSERT_THAT(spec.series[1].points, SizeIs(6));
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(spec.series[1].points[i].y, 100 * line.chances[i].chance, 1e-9);
        EXPECT_EQ(spec.series[1].points[i].isHollow, i < 3);
    }
    ASSERT_THAT(spec.marks, SizeIs(1));
    EXPECT_NEAR(spec.marks[0].at, 90, 1e-9);
}

} // namespace
} // namespace plumule
