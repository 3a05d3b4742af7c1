#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/growing.h"
#include "tests/ui/support/large_act.h"
#include "ui/page/undoing.h"

namespace plumule::ui {
namespace {

class UndoingTest : public GrowingTest
{
protected:
    void pressAction(const QString& expected)
    {
        auto* action = messages.findChild<QPushButton*>("messageAction");
        ASSERT_NE(action, nullptr);
        ASSERT_TRUE(action->isVisibleTo(&messages));
        ASSERT_EQ(action->text(), expected);
        action->click();
    }
    [[nodiscard]] QString roomName()
    {
        return QString::fromStdString(journal->room().layout()->room.name);
    }
    void rename(const char* name)
    {
        Room room = journal->room().layout()->room;
        room.name = name;
        ASSERT_TRUE(journal->room().changeRoom(room));
    }
};

TEST_F(UndoingTest, SaysNothingWhereNothingWasDone)
{
    tellLast(*journal, services());
    EXPECT_EQ(messages.text(), "");
    takeBack(*journal, services());
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(UndoingTest, TakesBackAndDoesAgain)
{
    rename("North room");
    tellLast(*journal, services());
    EXPECT_FALSE(messages.text().isEmpty());
    pressAction("Undo");
    EXPECT_TRUE(messages.text().startsWith("Taken back"));
    EXPECT_EQ(roomName(), "Test room");
    pressAction("Redo");
    EXPECT_EQ(roomName(), "North room");
    pressAction("Undo");
    EXPECT_EQ(roomName(), "Test room");
}

TEST_F(UndoingTest, TheBarsButtonIsOfTheActItSpeaksOf)
{
    const auto sown = journal->trays().sow(broccoli(1, kTwoDaysAgo));
    ASSERT_TRUE(sown.has_value());
    tellDone(*journal, services(), "Sown, in words of the page's own.");
    EXPECT_EQ(messages.text(), "Sown, in words of the page's own.");
    rename("North room");
    pressAction("Undo");
    EXPECT_EQ(roomName(), "North room") << "what came after it stands";
    EXPECT_FALSE(journal->trays().find("BR001").has_value());
}

TEST_F(UndoingTest, SaysWhyItIsRefused)
{
    rename("North room");
    tellLast(*journal, services());
    rename("South room");
    pressAction("Undo");
    EXPECT_TRUE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(roomName(), "South room");
}

TEST_F(UndoingTest, WhatChangedVeryManyRowsIsTakenBackBesideTheWindow)
{
    bringInManyTrays(*journal, folder.path());
    tellLast(*journal, services());
    ASSERT_TRUE(isLarge(*journal->nextUndo()));

    std::size_t heard = 0;
    journal->addListener([&heard](const std::vector<Change>& changes) { heard += changes.size(); });
    const auto isThere = [this] { return journal->trays().find("X699").has_value(); };
    pressAction("Undo");
    ASSERT_NE(QApplication::activeModalWidget(), nullptr) << "nothing else is written meanwhile";
    QTest::keyClick(QApplication::activeModalWidget(), Qt::Key_Escape);
    EXPECT_NE(QApplication::activeModalWidget(), nullptr) << "it can't be closed by hand";
    EXPECT_TRUE(soon([this] { return messages.text().startsWith("Taken back"); }));
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_FALSE(isThere());
    EXPECT_GT(heard, 2'000u);
    pressAction("Redo");
    EXPECT_TRUE(soon([this] { return QApplication::activeModalWidget() == nullptr; }));
    EXPECT_TRUE(isThere());
    rename("North room");
    pressAction("Undo");
    EXPECT_TRUE(soon([&] { return !isThere(); })) << messages.text().toStdString();
    EXPECT_EQ(roomName(), "North room");
}

} // namespace
} // namespace plumule::ui
