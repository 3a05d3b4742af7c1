#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/storage/storage_reason.h"
#include "tests/ui/support/growing.h"
#include "ui/window/first_start.h"

#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QSignalSpy>
#include <QSpinBox>

namespace plumule::ui {
namespace {

class FirstStartTest : public GrowingTest
{
protected:
    std::unique_ptr<FirstStart> start;
    std::unique_ptr<QSignalSpy> chosen;

    void openStart()
    {
        start = std::make_unique<FirstStart>(clock, ask);
        chosen = std::make_unique<QSignalSpy>(start.get(), &FirstStart::chosen);
        show(*start, {700, 720});
        start->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(start.get()));
    }
    [[nodiscard]] QString refusal()
    {
        auto* words = find<QLabel>(*start, "refusal");
        return words->isVisible() ? words->text() : QString();
    }
    [[nodiscard]] std::unique_ptr<Journal> made()
    {
        auto opened = Journal::open(chosen->front().front().toString().toStdString(), clock);
        EXPECT_TRUE(opened);
        return opened ? std::move(*opened) : nullptr;
    }
};

TEST_F(FirstStartTest, MakesANewJournalAsAsked)
{
    openStart();
    write(*start, "roomName", "Back room");
    find<QSpinBox>(*start, "racks")->setValue(3);
    find<QSpinBox>(*start, "shelves")->setValue(5);
    find<QSpinBox>(*start, "places")->setValue(2);
    give(*start, "morning", "6:30");
    find<QComboBox>(*start, "units")->setCurrentIndex(1);
    write(*start, "currency", "USD");
    ask.fileAnswer = folder.path() + "/Back room"; // its ending is added
    click(find<QPushButton>(*start, "makeNew"));
    ASSERT_EQ(chosen->count(), 1) << refusal().toStdString();
    EXPECT_EQ(chosen->front().front().toString(), folder.path() + "/Back room.plumule");
    const auto opened = made();
    ASSERT_NE(opened, nullptr);
    EXPECT_FALSE(opened->isReadOnly());
    const auto layout = opened->room().layout();
    EXPECT_EQ(layout->room.name, "Back room");
    EXPECT_EQ(layout->room.units, UnitSystem::UsCustomary);
    EXPECT_EQ(layout->room.currency, "USD");
    EXPECT_EQ(layout->room.morningMinute, 6 * 60 + 30);
    EXPECT_EQ(opened->room().freeSpots()->size(), 30U);
    EXPECT_FALSE(opened->varieties().all()->empty());
}

TEST_F(FirstStartTest, RefusesARoomWithoutAName)
{
    openStart();
    write(*start, "roomName", "  ");
    click(find<QPushButton>(*start, "makeNew"));
    EXPECT_EQ(refusal(), "Please give the room a name.");
    EXPECT_EQ(nameOfFocus(), "roomName");
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_EQ(chosen->count(), 0);
}

TEST_F(FirstStartTest, RefusesAnEveningBeforeTheMorning)
{
    openStart();
    give(*start, "morning", "19:00");
    click(find<QPushButton>(*start, "makeNew"));
    EXPECT_TRUE(refusal().contains("morning round comes before"));
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_EQ(chosen->count(), 0);
}

TEST_F(FirstStartTest, WritesOverNothing)
{
    const QString path = folder.path() + "/there.plumule";
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("mine");
    file.close();
    openStart();
    ask.fileAnswer = path;
    click(find<QPushButton>(*start, "makeNew"));
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_EQ(chosen->count(), 0);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "mine");
}

TEST_F(FirstStartTest, LeavesEverythingWhereTheFileQuestionIsLeft)
{
    openStart();
    click(find<QPushButton>(*start, "makeNew"));
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(chosen->count(), 0);
    EXPECT_EQ(refusal(), "");
    EXPECT_TRUE(start->isVisible());
}

TEST_F(FirstStartTest, OpensOneThatIsThere)
{
    openStart();
    ask.fileAnswer = folder.path() + "/test.plumule";
    click(find<QPushButton>(*start, "openExisting"));
    ASSERT_EQ(chosen->count(), 1);
    EXPECT_EQ(chosen->front().front().toString(), ask.fileAnswer);
}

TEST_F(FirstStartTest, MakesTheInventedSampleRoom)
{
    openStart();
    ask.fileAnswer = folder.path() + "/sample.plumule";
    click(find<QPushButton>(*start, "makeSample"));
    ASSERT_EQ(chosen->count(), 1) << refusal().toStdString();
    const auto opened = made();
    ASSERT_NE(opened, nullptr);
    EXPECT_GT(opened->trays().list({})->size(), 100U);
    EXPECT_FALSE(textsIn(*start).filter("is invented").isEmpty());
}

TEST_F(FirstStartTest, SaysWhyTheLastJournalCantBeOpenedAndWhatToDo)
{
    openStart();
    auto* words = find<QLabel>(*start, "troubleWords");
    EXPECT_FALSE(words->isVisible());
    const std::tuple<ErrorKind, StorageReason, const char*> table[] = {
        {ErrorKind::NotFound, StorageReason::FileMissing, "drive is not connected"},
        {ErrorKind::Damaged, StorageReason::FileDamaged, "latest backup"},
        {ErrorKind::NewerVersion, StorageReason::MadeByNewer, "Install that Plumule again"},
        {ErrorKind::NotAJournal, StorageReason::NotAJournal, "Another file stands in its place"},
        {ErrorKind::Unreadable, StorageReason::FileUnreadable,
         "check that it is there and that you may open it"},
        {ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, "close it there"},
    };
    for (const auto& [kind, reason, advice] : table) {
        start->explain("/room/green.plumule", fail(kind, reason, "green.plumule").value());
        EXPECT_TRUE(words->isVisible());
        EXPECT_TRUE(words->text().contains("/room/green.plumule"));
        EXPECT_TRUE(words->text().contains(advice)) << words->text().toStdString();
        EXPECT_EQ(words->text().count(advice), 1) << "what to do is said once";
        EXPECT_LE(words->text().count('.'), 4) << words->text().toStdString();
    }
    click(find<QPushButton>(*start, "tryAgain"));
    ASSERT_EQ(chosen->count(), 1);
    EXPECT_EQ(chosen->front().front().toString(), "/room/green.plumule");
    ask.fileAnswer = folder.path() + "/backup.plumule";
    click(find<QPushButton>(*start, "openBackup"));
    ASSERT_EQ(chosen->count(), 2);
    EXPECT_EQ(chosen->back().front().toString(), ask.fileAnswer);
}

TEST_F(FirstStartTest, UsUnitsProposeDollars)
{
    openStart();
    auto* units = find<QComboBox>(*start, "units");
    units->setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(find<QLineEdit>(*start, "currency")->text(), "USD");
    write(*start, "currency", "CAD");
    units->setFocus();
    press(Qt::Key_Up);
    EXPECT_EQ(find<QLineEdit>(*start, "currency")->text(), "CAD");
}

} // namespace
} // namespace plumule::ui
