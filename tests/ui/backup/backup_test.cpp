#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/backup/backup_card.h"
#include "ui/backup/backup_keeper.h"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class BackupTest : public UiTest
{
protected:
    void change(const char* name) { ASSERT_TRUE(journal->room().addRack(name, 1, 1)); }
    [[nodiscard]] BackupStore store() const { return BackupKeeper::storeOf(*journal, preferences); }
    static QString textOf(const QWidget& card, const char* name)
    {
        return card.findChild<QLabel*>(name)->text();
    }
    static void press(const QWidget& card, const char* name)
    {
        click(card.findChild<QPushButton*>(name));
    }
};

TEST_F(BackupTest, TheFirstChangeOfADayMakesOneAndTheNextDoesNot)
{
    BackupKeeper keeper(*journal, preferences);
    QSignalSpy made(&keeper, &BackupKeeper::made);
    EXPECT_TRUE(store().list().empty());
    change("North");
    ASSERT_TRUE(soon([&] { return made.size() == 1; }));
    change("South");
    settleDown();
    EXPECT_EQ(store().list().size(), 1U);
    EXPECT_TRUE(keeper.isDoneToday());

    clock.set(clock.now() + kMinutesPerDay);
    EXPECT_FALSE(keeper.isDoneToday());
    change("West");
    ASSERT_TRUE(soon([&] { return made.size() == 2; }));
    EXPECT_EQ(store().list().size(), 2U);
    EXPECT_EQ(store().list().front().at.date, clock.today());
}

TEST_F(BackupTest, AnotherStartOnTheSameDayMakesNoSecondOne)
{
    {
        BackupKeeper keeper(*journal, preferences);
        QSignalSpy made(&keeper, &BackupKeeper::made);
        change("North");
        ASSERT_TRUE(soon([&] { return made.size() == 1; }));
    }
    BackupKeeper again(*journal, preferences);
    EXPECT_TRUE(again.isDoneToday());
}

TEST_F(BackupTest, AFolderThatIsGoneIsToldOnceADayAndNotMadeUp)
{
    const QString stick = folder.path() + "/stick/backups";
    preferences.set(Preference::BackupFolder, stick);
    BackupKeeper keeper(*journal, preferences);
    QSignalSpy warned(&keeper, &BackupKeeper::warned);
    keeper.lookAtStart();
    ASSERT_EQ(warned.size(), 1);
    EXPECT_TRUE(warned.front().front().toString().contains("stick"));
    change("North");
    settleDown();
    EXPECT_EQ(warned.size(), 1);
    EXPECT_FALSE(QFile::exists(stick));

    clock.set(clock.now() + kMinutesPerDay);
    change("South");
    ASSERT_TRUE(soon([&] { return warned.size() == 2; }));
    // The stick is put in again.
    ASSERT_TRUE(QDir(folder.path()).mkpath("stick/backups"));
    QSignalSpy made(&keeper, &BackupKeeper::made);
    change("West");
    ASSERT_TRUE(soon([&] { return made.size() == 1; }));
}

TEST_F(BackupTest, ANewestThatIsTornIsToldAtTheStartAndMadeAnew)
{
    {
        BackupKeeper keeper(*journal, preferences);
        QSignalSpy made(&keeper, &BackupKeeper::made);
        change("North");
        ASSERT_TRUE(soon([&] { return made.size() == 1; }));
    }
    QFile file(QString::fromStdString(store().list().front().file.string()));
    ASSERT_TRUE(file.resize(file.size() / 2));
    BackupKeeper keeper(*journal, preferences);
    QSignalSpy warned(&keeper, &BackupKeeper::warned);
    keeper.lookAtStart();
    ASSERT_TRUE(soon([&] { return warned.size() == 1; }));
    QSignalSpy made(&keeper, &BackupKeeper::made);
    change("South");
    ASSERT_TRUE(soon([&] { return made.size() == 1; }));
    EXPECT_TRUE(store().look(store().list().front()));
}

TEST_F(BackupTest, TheCardMakesShowsAndBringsBack)
{
    useSample();
    BackupCard card(*journal, services());
    show(card);
    EXPECT_EQ(textOf(card, "backupState"), "No backup yet.");
    EXPECT_FALSE(card.findChild<QComboBox*>("backupList")->isVisible());
    press(card, "backUpNow");
    ASSERT_TRUE(soon([&] { return store().list().size() == 1U && !tasks.isBusy(); }));
    ASSERT_TRUE(soon([&] { return textOf(card, "backupState").contains("12 Mar 2026, 07:10"); }))
        << textOf(card, "backupState").toStdString();
    press(card, "backupLook");
    ASSERT_TRUE(soon([&] { return textOf(card, "backupContent").contains("301 trays"); }))
        << textOf(card, "backupContent").toStdString();

    QSignalSpy asked(&card, &BackupCard::journalAsked);
    ask.fileAnswer = folder.path() + "/brought back";
    press(card, "backupBringBack");
    ASSERT_TRUE(soon([&] { return asked.size() == 1; }));
    EXPECT_EQ(asked.front().front().toString(), ask.fileAnswer + ".plumule");
    const auto opened = Journal::open((ask.fileAnswer + ".plumule").toStdString(), clock);
    ASSERT_TRUE(opened);
    EXPECT_EQ((*opened)->trays().list({})->size(), journal->trays().list({})->size());

    press(card, "backupBringBack"); // the name is taken now
    ASSERT_TRUE(soon([&] { return messages.isVisibleTo(nullptr) && !tasks.isBusy(); }));
    EXPECT_EQ(asked.size(), 1);
}

TEST_F(BackupTest, TheCardFollowsTheFolderThatIsChosen)
{
    BackupCard card(*journal, services());
    show(card);
    EXPECT_TRUE(textOf(card, "backupFolder").contains("test backups"));
    EXPECT_FALSE(card.findChild<QPushButton*>("backupBeside")->isVisible());
    ask.fileAnswer = folder.path() + "/elsewhere";
    press(card, "backupFolderChoice");
    EXPECT_TRUE(textOf(card, "backupFolder").contains("elsewhere"));
    press(card, "backUpNow");
    ASSERT_TRUE(soon([&] { return store().list().size() == 1U; }));
    EXPECT_TRUE(QFile::exists(ask.fileAnswer));
    press(card, "backupBeside");
    EXPECT_TRUE(textOf(card, "backupFolder").contains("test backups"));
}

} // namespace
} // namespace plumule::ui
