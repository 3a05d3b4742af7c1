#include "ui/widget/amount_field.h"

#include "ui/text/text.h"

#include <QTest>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace plumule::ui {
namespace {

std::optional<double> typedNumber(NumberField& field, const QString& text)
{
    field.setText(text);
    const auto number = field.number();
    EXPECT_TRUE(number.has_value()) << text.toStdString();
    return number.value_or(std::nullopt);
}

TEST(NumberField, ReadsPointAndComma)
{
    NumberField field;
    EXPECT_EQ(typedNumber(field, "12.5"), 12.5);
    EXPECT_EQ(typedNumber(field, "12,5"), 12.5);
    EXPECT_EQ(typedNumber(field, " 12,5 "), 12.5);
    EXPECT_EQ(typedNumber(field, "+3"), 3.0);
    EXPECT_EQ(typedNumber(field, "-3"), -3.0);
}

TEST(NumberField, TakesBackTheMinusThatNumbersAreShownWith)
{
    NumberField field;
    EXPECT_EQ(typedNumber(field, QString(QChar(0x2212)) + "4,25"), -4.25);
    field.setNumber(-4.25, 2);
    EXPECT_EQ(field.text(), QString(QChar(0x2212)) + "4.25");
    EXPECT_EQ(field.number().value(), -4.25);
}

TEST(NumberField, TakesAnEmptyFieldForNotGiven)
{
    NumberField field;
    EXPECT_EQ(typedNumber(field, ""), std::nullopt);
    EXPECT_EQ(typedNumber(field, "   "), std::nullopt);
}

TEST(NumberField, RefusesWhatIsNoPlainNumber)
{
    NumberField field;
    for (const char* text : {"1,234.5", "1.2.3", "1,2,3", "12 5", "12g", "1e3", "0x10", "inf",
                             "nan", ".", ",", "-", "+", "--1", "1-", "twelve", "1'000", "١٢"}) {
        field.setText(QString::fromUtf8(text));
        const auto number = field.number();
        ASSERT_FALSE(number.has_value()) << text;
        EXPECT_EQ(number.error().kind, ErrorKind::Invalid) << text;
        EXPECT_EQ(number.error().values, std::vector<std::string>{text});
    }
}

TEST(NumberField, RefusesACommaThatMayPartThousandsAndSaysWhy)
{
    NumberField field;
    QTest::keyClicks(&field, "1,234");
    ASSERT_FALSE(field.number().has_value());
    EXPECT_EQ(field.number().error().kind, ErrorKind::Ambiguous);
    field.markWrong(true);
    EXPECT_TRUE(field.toolTip().contains("1,234")) << field.toolTip().toStdString();
    EXPECT_TRUE(field.toolTip().contains("two ways"));
    QTest::keyClicks(&field, "5");
    EXPECT_EQ(field.toolTip(), "");
    EXPECT_EQ(field.number().value(), 1.2345);
}

TEST(NumberField, RefusesWhatIsBeyondItsRange)
{
    NumberField field;
    field.setRange(0, 100);
    EXPECT_EQ(typedNumber(field, "0"), 0.0);
    EXPECT_EQ(typedNumber(field, "100"), 100.0);
    for (const char* text : {"-0.1", "100.1"}) {
        field.setText(text);
        ASSERT_FALSE(field.number().has_value()) << text;
        EXPECT_EQ(field.number().error().values, std::vector<std::string>{text});
    }
}

TEST(NumberField, ShowsNoZerosAtTheEnd)
{
    NumberField field;
    const auto shown = [&field](std::optional<double> number, int decimals) {
        field.setNumber(number, decimals);
        return field.text();
    };
    EXPECT_EQ(shown(12.5, 3), "12.5");
    EXPECT_EQ(shown(12.0, 2), "12");
    EXPECT_EQ(shown(100, 0), "100");
    EXPECT_EQ(shown(0, 2), "0");
    EXPECT_EQ(shown(std::nullopt, 2), "");
}

TEST(NumberField, IsMarkedWrongUntilItIsTypedInAgain)
{
    NumberField field;
    field.markWrong(true);
    EXPECT_TRUE(field.property("wrong").toBool());
    QTest::keyClicks(&field, "7");
    EXPECT_FALSE(field.property("wrong").toBool());
    EXPECT_EQ(field.text(), "7");
}

TEST(NumberField, KeepsRoomForItsUnit)
{
    NumberField field("fl oz/gal");
    EXPECT_EQ(field.unit(), "fl oz/gal");
    EXPECT_GE(field.textMargins().right(), field.fontMetrics().horizontalAdvance("fl oz/gal"));
    field.setUnit("");
    EXPECT_EQ(field.textMargins().right(), 0);
}

// By the definitions of NIST SP 811, Appendix B.
TEST(TypedAmounts, AreReadInTheRoomsUnits)
{
    NumberField field;
    field.setText("2,5");
    EXPECT_EQ(massIn(field, UnitSystem::Metric).value(), milligrams(2500));
    EXPECT_EQ(massIn(field, UnitSystem::UsCustomary).value(), milligrams(70'874));
    EXPECT_EQ(volumeIn(field, UnitSystem::Metric).value(), microlitres(2500));
    EXPECT_EQ(volumeIn(field, UnitSystem::UsCustomary).value(), microlitres(73'934));
    EXPECT_EQ(lengthIn(field, UnitSystem::Metric).value(), micrometres(2500));
    EXPECT_EQ(lengthIn(field, UnitSystem::UsCustomary).value(), micrometres(63'500));
    EXPECT_EQ(moneyIn(field).value(), money(2.5));
}

TEST(TypedAmounts, AreNoneOrInvalidAsTheField)
{
    NumberField field;
    EXPECT_EQ(massIn(field, UnitSystem::Metric).value(), std::nullopt);
    EXPECT_EQ(moneyIn(field).value(), std::nullopt);
    field.setText("2,5 g");
    EXPECT_EQ(massIn(field, UnitSystem::Metric).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(volumeIn(field, UnitSystem::Metric).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(lengthIn(field, UnitSystem::Metric).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(moneyIn(field).error().kind, ErrorKind::Invalid);
}

// A form that is saved unchanged must not change what is stored.
TEST(ShownAmounts, ComeBackExactlyAsTheyWere)
{
    NumberField field;
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        for (const double amount : {30.0, 1892.706, 0.125}) {
            showMass(field, grams(amount), units);
            EXPECT_EQ(field.unit(), UnitText(units).massUnit());
            EXPECT_EQ((*massIn(field, units))->count(), grams(amount).count()) << amount;
            showVolume(field, millilitres(amount), units);
            EXPECT_EQ(field.unit(), UnitText(units).volumeUnit());
            EXPECT_EQ((*volumeIn(field, units))->count(), millilitres(amount).count()) << amount;
            showLength(field, millimetres(amount), units);
            EXPECT_EQ(field.unit(), UnitText(units).lengthUnit());
            EXPECT_EQ((*lengthIn(field, units))->count(), millimetres(amount).count()) << amount;
        }
    }
    showMoney(field, money(0.0123), "EUR");
    EXPECT_EQ(field.text(), "0.0123");
    EXPECT_EQ(field.unit(), "EUR");
    EXPECT_EQ(moneyIn(field).value(), money(0.0123));
}

// Whatever is stored, down to the last milligram, in whichever units it is shown.
TEST(ShownAmounts, OfAnySizeComeBackExactlyInBothUnits)
{
    NumberField field;
    std::mt19937_64 random(20260312);
    const auto any = [&](std::int64_t most) {
        // As many small amounts as large ones.
        const double share = std::uniform_real_distribution<double>(0, 1)(random);
        return static_cast<std::int64_t>(std::pow(double(most), share));
    };
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        for (int i = 0; i < 2000; ++i) {
            const Mass mass = milligrams(any(50'000'000));
            showMass(field, mass, units);
            ASSERT_EQ(*massIn(field, units), mass) << mass.count();
            const Volume volume = microlitres(any(200'000'000));
            showVolume(field, volume, units);
            ASSERT_EQ(*volumeIn(field, units), volume) << volume.count();
            const Length length = micrometres(any(2'000'000));
            showLength(field, length, units);
            ASSERT_EQ(*lengthIn(field, units), length) << length.count();
            const Money sum = money(double(any(100'000'000)) / 1e4);
            showMoney(field, sum, "EUR");
            ASSERT_EQ(*moneyIn(field), sum) << inUnits(sum);
        }
    }
}

} // namespace
} // namespace plumule::ui
