#include "tests/ui/support/ui_fixture.h"
#include "ui/harvest/scale_field.h"
#include "ui/widget/theme.h"

namespace plumule::ui {
namespace {

class ScaleFieldTest : public UiTest
{
protected:
    ScaleField field{"gross", 2.0};

    void typeOver(const QString& text)
    {
        field.setFocus();
        field.selectAll();
        QTest::keyClick(&field, Qt::Key_Delete);
        QTest::keyClicks(&field, text);
    }
    [[nodiscard]] double grammes()
    {
        const auto read = field.reading();
        EXPECT_TRUE(read) << field.text().toStdString();
        return read ? inGrams(read->mass) : -1;
    }
};

TEST_F(ScaleFieldTest, ShowsWeightsAsTheScaleDoes)
{
    EXPECT_EQ(scaleText(grams(325), MassUnit::Gram), "325.0");
    EXPECT_EQ(scaleText(grams(331.54), MassUnit::Gram), "331.5");
    EXPECT_EQ(scaleTextWithUnit(grams(325), MassUnit::Gram), "325.0 g");
    // 1 oz is 28.349523125 g (international avoirdupois pound, 1959).
    EXPECT_EQ(scaleTextWithUnit(grams(28.349523125), MassUnit::Ounce), "1.00 oz");
}

TEST_F(ScaleFieldTest, ReadsWhatIsTypedInItsOwnUnit)
{
    typeOver("331,5");
    EXPECT_DOUBLE_EQ(grammes(), 331.5);
    field.setUnit(MassUnit::Ounce);
    EXPECT_EQ(field.text(), "331,5") << "what was typed stays as it was typed";
    EXPECT_NEAR(grammes(), 331.5 * 28.349523125, 0.001);
    typeOver("11.5 oz");
    EXPECT_NEAR(grammes(), 11.5 * 28.349523125, 0.001);
    typeOver("0.3 kg");
    EXPECT_DOUBLE_EQ(grammes(), 300);
}

TEST_F(ScaleFieldTest, RefusesWhatIsNoWeightOrMayMeanTwo)
{
    for (const char* typed : {"1,234", "3.3.1", "heavy", "99999999", "12 g 5"}) {
        typeOver(typed);
        EXPECT_FALSE(field.reading()) << typed;
    }
    EXPECT_FALSE(field.isBlank());
    typeOver("  ");
    EXPECT_TRUE(field.isBlank());
}

TEST_F(ScaleFieldTest, AWeightPutInIsKeptToTheMilligramUntilItIsTypedOver)
{
    field.setMass(milligrams(331'537));
    EXPECT_EQ(field.text(), "331.5");
    EXPECT_EQ(field.reading()->mass, milligrams(331'537));
    field.setUnit(MassUnit::Ounce);
    EXPECT_EQ(field.text(), "11.69");
    EXPECT_EQ(field.reading()->mass, milligrams(331'537)) << "in either unit";
    typeOver("11.69");
    EXPECT_EQ(field.reading()->mass, milligrams(331'537)) << "typed alike is not typed over";
    typeOver("11.7");
    EXPECT_NE(field.reading()->mass, milligrams(331'537));
}

TEST_F(ScaleFieldTest, TellsWhatTheScaleSaysBesideTheWeight)
{
    typeOver("US,NT,+ 12.3 g");
    ASSERT_TRUE(field.reading());
    EXPECT_FALSE(field.reading()->isStable);
    EXPECT_TRUE(field.reading()->isNet);
    typeOver("ST,GS,  331.5g");
    EXPECT_TRUE(field.reading()->isStable);
    EXPECT_FALSE(field.reading()->isNet);
}

TEST_F(ScaleFieldTest, HasRoomForItsFiguresAndItsUnitAtEverySizeOfType)
{
    for (const double type : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, Ground::Light, type);
        ScaleField large("gross", 2.0);
        show(large, large.minimumSizeHint());
        const int figures = large.fontMetrics().horizontalAdvance("12345.6");
        EXPECT_GE(large.width(), figures + large.textMargins().right()) << type;
        EXPECT_GT(large.textMargins().right(), 0) << type;
    }
    applyTheme(*qApp, Ground::Light);
}

TEST_F(ScaleFieldTest, IsFramedWhileItIsDoubted)
{
    show(field, {300, 60});
    const QImage plain = field.grab().toImage();
    field.setDoubted(true);
    EXPECT_TRUE(field.property("wrong").toBool());
    EXPECT_NE(field.grab().toImage(), plain);
    field.setDoubted(false);
    EXPECT_EQ(field.grab().toImage(), plain);
}

} // namespace
} // namespace plumule::ui
