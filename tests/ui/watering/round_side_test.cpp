#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/support/look_check.h"
#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/round_side.h"
#include "ui/watering/water_part.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {
namespace {

class RoundSideTest : public RoundPartTest
{
protected:
    void SetUp() override
    {
        RoundPartTest::SetUp();
        const auto trays = sowBroccoli(4, kInLight);
        bringIntoLight(trays, kInLight);
    }
    void TearDown() override { UnitText::measureSmallIn(SmallVolume::FluidOunce); }
    // Amounts are kept on one line by marks that are not seen.
    static QString plain(QString text)
    {
        return text.remove(QChar(0x2060)).replace(QChar(QChar::Nbsp), ' ');
    }
    [[nodiscard]] QString said(const char* card)
    {
        QStringList texts;
        for (const QLabel* each : find<QWidget>(*page, card)->findChildren<QLabel*>()) {
            if (each->isVisible()) {
                texts << plain(each->text());
            }
        }
        return texts.join('|');
    }
    void useUsUnits()
    {
        Room room = journal->room().layout()->room;
        room.units = UnitSystem::UsCustomary;
        ASSERT_TRUE(journal->room().changeRoom(room));
    }
    [[nodiscard]] std::optional<WaterReading> lastReading()
    {
        const auto round = journal->watering().roundNow();
        return round->mix.empty() ? std::nullopt : round->mix.front().lastReading;
    }
};

TEST_F(RoundSideTest, TheSumToMixFollowsWhatIsStillOnTheRacks)
{
    open();
    const QString four = said("mix");
    ASSERT_TRUE(
        journal->trays().discard(journal->trays().find("BR001").value(), "mould", clock.now()));
    // Half a US cup each (118 mL; common practice, no source): 354 mL for three.
    const QString three = plain(UnitText(UnitSystem::Metric).mixed(millilitres(354)));
    EXPECT_TRUE(soon([&] { return said("mix").contains(three); }))
        << four.toStdString() << " and then " << said("mix").toStdString();
}

TEST_F(RoundSideTest, AReadingIsNotedByEnterFromEitherField)
{
    open();
    letter(Qt::Key_M, [] { return nameOfFocus() == "mixPh"; });
    QTest::keyClicks(QApplication::focusWidget(), "5.8");
    press(Qt::Key_Tab);
    ASSERT_EQ(nameOfFocus(), "mixEc");
    QTest::keyClicks(QApplication::focusWidget(), "1250");
    const std::size_t before = acts();
    press(Qt::Key_Return);
    ASSERT_TRUE(lastReading());
    EXPECT_EQ(lastReading()->ph, 5.8);
    EXPECT_EQ(lastReading()->ec, 1250);
    EXPECT_EQ(acts(), before + 1);
    EXPECT_FALSE(isShown("mixPh"));
    EXPECT_TRUE(soon([&] { return said("mix").contains("Last reading"); })) << "within its band";
    EXPECT_NE(rowInHand(), nullptr) << "back at the rack";
    click(find<QPushButton>(messages, "messageAction"));
    EXPECT_FALSE(lastReading());
}

TEST_F(RoundSideTest, AReadingThatIsNoneIsMarkedAndTheFieldsStay)
{
    open();
    letter(Qt::Key_M, [] { return nameOfFocus() == "mixPh"; });
    for (const char* typed : {"15", "acid", "5,8,1"}) {
        write(*page, "mixPh", typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(isShown("mixPh")) << typed;
        EXPECT_EQ(nameOfFocus(), "mixPh") << typed;
        EXPECT_TRUE(find<QLineEdit>(*page, "mixPh")->property("wrong").toBool()) << typed;
        EXPECT_FALSE(lastReading()) << typed;
    }
    write(*page, "mixPh", "");
    write(*page, "mixEc", "99999");
    press(Qt::Key_Return);
    EXPECT_EQ(nameOfFocus(), "mixEc");
    EXPECT_FALSE(lastReading());
}

TEST_F(RoundSideTest, EscapeLeavesTheReadingAndTheNextOneBeginsEmpty)
{
    open();
    letter(Qt::Key_M, [] { return nameOfFocus() == "mixPh"; });
    QTest::keyClicks(QApplication::focusWidget(), "5.8");
    press(Qt::Key_Escape);
    EXPECT_FALSE(isShown("mixPh"));
    EXPECT_TRUE(isShown("noteReading"));
    EXPECT_FALSE(lastReading());
    letter(Qt::Key_M, [] { return nameOfFocus() == "mixPh"; });
    EXPECT_EQ(find<QLineEdit>(*page, "mixPh")->text(), "");
}

TEST_F(RoundSideTest, AReadingThatTheJournalRefusesIsNotLost)
{
    open();
    pressButton("dayAfter");
    letter(Qt::Key_M, [] { return nameOfFocus() == "mixPh"; });
    QTest::keyClicks(QApplication::focusWidget(), "5.8");
    press(Qt::Key_Return);
    EXPECT_TRUE(messages.isRefusal()) << "a round to come is not measured yet";
    EXPECT_TRUE(isShown("mixPh"));
    EXPECT_EQ(find<QLineEdit>(*page, "mixPh")->text(), "5.8");
    EXPECT_FALSE(lastReading());
}

TEST_F(RoundSideTest, TheReadingIsOfTheKindThatIsChosen)
{
    open();
    pressButton("noteReading");
    click(find<Segmented>(*page, "readingKind")->segment(1));
    find<QLineEdit>(*page, "mixPh")->setFocus();
    QTest::keyClicks(find<QLineEdit>(*page, "mixPh"), "6.1");
    pressButton("saveReading");
    EXPECT_FALSE(lastReading()) << "the mix for these trays is another";
    EXPECT_TRUE(messages.text().contains(nameOf(WaterKind::PhSet)))
        << messages.text().toStdString();
}

TEST_F(RoundSideTest, TomorrowCountsWhatComes)
{
    sowBroccoli(2, kUnderWeight); // three days under weight end tomorrow
    open();
    const QString tomorrow = said("tomorrow");
    EXPECT_TRUE(tomorrow.contains("Into blackout|2 trays")) << tomorrow.toStdString();
    EXPECT_TRUE(tomorrow.contains("Into light|0 trays"));
    EXPECT_TRUE(tomorrow.contains("Free places now|26 of 32"));
    pressButton("dayAfter");
    EXPECT_TRUE(said("tomorrow").startsWith("Saturday 14 March")) << said("tomorrow").toStdString();
}

// 4 · 4 US fl oz = 473.2 mL; 1 US fl oz = 29.5735 mL (NIST SP 811).
TEST_F(RoundSideTest, UsUnitsSayAmountsAsTheyAreMeasured)
{
    useUsUnits();
    open();
    EXPECT_TRUE(said("mix").contains("pt") || said("mix").contains("cup") ||
                said("mix").contains("fl oz"))
        << said("mix").toStdString();
    EXPECT_TRUE(said("mix").contains("5.5 mL"))
        << "concentrate under an ounce is said in mL: " << said("mix").toStdString();
}

TEST_F(RoundSideTest, SmallAmountsAreSaidAsTheGrowerChooses)
{
    useUsUnits();
    WaterPart part(*journal, services());
    show(part, {900, 800});
    part.reload();
    auto* small = find<Segmented>(part, "smallVolumes");
    ASSERT_TRUE(small->isVisible());
    click(small->segment(2));
    EXPECT_EQ(preferences.get(Preference::SmallVolumes).toString(), "ml");
    EXPECT_EQ(UnitText(UnitSystem::UsCustomary).watering(millilitres(118.294)), "118 mL");
    click(small->segment(0));
    EXPECT_EQ(UnitText(UnitSystem::UsCustomary).watering(millilitres(118.294)), "4.0 fl oz");
}

TEST_F(RoundSideTest, WithoutADoseItSaysSo)
{
    const auto recipes = journal->watering().recipes();
    for (WaterRecipe recipe : *recipes) {
        if (recipe.water == WaterKind::Nutrient) {
            recipe.dosePerLitre.reset();
            ASSERT_TRUE(journal->watering().changeRecipe(recipe));
        }
    }
    open();
    EXPECT_TRUE(said("mix").contains("No dose is set up for it.")) << said("mix").toStdString();
}

TEST_F(RoundSideTest, AConcentrateWithMarksIsReadAsItIs)
{
    const auto recipes = journal->watering().recipes();
    for (WaterRecipe recipe : *recipes) {
        if (recipe.water == WaterKind::Nutrient) {
            recipe.concentrate = "<b>Leaf</b> & %1";
            ASSERT_TRUE(journal->watering().changeRecipe(recipe));
        }
    }
    open();
    EXPECT_TRUE(said("mix").contains("<b>Leaf</b> & %1 ")) << said("mix").toStdString();
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
}

TEST_F(RoundSideTest, FreePlacesAreNamedUnderThePointerWithoutMarks)
{
    auto layout = journal->room().layout().value();
    Rack rack = layout.racks.front();
    rack.name = "<i>Left</i>";
    ASSERT_TRUE(journal->room().changeRack(rack));
    open();
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
}

// The recipes on the set-up page.
class WaterPartTest : public RoundSideTest
{
protected:
    std::unique_ptr<WaterPart> part;

    void openPart()
    {
        messages.setWindowFlags(Qt::ToolTip);
        part = std::make_unique<WaterPart>(*journal, services());
        show(*part, {900, 800});
        part->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(part.get()));
        part->reload();
    }
    [[nodiscard]] WaterRecipe recipeOf(WaterKind water)
    {
        const auto recipes = journal->watering().recipes();
        for (const WaterRecipe& each : *recipes) {
            if (each.water == water) {
                return each;
            }
        }
        return {};
    }
};

TEST_F(WaterPartTest, KnowsWhatWasTypedAndNotSaved)
{
    openPart();
    EXPECT_FALSE(part->hasUnsaved());
    write(*part, "ph_set_concentrate", "Vinegar");
    EXPECT_TRUE(part->hasUnsaved());
    write(*part, "nutrient_dose", "9");
    EXPECT_TRUE(part->saveTyped());
    EXPECT_FALSE(part->hasUnsaved());
    EXPECT_EQ(recipeOf(WaterKind::PhSet).concentrate, "Vinegar");
    EXPECT_EQ(recipeOf(WaterKind::Nutrient).dosePerLitre, millilitres(9));
}

TEST_F(WaterPartTest, WhatIsRefusedStaysUnsaved)
{
    openPart();
    const WaterRecipe before = recipeOf(WaterKind::Nutrient);
    write(*part, "nutrient_ph_low", "9");
    EXPECT_FALSE(part->saveTyped()) << "above the highest";
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(part->hasUnsaved());
    EXPECT_EQ(recipeOf(WaterKind::Nutrient), before);
}

TEST_F(WaterPartTest, EnterSavesTheRecipeThatItIsTypedInAloneAndOnce)
{
    openPart();
    write(*part, "ph_set_concentrate", "Half typed");
    write(*part, "nutrient_ec_high", "1750");
    const std::size_t before = acts();
    press(Qt::Key_Return);
    EXPECT_EQ(acts(), before + 1);
    EXPECT_EQ(recipeOf(WaterKind::Nutrient).ecHigh, 1750);
    EXPECT_EQ(recipeOf(WaterKind::PhSet).concentrate, "");
    EXPECT_EQ(find<QLineEdit>(*part, "ph_set_concentrate")->text(), "Half typed");
    EXPECT_TRUE(part->hasUnsaved());
    click(find<QPushButton>(messages, "messageAction"));
    EXPECT_NE(recipeOf(WaterKind::Nutrient).ecHigh, 1750);
}

TEST_F(WaterPartTest, SavingAnUntouchedRecipeSaysSoAndOffersNoUndo)
{
    openPart();
    const std::size_t before = acts();
    click(find<QPushButton>(*part, "nutrient_save"));
    EXPECT_EQ(acts(), before);
    EXPECT_TRUE(messages.text().startsWith("Nothing was different"));
    EXPECT_FALSE(find<QPushButton>(messages, "messageAction")->isVisible());
}

TEST_F(WaterPartTest, SmallVolumesAreAskedForInUsUnitsAlone)
{
    openPart();
    EXPECT_FALSE(find<Segmented>(*part, "smallVolumes")->isVisible());
    useUsUnits();
    part->reload();
    EXPECT_TRUE(find<Segmented>(*part, "smallVolumes")->isVisible());
}

} // namespace
} // namespace plumule::ui
