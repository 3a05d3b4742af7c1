#include "core/journal/room/room_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/watering/recipe_form.h"
#include "ui/widget/amount_field.h"

#include <QPushButton>

namespace plumule::ui {
namespace {

class RecipeFormTest : public UiTest
{
protected:
    [[nodiscard]] WaterRecipe nutrient()
    {
        const auto recipes = journal->watering().recipes();
        for (const WaterRecipe& recipe : *recipes) {
            if (recipe.water == WaterKind::Nutrient) {
                return recipe;
            }
        }
        return {};
    }
    void type(QWidget& form, const char* field, const QString& text)
    {
        auto* edit = find<QLineEdit>(form, field);
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, text);
    }
    void useUsUnits()
    {
        Room room = journal->room().layout()->room;
        room.units = UnitSystem::UsCustomary;
        ASSERT_TRUE(journal->room().changeRoom(room).has_value());
    }
};

TEST_F(RecipeFormTest, SavesWhatWasTyped)
{
    RecipeForm form(*journal, services());
    show(form, {600, 800});
    EXPECT_EQ(find<QLineEdit>(form, "nutrient_dose")->text(), "11.72");
    type(form, "nutrient_concentrate", "Leaf feed");
    type(form, "nutrient_dose", "8,5");
    type(form, "nutrient_ph_high", "6.2");
    QTest::mouseClick(find<QPushButton>(form, "nutrient_save"), Qt::LeftButton);
    EXPECT_EQ(nutrient().concentrate, "Leaf feed");
    EXPECT_EQ(nutrient().dosePerLitre, millilitres(8.5));
    EXPECT_EQ(nutrient().phHigh, 6.2);
    EXPECT_FALSE(messages.isRefusal());
}

// 1.5 US fl oz per US gallon is 11.72 mL/L (units of NIST SP 811).
TEST_F(RecipeFormTest, ShowsAndTakesTheDoseInTheRoomsUnits)
{
    useUsUnits();
    RecipeForm form(*journal, services());
    show(form, {600, 800});
    auto* dose = find<NumberField>(form, "nutrient_dose");
    EXPECT_EQ(dose->unit(), "fl oz/gal");
    EXPECT_EQ(dose->text(), "1.5");
    // Saved without having been typed over, it keeps its digits.
    QTest::keyClick(dose, Qt::Key_Return);
    EXPECT_EQ(nutrient().dosePerLitre, millilitres(11.72));
    type(form, "nutrient_dose", "2");
    QTest::keyClick(dose, Qt::Key_Return);
    EXPECT_NEAR(inMillilitres(*nutrient().dosePerLitre), 15.625, 1e-3);
}

TEST_F(RecipeFormTest, AnEmptiedDoseMeansThatNothingIsMeasured)
{
    RecipeForm form(*journal, services());
    show(form, {600, 800});
    auto* dose = find<QLineEdit>(form, "nutrient_dose");
    dose->setFocus();
    dose->selectAll();
    QTest::keyClick(dose, Qt::Key_Delete);
    QTest::keyClick(dose, Qt::Key_Return);
    EXPECT_EQ(nutrient().dosePerLitre, std::nullopt);
}

TEST_F(RecipeFormTest, RefusesABandUpsideDownAndANumberThatIsNone)
{
    const WaterRecipe before = nutrient();
    RecipeForm form(*journal, services());
    show(form, {600, 800});
    type(form, "nutrient_ph_low", "6.5");
    QTest::mouseClick(find<QPushButton>(form, "nutrient_save"), Qt::LeftButton);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(nutrient(), before);
    messages.clear();
    type(form, "nutrient_ph_low", "5.x");
    QTest::mouseClick(find<QPushButton>(form, "nutrient_save"), Qt::LeftButton);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(nutrient(), before);
}

TEST_F(RecipeFormTest, WhatIsTypedOutlivesAReloadOfOtherThings)
{
    RecipeForm form(*journal, services());
    show(form, {600, 800});
    type(form, "nutrient_concentrate", "Half typed");
    form.reload();
    EXPECT_EQ(find<QLineEdit>(form, "nutrient_concentrate")->text(), "Half typed");
}

} // namespace
} // namespace plumule::ui
