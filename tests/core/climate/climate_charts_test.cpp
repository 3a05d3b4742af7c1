#include "core/climate/climate_charts.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

const Date kSown = date(2026, 3, 2);

ClimateDay day(int number, std::optional<double> celsius, std::optional<double> vpd = {})
{
    ClimateDay day;
    day.on = kSown + (number - 1);
    if (celsius) {
        day.temperature = DayMean{*celsius, *celsius - 2, *celsius + 3};
    }
    day.vpd = vpd;
    return day;
}

TEST(ClimateChart, DrawsOneTrackAsABandByDayOfGrowth)
{
    const ChartSpec spec = climateChart(ClimateLine::Temperature,
                                        {{"Shelf", {day(1, 20), day(2, 21), day(3, 22)}}}, kSown);
    EXPECT_EQ(spec.key, "climate_temperature");
    EXPECT_EQ(spec.y.unit, "°C");
    EXPECT_EQ(spec.x.key, "day");
    EXPECT_EQ(spec.x.high, 3);
    ASSERT_EQ(spec.series.size(), 1U);
    EXPECT_EQ(spec.series[0].form, SeriesForm::Band);
    EXPECT_EQ(spec.series[0].name, "Shelf");
    EXPECT_THAT(spec.series[0].intervals,
                testing::ElementsAre(ChartInterval{1, 18, 20, 23}, ChartInterval{2, 19, 21, 24},
                                     ChartInterval{3, 20, 22, 25}));
    EXPECT_FALSE(isEmpty(spec));
}

TEST(ClimateChart, PartsTheCurveWhereADayIsMissing)
{
    const ChartSpec spec = climateChart(
        ClimateLine::Vpd,
        {{"Room", {day(1, {}, 0.8), day(2, {}, 0.9), day(3, 20), day(4, {}, 1.0)}}}, kSown);
    ASSERT_EQ(spec.series.size(), 2U);
    EXPECT_EQ(spec.series[0].form, SeriesForm::Line);
    EXPECT_EQ(spec.series[0].name, "");
    EXPECT_EQ(spec.series[0].points.size(), 2U);
    EXPECT_EQ(spec.series[1].form, SeriesForm::Dots); // of one day alone
    EXPECT_EQ(spec.series[1].name, "Room");
    EXPECT_EQ(spec.y.low, 0);
}

TEST(ClimateChart, DrawsSeveralTracksAsLines)
{
    const ChartSpec spec = climateChart(
        ClimateLine::Temperature,
        {{"Rack A", {day(1, 20), day(2, 21)}}, {"Rack B", {day(1, 22), day(2, 23)}}}, kSown);
    ASSERT_EQ(spec.series.size(), 2U);
    EXPECT_EQ(spec.series[0].form, SeriesForm::Line);
    EXPECT_EQ(spec.series[1].name, "Rack B");
}

TEST(ClimateChart, SaysWhereItHasNothingToShow)
{
    EXPECT_TRUE(isEmpty(climateChart(ClimateLine::DailyLight, {{"A", {day(1, 20)}}}, kSown)));
    EXPECT_TRUE(isEmpty(climateChart(ClimateLine::Humidity, {}, kSown)));
}

} // namespace
} // namespace plumule
