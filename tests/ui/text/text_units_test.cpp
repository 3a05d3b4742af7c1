#include "ui/text/text.h"

#include "core/cost/cost.h"
#include "core/medium/medium.h"
#include "core/tray/tray.h"
#include "core/variety/variety.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

const UnitText kMetric(UnitSystem::Metric);
const UnitText kUs(UnitSystem::UsCustomary);

TEST(NumberText, ShowsATrueMinusAndNeverAMinusBeforeZero)
{
    EXPECT_EQ(numberText(289.46, 1), "289.5");
    EXPECT_EQ(numberText(1234567, 0), "1234567");
    EXPECT_EQ(numberText(-1.5, 1), QString(QChar(0x2212)) + "1.5");
    EXPECT_EQ(numberText(-0.04, 1), "0.0");
    EXPECT_EQ(numberText(-0.4, 0), "0");
    EXPECT_EQ(numberText(-0.0, 2), "0.00");
    EXPECT_EQ(numberText(-10, 0), QString(QChar(0x2212)) + "10");
}

TEST(UnitText, ShowsMetricAmountsWithTheirUnits)
{
    EXPECT_EQ(kMetric.mass(grams(289.5)), "289.5 g");
    EXPECT_EQ(kMetric.mass(grams(289.5), 0), "290 g");
    EXPECT_EQ(kMetric.watering(millilitres(120)), "120 mL");
    EXPECT_EQ(kMetric.mixed(litres(1.62)), "1.62 L");
    EXPECT_EQ(kMetric.concentrate(millilitres(13)), "13.0 mL");
    EXPECT_EQ(kMetric.dose(millilitres(11.72)), "11.72 mL/L");
    EXPECT_EQ(kMetric.length(millimetres(48)), "48 mm");
}

// By the definitions of NIST SP 811, Appendix B: 28.349523125 g, 29.5735295625 mL,
// 3785.411784 mL, 25.4 mm.
TEST(UnitText, ShowsTheSameAmountsInUsCustomaryUnits)
{
    EXPECT_EQ(kUs.mass(grams(289.5)), "10.21 oz");
    EXPECT_EQ(kUs.mass(grams(28.349523125)), "1.00 oz");
    EXPECT_EQ(kUs.watering(millilitres(120)), "4.1 fl oz");
    EXPECT_EQ(kUs.mixed(litres(1.62)), "0.43 gal");
    EXPECT_EQ(kUs.mixed(litres(3.785411784)), "1.00 gal");
    EXPECT_EQ(kUs.concentrate(millilitres(37)), "1.25 fl oz");
    EXPECT_EQ(kUs.dose(millilitres(11.72)), "1.50 fl oz/gal");
    EXPECT_EQ(kUs.length(millimetres(48)), "1.89 in");
    EXPECT_EQ(kUs.length(millimetres(508)), "20.00 in");
}

// A US teaspoon is a sixth of a fluid ounce (NIST SP 811, Appendix B).
TEST(UnitText, SaysLittleSoThatItCanBeMeasured)
{
    EXPECT_EQ(kUs.watering(millilitres(15)), "0.51 fl oz");
    EXPECT_EQ(kUs.watering(usCups(1)), "8.0 fl oz");
    EXPECT_EQ(kUs.concentrate(millilitres(1.5)), "1.5 mL") << "and not 0.05 fl oz";
    EXPECT_EQ(kUs.mixed(millilitres(300)), "10.1 fl oz") << "and not 0.08 gal";
    UnitText::measureSmallIn(SmallVolume::Teaspoon);
    EXPECT_EQ(kUs.watering(millilitres(15)), "3 tsp");
    EXPECT_EQ(kUs.watering(millilitres(30)), "6.1 tsp");
    EXPECT_EQ(kUs.mixed(millilitres(120)), "24.3 tsp");
    EXPECT_EQ(kUs.watering(usCups(1)), "8.0 fl oz");
    UnitText::measureSmallIn(SmallVolume::Millilitre);
    EXPECT_EQ(kUs.watering(millilitres(118)), "118 mL");
    UnitText::measureSmallIn(SmallVolume::FluidOunce);
    EXPECT_EQ(kMetric.watering(millilitres(15)), "15 mL");
}

// A pound is 453.59237 g (NIST SP 811, Appendix B).
TEST(CostPerGram, IsSaidInTheUnitThatGivesItTwoToFourFigures)
{
    const auto metric = UnitSystem::Metric;
    const auto us = UnitSystem::UsCustomary;
    EXPECT_EQ(costPerGramText(0.0234, "EUR", metric), "23.4 EUR/kg");
    EXPECT_EQ(costPerGramText(0.00234, "EUR", metric), "2.34 EUR/kg");
    EXPECT_EQ(costPerGramText(0.234, "EUR", metric), "234 EUR/kg");
    EXPECT_EQ(costPerGramText(2.34, "EUR", metric), "234 ct/g");
    EXPECT_EQ(costPerGramText(0.000234, "EUR", metric), "0.234 EUR/kg");
    EXPECT_EQ(costPerGramText(340, "JPY", metric), "340 JPY/g");
    EXPECT_EQ(costPerGramText(0.05, "USD", us), "22.7 USD/lb");
    EXPECT_EQ(costPerGramText(3, "USD", us), "85.0 USD/oz");
    EXPECT_EQ(costPerGramText(-0.0234, "EUR", metric), QString(QChar(0x2212)) + "23.4 EUR/kg");
}

TEST(UnitText, NamesTheUnitsThatItsAmountsEndWith)
{
    for (const UnitText& text : {kMetric, kUs}) {
        EXPECT_TRUE(text.mass(grams(5)).endsWith(' ' + text.massUnit()));
        EXPECT_TRUE(text.watering(millilitres(5)).endsWith(' ' + text.volumeUnit()));
        EXPECT_TRUE(text.length(millimetres(5)).endsWith(' ' + text.lengthUnit()));
    }
    EXPECT_NE(kMetric.massUnit(), kUs.massUnit());
    EXPECT_NE(kMetric.volumeUnit(), kUs.volumeUnit());
    EXPECT_NE(kMetric.lengthUnit(), kUs.lengthUnit());
}

TEST(MoneyText, ShowsTheSumBeforeItsCurrency)
{
    EXPECT_EQ(moneyText(4.2, "EUR"), "4.20 EUR");
    EXPECT_EQ(moneyText(-0.5, "USD"), QString(QChar(0x2212)) + "0.50 USD");
    EXPECT_EQ(moneyText(0.01234, "EUR", 4), "0.0123 EUR");
}

TEST(DateTexts, ShowADayInWords)
{
    // A Thursday by the civil calendar.
    const Date day = date(2026, 3, 12);
    EXPECT_EQ(dayText(day), "Thursday 12 March");
    EXPECT_EQ(shortDayText(day), "12 Mar");
    EXPECT_EQ(longDateText(day), "12 Mar 2026");
    EXPECT_EQ(clockText(6 * 60 + 50), "06:50");
    EXPECT_EQ(clockText(0), "00:00");
}

TEST(DateTexts, CarryADateToTheWidgetsAndBack)
{
    for (const Date day : {date(1970, 1, 1), date(2024, 2, 29), date(1999, 12, 31)}) {
        EXPECT_EQ(fromQDate(toQDate(day)), day);
    }
    EXPECT_EQ(toQDate(date(2024, 2, 29)), QDate(2024, 2, 29));
}

template <class Value>
void expectNamesApart(std::initializer_list<Value> values)
{
    QStringList names;
    for (const Value value : values) {
        EXPECT_FALSE(nameOf(value).isEmpty()) << int(value);
        EXPECT_FALSE(names.contains(nameOf(value))) << nameOf(value).toStdString();
        names << nameOf(value);
    }
}

TEST(Names, TellEveryValueOfAListApart)
{
    expectNamesApart({Stage::Soak, Stage::UnderWeight, Stage::Blackout, Stage::Light});
    expectNamesApart({WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient});
    expectNamesApart({WateringMethod::None, WateringMethod::Mist, WateringMethod::Below});
    expectNamesApart({Slot::Morning, Slot::Evening});
    expectNamesApart({MediumForm::LooseMix, MediumForm::Mat, MediumForm::Mesh});
    expectNamesApart({TrayState::Growing, TrayState::Harvested, TrayState::Discarded});
    expectNamesApart({ReadFrom::Rim, ReadFrom::Surface});
}

TEST(Names, SayWhereATrayStands)
{
    Spot spot;
    spot.rack = "A";
    spot.shelf = "3";
    spot.number = 2;
    EXPECT_EQ(nameOf(std::optional(spot)), QString::fromUtf8("A3 · place 2"));
    EXPECT_EQ(nameOf(std::optional<Spot>()), "no place");
}

} // namespace
} // namespace plumule::ui
