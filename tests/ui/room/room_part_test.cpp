#include "core/journal/room/room_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/room/room_part.h"

#include <QSpinBox>

#include <stdexcept>

namespace plumule::ui {
namespace {

class RoomPartTest : public SetupTest
{
protected:
    RoomLayout layout() { return journal->room().layout().value(); }
    [[nodiscard]] ShelfId firstShelf() { return layout().shelves.front().id; }
    // The first of the fields that stand on the part now, not one that is about to go.
    static QSpinBox* placesField(QWidget& part)
    {
        for (auto* each : part.findChildren<QSpinBox*>()) {
            if (each->isVisibleTo(&part) && each->objectName().startsWith("places")) {
                return each;
            }
        }
        throw std::runtime_error("no field of places");
    }
    static QPushButton* buttonSaying(QWidget& part, const QString& text)
    {
        for (auto* each : part.findChildren<QPushButton*>()) {
            if (each->isVisibleTo(&part) && each->text() == text) {
                return each;
            }
        }
        throw std::runtime_error("no button " + text.toStdString());
    }
};

TEST_F(RoomPartTest, SavesTheRoom)
{
    const auto part = openPart<RoomPart>();
    EXPECT_EQ(textOf(*part, "roomName"), "Test room");
    write(*part, "roomName", "Cellar");
    give(*part, "roomMorning", "6:30");
    give(*part, "roomEvening", "19:15");
    press(*part, "saveRoom");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(layout().room.name, "Cellar");
    EXPECT_EQ(layout().room.morningMinute, 6 * 60 + 30);
    EXPECT_EQ(layout().room.eveningMinute, 19 * 60 + 15);
    pressMessageAction();
    EXPECT_EQ(layout().room.name, "Test room");
    EXPECT_EQ(textOf(*part, "roomName"), "Test room");
}

TEST_F(RoomPartTest, SavesTheRoomInUsUnitsWithTheTraysSizeAsItWas)
{
    const auto part = openPart<RoomPart>();
    const Room before = layout().room;
    find<QComboBox>(*part, "roomUnits")->setCurrentIndex(1);
    press(*part, "saveRoom");
    EXPECT_EQ(layout().room.units, UnitSystem::UsCustomary);
    EXPECT_EQ(layout().room.trayLength, before.trayLength);
    EXPECT_EQ(layout().room.trayWidth, before.trayWidth);
    // Shown in inches now, and saved again as they are: 20 by 10 in.
    press(*part, "saveRoom");
    EXPECT_EQ(layout().room.trayLength, inches(20));
    EXPECT_EQ(layout().room.trayWidth, inches(10));
    QStringList shown;
    for (const auto* field : part->findChildren<QLineEdit*>()) {
        shown << field->text();
    }
    EXPECT_TRUE(shown.contains("20"));
    EXPECT_TRUE(shown.contains("10"));
}

TEST_F(RoomPartTest, RefusesAnEveningBeforeTheMorningAndARoomWithoutAName)
{
    const auto part = openPart<RoomPart>();
    const Room before = layout().room;
    give(*part, "roomEvening", "6:00");
    press(*part, "saveRoom");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("before the evening round"));
    give(*part, "roomEvening", "18:00");
    write(*part, "roomName", "");
    press(*part, "saveRoom");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(layout().room, before);
}

TEST_F(RoomPartTest, OneSaveSavesTheRoomAndItsShelvesAsOneAct)
{
    const auto part = openPart<RoomPart>();
    const RoomLayout before = layout();
    ASSERT_EQ(before.placesOn(firstShelf()), 4);
    write(*part, "roomName", "Cellar");
    placesField(*part)->setValue(6);
    const QString shelf = QString::number(firstShelf().value);
    write(*part, ("watts" + shelf).toLatin1(), "36.5");
    write(*part, ("hours" + shelf).toLatin1(), "16");
    EXPECT_TRUE(part->hasUnsaved());
    press(*part, "saveRoom");
    EXPECT_FALSE(part->hasUnsaved());
    EXPECT_EQ(layout().room.name, "Cellar");
    EXPECT_EQ(layout().placesOn(firstShelf()), 6);
    EXPECT_EQ(layout().shelves.front().lightMilliwatts, 36'500);
    EXPECT_EQ(layout().shelves.front().lightMinutes, 16 * 60);
    EXPECT_EQ(placesField(*part)->value(), 6);
    pressMessageAction();
    EXPECT_EQ(layout(), before) << "one Save is one act";
    EXPECT_EQ(placesField(*part)->value(), 4);
    EXPECT_EQ(textOf(*part, "roomName"), "Test room");
}

TEST_F(RoomPartTest, EnterSavesWhereverTheFocusIs)
{
    const auto part = openPart<RoomPart>();
    const QString shelf = QString::number(firstShelf().value);
    write(*part, ("hours" + shelf).toLatin1(), "12");
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(layout().shelves.front().lightMinutes, 12 * 60);
    EXPECT_EQ(nameOfFocus(), "hours" + shelf) << "and it stays there";
    placesField(*part)->setFocus();
    press(Qt::Key_Up);
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(layout().placesOn(firstShelf()), 5);
    find<QComboBox>(*part, "roomUnits")->setFocus();
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(layout().room.units, UnitSystem::UsCustomary);
}

TEST_F(RoomPartTest, KeepsPlacesThatTraysStoodOnAndWhatWasTyped)
{
    const auto trays = sow(broccoli(4, kTwoDaysAgo));
    ASSERT_EQ(trays.size(), 4U);
    const auto part = openPart<RoomPart>();
    placesField(*part)->setValue(2);
    write(*part, "roomName", "Cellar");
    press(*part, "saveRoom");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(layout().placesOn(firstShelf()), 4);
    EXPECT_EQ(layout().room.name, "Test room") << "all of it or nothing";
    EXPECT_EQ(textOf(*part, "roomName"), "Cellar");
    EXPECT_TRUE(part->hasUnsaved());
}

TEST_F(RoomPartTest, AsksBeforeWhatIsTypedMakesWayForAnotherAct)
{
    const auto part = openPart<RoomPart>();
    const auto racks = layout().racks.size();
    write(*part, "roomName", "Cellar");
    ask.lineAnswer = "Window";
    ask.whenUnsaved = ScriptedAsk::Unsaved::Stay;
    press(*part, "addRack");
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(layout().racks.size(), racks);
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    press(*part, "addRack");
    EXPECT_EQ(layout().racks.size(), racks + 1);
    EXPECT_EQ(layout().room.name, "Cellar");
}

TEST_F(RoomPartTest, ProposesTheCurrencyOfTheUnits)
{
    const auto part = openPart<RoomPart>();
    auto* units = find<QComboBox>(*part, "roomUnits");
    units->setFocus();
    EXPECT_EQ(textOf(*part, "roomCurrency"), "EUR");
    press(Qt::Key_Down);
    EXPECT_EQ(textOf(*part, "roomCurrency"), "USD");
    press(Qt::Key_Up);
    EXPECT_EQ(textOf(*part, "roomCurrency"), "EUR");
    write(*part, "roomCurrency", "CHF");
    units->setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(textOf(*part, "roomCurrency"), "CHF") << "what the grower wrote stays";
}

TEST_F(RoomPartTest, AddsARackAndRemovesIt)
{
    const auto part = openPart<RoomPart>();
    const auto racks = layout().racks.size();
    ask.lineAnswer = "Window";
    press(*part, "addRack");
    ASSERT_EQ(layout().racks.size(), racks + 1);
    EXPECT_EQ(layout().racks.back().name, "Window");
    EXPECT_EQ(layout().placesOn(layout().shelves.back().id), 4);
    EXPECT_TRUE(textsIn(*part).contains("Rack Window"));
    press(*part, "addRack");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(layout().racks.size(), racks + 1);
}

TEST_F(RoomPartTest, RenamesARackAndAddsAShelf)
{
    const auto part = openPart<RoomPart>();
    const auto shelves = layout().shelves.size();
    ask.lineAnswer = "North";
    click(buttonSaying(*part, "Rename…"));
    settleDown();
    EXPECT_EQ(layout().racks.front().name, "North");
    ask.lineAnswer = "top";
    click(buttonSaying(*part, "Add a shelf…"));
    settleDown();
    EXPECT_EQ(layout().shelves.size(), shelves + 1);
    EXPECT_TRUE(textsIn(*part).contains("Shelf top"));
}

TEST_F(RoomPartTest, TellsItsFieldsApartByName)
{
    const auto part = openPart<RoomPart>();
    QStringList names;
    QStringList spoken;
    for (auto* each : part->findChildren<QSpinBox*>()) {
        names << each->objectName();
        spoken << each->accessibleName();
    }
    ASSERT_EQ(names.size(), 8);
    EXPECT_EQ(names.removeDuplicates(), 0) << names.join(' ').toStdString();
    EXPECT_EQ(spoken.removeDuplicates(), 0) << spoken.join(' ').toStdString();
}

TEST_F(RoomPartTest, SaysWhatIsDangerousAboutWaterAndElectricity)
{
    const auto part = openPart<RoomPart>();
    const QString all = textsIn(*part).join(' ');
    EXPECT_TRUE(all.contains("residual-current"));
    EXPECT_TRUE(all.contains("licensed electrician"));
}

} // namespace
} // namespace plumule::ui
