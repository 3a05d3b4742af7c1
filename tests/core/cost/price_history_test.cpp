#include "core/cost/price_history.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

constexpr MediumId kCoir{4};

Price priced(PriceItem item, Date from, double units, std::optional<MediumId> medium = std::nullopt)
{
    return {{}, item, medium, from, money(units)};
}

PriceHistory electricity(const std::vector<Price>& prices)
{
    for (const PriceHistory& history : priceHistories(prices, {})) {
        if (history.item == PriceItem::Electricity) {
            return history;
        }
    }
    ADD_FAILURE() << "no history";
    return {};
}

TEST(PriceHistory, HoldsFromADayUntilTheNext)
{
    const auto history = electricity({priced(PriceItem::Electricity, date(2026, 6, 1), 0.31),
                                      priced(PriceItem::Electricity, date(2025, 6, 1), 0.34)});
    ASSERT_EQ(history.steps.size(), 2U);
    EXPECT_FALSE(history.on(date(2025, 5, 31)));
    EXPECT_DOUBLE_EQ(*history.on(date(2026, 5, 31)), 0.34);
    EXPECT_DOUBLE_EQ(*history.on(date(2026, 6, 1)), 0.31);
}

TEST(PriceHistory, TellsTheChangeOfAYear)
{
    const auto history = electricity({priced(PriceItem::Electricity, date(2025, 6, 1), 0.40),
                                      priced(PriceItem::Electricity, date(2026, 6, 1), 0.30)});
    EXPECT_DOUBLE_EQ(*history.yearlyChange(date(2026, 11, 28)), -0.25);
    EXPECT_FALSE(history.yearlyChange(date(2026, 5, 1))) << "there was none a year before";
    EXPECT_FALSE(electricity({}).yearlyChange(date(2026, 5, 1)));
}

TEST(PriceHistory, ComparesUnlikeMeasuresByTheUnit)
{
    Price perCubicMetre = priced(PriceItem::Water, date(2026, 1, 1), 4);
    perCubicMetre.measure = PriceMeasure::CubicMetre;
    for (const PriceHistory& history : priceHistories({perCubicMetre}, {})) {
        if (history.item == PriceItem::Water) {
            EXPECT_DOUBLE_EQ(history.steps.front().perUnit, 0.004);
        }
    }
}

TEST(PriceHistories, NameEveryItemWhetherItHasAPriceOrNot)
{
    const auto histories =
        priceHistories({priced(PriceItem::Medium, date(2026, 1, 1), 0.52, kCoir)}, {kCoir});
    ASSERT_EQ(histories.size(), 8U);
    EXPECT_EQ(histories.back().medium, kCoir);
    EXPECT_EQ(histories.back().steps.size(), 1U);
    EXPECT_TRUE(histories.front().steps.empty());
}

TEST(SeedPriceHistory, IsOfTheLotsOfAVarietyByTheKilogram)
{
    SeedLot lot;
    lot.id = {1};
    lot.variety = {7};
    lot.boughtOn = date(2026, 2, 1);
    lot.bought = grams(900);
    lot.price = money(15.75);
    SeedLot unpriced = lot;
    unpriced.id = {2};
    unpriced.price.reset();
    SeedLot other = lot;
    other.id = {3};
    other.variety = {8};
    const auto history =
        seedPriceHistory({{lot.id, lot}, {unpriced.id, unpriced}, {other.id, other}}, {7});
    EXPECT_EQ(history.steps, (std::vector<PriceStep>{{date(2026, 2, 1), 17.5}}));
    EXPECT_FALSE(history.item);
}

TEST(PriceChart, IsALineOfSteps)
{
    const auto history = electricity({priced(PriceItem::Electricity, date(2025, 1, 1), 0.34),
                                      priced(PriceItem::Electricity, date(2026, 3, 1), 0.29),
                                      priced(PriceItem::Electricity, date(2027, 1, 1), 0.20)});
    const Date from = date(2026, 1, 1);
    const Date to = date(2026, 11, 28);
    const ChartSpec spec = priceChart(history, from, to, "EUR");
    ASSERT_EQ(spec.series.size(), 2U);
    const double step = date(2026, 3, 1).days;
    const std::vector<std::pair<double, double>> expected = {
        {from.days, 0.34}, {step, 0.34}, {step, 0.29}, {to.days, 0.29}};
    ASSERT_EQ(spec.series[0].points.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_EQ(spec.series[0].points[i].x, expected[i].first);
        EXPECT_DOUBLE_EQ(spec.series[0].points[i].y, expected[i].second);
    }
    EXPECT_EQ(spec.series[1].points.size(), 1U) << "a dot where it changed";
    EXPECT_EQ(spec.x.key, "date");
}

TEST(PriceChart, IsEmptyWithoutAPrice)
{
    EXPECT_TRUE(
        priceChart(electricity({}), date(2026, 1, 1), date(2026, 2, 1), "EUR").series.empty());
}

} // namespace
} // namespace plumule
