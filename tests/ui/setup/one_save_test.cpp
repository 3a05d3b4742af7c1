#include "core/journal/room/room_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/cost/price_part.h"
#include "ui/medium/medium_part.h"
#include "ui/room/room_part.h"
#include "ui/variety/seed_part.h"
#include "ui/variety/variety_part.h"
#include "ui/watering/water_part.h"

#include <QSpinBox>

namespace plumule::ui {
namespace {

// One Save is one entry of the history, whatever was changed in the form, and what the bar offers
// to undo is that Save.
class OneSaveTest : public SetupTest
{
protected:
    [[nodiscard]] std::size_t acts() { return journal->latestEntries(1000)->size(); }
    [[nodiscard]] bool offersUndo()
    {
        return find<QPushButton>(messages, "messageAction")->isVisibleTo(&messages);
    }
    // Saves what the form holds now, and then once more what is saved already.
    void saveOnce(QWidget& part, const char* save)
    {
        const std::size_t before = acts();
        press(part, save);
        EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_EQ(acts(), before + 1);
        const HistoryId saved = journal->latestEntries(1)->front().id;
        EXPECT_TRUE(offersUndo());
        press(part, save);
        EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_EQ(acts(), before + 1) << "nothing was different";
        EXPECT_FALSE(offersUndo()) << messages.text().toStdString();
        EXPECT_EQ(journal->latestEntries(1)->front().id, saved);
    }
    void beginSomethingElse() { ASSERT_EQ(sow(broccoli(1, kTwoDaysAgo)).size(), 1U); }
};

TEST_F(OneSaveTest, OfTheRoom)
{
    beginSomethingElse();
    const auto part = openPart<RoomPart>();
    const ShelfId shelf = journal->room().layout()->shelves.back().id;
    write(*part, "roomName", "Cellar");
    write(*part, "trayLength", "500");
    give(*part, "roomMorning", "6:30");
    write(*part, qPrintable(QStringLiteral("watts%1").arg(shelf.value)), "40");
    find<QSpinBox>(*part, qPrintable(QStringLiteral("places%1").arg(shelf.value)))->setValue(6);
    saveOnce(*part, "saveRoom");
}

TEST_F(OneSaveTest, OfAMedium)
{
    beginSomethingElse();
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    write(*part, "mediumName", "Hemp mat, thick");
    choose(*part, "mediumForm", nameOf(MediumForm::Mesh));
    saveOnce(*part, "saveRecord");
}

TEST_F(OneSaveTest, OfAVarietyWithItsProtocol)
{
    beginSomethingElse();
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Kale");
    write(*part, "varietySeed", "21");
    write(*part, "lightLength", "6.25");
    write(*part, "lightCue", "Leaves flat?");
    write(*part, "under_weightLength", "2.5");
    saveOnce(*part, "saveRecord");
}

TEST_F(OneSaveTest, OfASeedLot)
{
    beginSomethingElse();
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    write(*part, "lotNumber", "L7");
    write(*part, "lotBought", "1000");
    write(*part, "lotPrice", "32");
    saveOnce(*part, "saveRecord");
}

TEST_F(OneSaveTest, OfAPrice)
{
    beginSomethingElse();
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "water");
    write(*part, "priceAmount", "0.004");
    saveOnce(*part, "saveRecord");
}

TEST_F(OneSaveTest, OfARecipe)
{
    beginSomethingElse();
    const auto part = openPart<WaterPart>();
    write(*part, "nutrient_dose", "9");
    write(*part, "nutrient_ph_low", "5.4");
    write(*part, "nutrient_concentrate", "Leaf feed");
    saveOnce(*part, "nutrient_save");
}

} // namespace
} // namespace plumule::ui
