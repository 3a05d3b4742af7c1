#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/history/history_page.h"

#include "tests/ui/support/growing.h"
#include "tests/ui/support/large_act.h"
#include "ui/widget/date_field.h"

#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QTableView>

#include <sqlite3.h>

namespace plumule::ui {
namespace {

// A room in which broccoli was sown two days ago, named and moved about since.
class HistoryPageTest : public GrowingTest
{
protected:
    void SetUp() override
    {
        GrowingTest::SetUp();
        trays = journal->trays().sow(broccoli(2, kTwoDaysAgo)).value();
        rename("North room");
        page = std::make_unique<HistoryPage>(*journal, services());
        journal->addListener([this](const std::vector<Change>&) { page->noteChange(); });
        show(*page, {1100, 700});
        table = find<QTableView>(*page, "history");
    }
    void TearDown() override
    {
        page.reset();
        GrowingTest::TearDown();
    }
    void rename(const char* name)
    {
        Room room = journal->room().layout()->room;
        room.name = name;
        ASSERT_TRUE(journal->room().changeRoom(room));
    }
    [[nodiscard]] QString roomName()
    {
        return QString::fromStdString(journal->room().layout()->room.name);
    }
    [[nodiscard]] QString cell(int row, int column) const
    {
        return table->model()->index(row, column).data().toString();
    }
    void choose(int row) { table->setCurrentIndex(table->model()->index(row, 0)); }
    [[nodiscard]] QString words(const char* name) const
    {
        return page->findChild<QLabel*>(name)->text();
    }
    [[nodiscard]] QPushButton* act() const { return page->findChild<QPushButton*>("takeBackAct"); }

    std::vector<TrayId> trays;
    std::unique_ptr<HistoryPage> page;
    QTableView* table = nullptr;
};

TEST_F(HistoryPageTest, ListsWhatWasDoneNewestFirst)
{
    ASSERT_EQ(table->model()->rowCount(), 2);
    EXPECT_EQ(cell(0, 2), "Changed the room North room.");
    EXPECT_EQ(cell(1, 2), "Sowed BR001, BR002.");
    EXPECT_TRUE(cell(0, 0).endsWith("today")) << cell(0, 0).toStdString();
    EXPECT_EQ(cell(1, 0), "") << "a day is said once";
    EXPECT_FALSE(act()->isVisibleTo(page.get()));
}

TEST_F(HistoryPageTest, SaysWhatTakingBackComesToBeforeItIsDone)
{
    choose(0);
    EXPECT_EQ(words("takeBackDeed"), "Changed the room North room.");
    EXPECT_TRUE(words("takeBackWords").startsWith("Becomes as it was: the room"));
    QStringList values;
    for (const QLabel* value :
         page->findChild<QWidget*>("takeBackValues")->findChildren<QLabel*>()) {
        values << value->text();
    }
    EXPECT_TRUE(values.contains("name"));
    EXPECT_TRUE(values.contains("North room"));
    EXPECT_EQ(roomName(), "North room") << "only said";
    choose(1);
    EXPECT_TRUE(words("takeBackWords").contains("Goes: "));
    EXPECT_TRUE(words("takeBackWords").contains("2 trays"));
}

// It is tried beside the window, which may write nothing meanwhile.
TEST_F(HistoryPageTest, OfALargeActItIsSaidWhenItWasTried)
{
    bringInManyTrays(*journal, folder.path());
    ASSERT_TRUE(soon([this] { return table->model()->rowCount() == 3; }));
    choose(0);
    EXPECT_NE(QApplication::activeModalWidget(), nullptr);
    ASSERT_TRUE(soon([] { return QApplication::activeModalWidget() == nullptr; }));
    EXPECT_TRUE(words("takeBackWords").contains("700 trays"))
        << words("takeBackWords").toStdString();
    EXPECT_TRUE(act()->isVisibleTo(page.get()));
    EXPECT_TRUE(journal->trays().find("X699").has_value()) << "only tried";
}

TEST_F(HistoryPageTest, TakesBackByTwoEntersAndDoesItAgain)
{
    const QString before = roomName();
    choose(0);
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Return);
    EXPECT_EQ(roomName(), before) << "the first Enter only goes to the button";
    EXPECT_EQ(page->focusWidget(), act());
    act()->click();
    EXPECT_NE(roomName(), before);
    ASSERT_TRUE(soon([&] { return cell(0, 3) == "taken back"; }));
    EXPECT_EQ(act()->text(), "Do it again");
    act()->click();
    EXPECT_EQ(roomName(), before);
    ASSERT_TRUE(soon([&] { return cell(0, 3).isEmpty(); }));
}

TEST_F(HistoryPageTest, TakesAnOlderOneBackWhereNothingRestsOnIt)
{
    choose(1);
    act()->click();
    EXPECT_TRUE(journal->trays().list(TrayFilter()).value().empty());
    EXPECT_EQ(roomName(), "North room") << "what came after stays";
}

TEST_F(HistoryPageTest, SaysWhyAnOlderOneStays)
{
    ASSERT_TRUE(
        journal->trays().noteHeight(trays[0], millimetres(8), ReadFrom::Surface, clock.now()));
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 3; }));
    choose(2);
    EXPECT_FALSE(act()->isVisibleTo(page.get()));
    EXPECT_EQ(words("takeBackWords"),
              "Later entries hang on what would go: take those back first.");
}

TEST_F(HistoryPageTest, WhatWasOvertakenIsNotOfferedAgain)
{
    ASSERT_TRUE(journal->undo());
    rename("South room");
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 3; }));
    EXPECT_EQ(cell(1, 3), "taken back");
    choose(1);
    EXPECT_FALSE(act()->isVisibleTo(page.get()));
    EXPECT_TRUE(words("takeBackWords").contains("Other work was done"));
}

TEST_F(HistoryPageTest, LooksForWordsAndKinds)
{
    auto* search = find<QLineEdit>(*page, "historySearch");
    QTest::keyClicks(search, "north");
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(cell(0, 2), "Changed the room North room.");
    search->clear();
    auto* kind = find<QComboBox>(*page, "historyKind");
    kind->setCurrentIndex(kind->findText("Trays"));
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(cell(0, 2), "Sowed BR001, BR002.");
    kind->setCurrentIndex(kind->findText("Weights"));
    EXPECT_FALSE(table->isVisibleTo(page.get()));
    EXPECT_TRUE(page->find());
    EXPECT_EQ(page->focusWidget(), search);
}

TEST_F(HistoryPageTest, FindsTheActsOnATrayThoughTheyDoNotNameIt)
{
    const QString path = folder.filePath("table.csv");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("code,variety,medium,sown,seed_g,harvested,net_g\n"
               "XA1,Radish,Coir mix,2026-01-10,30,2026-01-20,200\n"
               "XA2,Radish,Coir mix,2026-01-10,30,2026-01-20,210\n");
    file.close();
    const auto preview = journal->exchange().preview(path.toStdString());
    ASSERT_TRUE(preview && journal->exchange().importTable(*preview, "table.csv"));
    ASSERT_TRUE(journal->trays().setAside(journal->trays().find("XA2").value(), "fell"));
    settleDown();
    QTest::keyClicks(find<QLineEdit>(*page, "historySearch"), "xa1");
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(cell(0, 2), "Brought in the table table.csv.");
}

TEST_F(HistoryPageTest, LooksForADay)
{
    const Moment now = clock.now();
    clock.set({now.date - 1, now.minute});
    rename("Yesterday's room");
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 3; }));
    auto* day = find<DateField>(*page, "historyDay");
    write(*page, "historyDay", QString::fromStdString(toIso(now.date - 1)));
    QTest::keyClick(day, Qt::Key_Return);
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(cell(0, 2), "Changed the room Yesterday's room.");
    write(*page, "historyDay", "2026-01-01");
    QTest::keyClick(day, Qt::Key_Return);
    EXPECT_FALSE(table->isVisibleTo(page.get()));
    day->clear();
    QTest::keyClick(day, Qt::Key_Return);
    EXPECT_EQ(table->model()->rowCount(), 3);
}

// More than is read at once.
TEST_F(HistoryPageTest, LooksForADayLongAgo)
{
    const Moment now = clock.now();
    for (int i = 0; i < 410; ++i) {
        clock.set({now.date + 1, now.minute});
        rename(i % 2 == 0 ? "One" : "Two");
    }
    page->reload();
    ASSERT_EQ(table->model()->rowCount(), 400);
    write(*page, "historyDay", QString::fromStdString(toIso(now.date)));
    QTest::keyClick(find<DateField>(*page, "historyDay"), Qt::Key_Return);
    EXPECT_EQ(table->model()->rowCount(), 2);
}

// A row that can't be read costs its own line.
TEST_F(HistoryPageTest, ADamagedActCostsOneLine)
{
    page.reset();
    const std::filesystem::path path = journal->path();
    journal.reset();
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(other,
                           "PRAGMA ignore_check_constraints=ON; UPDATE history SET state = 'limbo' "
                           "WHERE id = (SELECT max(id) FROM "
                           "history)",
                           nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(other);
    journal = Journal::open(path, clock, Access::ReadOnly).value();
    page = std::make_unique<HistoryPage>(*journal, services());
    show(*page, {1100, 700});
    table = find<QTableView>(*page, "history");
    ASSERT_EQ(table->model()->rowCount(), 2);
    EXPECT_TRUE(cell(0, 2).contains("can't be read")) << cell(0, 2).toStdString();
    EXPECT_EQ(cell(0, 3), "damaged");
    EXPECT_EQ(cell(1, 2), "Sowed BR001, BR002.");
    choose(0);
    EXPECT_FALSE(act()->isVisibleTo(page.get()));
    EXPECT_TRUE(words("takeBackWords").contains("Check for damage"));
}

TEST_F(HistoryPageTest, ShowsNamesAsTheyWereTypedAndNothingOfTheirMarks)
{
    rename("<b>Cellar</b>");
    ASSERT_TRUE(soon([&] { return table->model()->rowCount() == 3; }));
    choose(0);
    const auto* deed = page->findChild<QLabel*>("takeBackDeed");
    EXPECT_EQ(deed->text(), "Changed the room <b>Cellar</b>.");
    EXPECT_EQ(deed->textFormat(), Qt::PlainText);
}

TEST_F(HistoryPageTest, StandsBelowTheListWhereTheWindowIsNarrow)
{
    choose(0);
    const auto* card = page->findChild<QWidget*>("takeBack");
    EXPECT_GT(card->x(), table->parentWidget()->x());
    page->resize(640, 700);
    QCoreApplication::processEvents();
    EXPECT_GE(card->y(), table->parentWidget()->geometry().bottom());
}

} // namespace
} // namespace plumule::ui
