#include "core/climate/climate_sums.h"
#include "tests/ui/support/growing.h"
#include "ui/chart/chart_view.h"
#include "ui/climate/climate_card.h"
#include "ui/climate/climate_text.h"

namespace plumule::ui {
namespace {

ClimateDay warmDay(Date on, double celsius)
{
    ClimateDay day;
    day.on = on;
    day.hours = 24;
    day.temperature = DayMean{celsius, celsius - 1, celsius + 2};
    day.humidity = DayMean{60, 55, 65};
    day.vpd = vapourPressureDeficit(celsius, 60);
    return day;
}

TrayClimate threeDays()
{
    TrayClimate climate;
    climate.tray.sownOn = date(2026, 3, 2);
    climate.loggers = {"Clip", "Wall"};
    for (int day = 0; day < 3; ++day) {
        climate.days.push_back(warmDay(climate.tray.sownOn + day, 20 + day));
    }
    climate.growth = {21, 0.99, std::nullopt};
    return climate;
}

class ClimateCardTest : public UiTest
{
protected:
    ClimateCardTest() { messages.setWindowFlags(Qt::ToolTip); }
    [[nodiscard]] const ChartView& chart() { return *find<ChartView>(card, "climateChart"); }
    [[nodiscard]] QString words() { return find<QLabel>(card, "climateWords")->text(); }
    void pick(int line) { click(find<Segmented>(card, "climateLine")->segment(line)); }
    ClimateCard card;
};

TEST_F(ClimateCardTest, ShowsOneMeasureAtATimeOverTheDaysOfTheHeights)
{
    card.show(threeDays(), 12, UnitSystem::Metric);
    show(card, {600, 420});
    EXPECT_EQ(chart().spec().key, "climate_temperature");
    EXPECT_EQ(chart().spec().x.high, 12);
    EXPECT_EQ(chart().spec().series.at(0).form, SeriesForm::Band);
    EXPECT_TRUE(words().contains("21.0 °C"));
    EXPECT_TRUE(words().contains("Clip, Wall"));
    EXPECT_TRUE(words().contains("18 of its 24 hours"));
    pick(2);
    EXPECT_EQ(chart().spec().key, "climate_vpd");
    EXPECT_EQ(chart().spec().series.at(0).points.size(), 3U);
    pick(3);
    EXPECT_FALSE(chart().isVisible());
    EXPECT_TRUE(find<QLabel>(card, "climateNothing")->isVisible());
    pick(1);
    EXPECT_TRUE(chart().isVisible());
}

TEST_F(ClimateCardTest, IsHiddenWhereNothingIsKnown)
{
    TrayClimate nothing;
    nothing.days.resize(3);
    card.show(nothing, 12, UnitSystem::Metric);
    EXPECT_TRUE(card.isHidden());
    card.show(Result<TrialClimate>(TrialClimate{}));
    EXPECT_TRUE(card.isHidden());
    card.show(threeDays(), 12, UnitSystem::Metric);
    EXPECT_FALSE(card.isHidden());
}

TEST_F(ClimateCardTest, SpeaksFahrenheitWhereTheRoomDoes)
{
    card.show(threeDays(), 12, UnitSystem::UsCustomary);
    EXPECT_TRUE(words().contains("69.8 °F")) << words().toStdString();
}

TEST_F(ClimateCardTest, NamesTheCurvesOfATrial)
{
    TrialClimate trial;
    trial.sownOn = date(2026, 3, 2);
    trial.tracks = {{"Clip", {warmDay(trial.sownOn, 20), warmDay(trial.sownOn + 1, 21)}},
                    {"Wall", {warmDay(trial.sownOn, 22), warmDay(trial.sownOn + 1, 22)}}};
    card.show(Result<TrialClimate>(trial));
    ASSERT_EQ(chart().spec().series.size(), 2U);
    EXPECT_EQ(chart().spec().series[1].name, "Wall");
}

TEST(ClimateWords, SayWhereLightIsFromAndWhatIsMissing)
{
    TrayClimate climate = threeDays();
    climate.days[1].isLightOfLamp = true;
    EXPECT_TRUE(sourceWords(climate).contains("under the shelf's lamps"));
    climate.days[1].isLightOfLamp = false;
    climate.days[2].lux = 900;
    EXPECT_TRUE(sourceWords(climate).contains("not converted"));
    EXPECT_EQ(missingWords(climate.days), "");
    climate.days[0].temperature.reset();
    EXPECT_EQ(missingWords(climate.days), "Of 1 day the temperature is not known.");
    EXPECT_NE(clockWords(LoggerClock::Utc), clockWords(LoggerClock::Room));
}

} // namespace
} // namespace plumule::ui
