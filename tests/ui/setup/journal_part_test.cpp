#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/setup/journal_part.h"

#include <QDialog>
#include <QDoubleSpinBox>
#include <QFile>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class JournalPartTest : public SetupTest
{
protected:
    static QByteArray contentOf(const QString& path)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
        return file.readAll();
    }
    [[nodiscard]] bool tells()
    {
        return soon([&] { return !messages.text().isEmpty(); });
    }
};

TEST_F(JournalPartTest, BacksUpOffTheWindowsThreadAndTheCopyOpensWhole)
{
    sow(broccoli(3, kTwoDaysAgo));
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = folder.filePath("copy.plumule");
    press(*part, "backUp");
    ASSERT_TRUE(tells());
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_TRUE(messages.text().contains("checked"));
    EXPECT_FALSE(tasks.isBusy());
    const auto copy = Journal::open(ask.fileAnswer.toStdString(), clock, Access::ReadOnly);
    ASSERT_TRUE(copy.has_value());
    EXPECT_TRUE((*copy)->faults()->empty());
    EXPECT_EQ((*copy)->trays().list(TrayFilter())->size(), 3U);
    EXPECT_EQ((*copy)->exchange().traysAsCsv().value(), journal->exchange().traysAsCsv().value());
    EXPECT_FALSE(contentOf(ask.fileAnswer + ".crc").trimmed().isEmpty());
}

TEST_F(JournalPartTest, OpensALoggersFileAndTheLightOfTheLamps)
{
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = folder.filePath("logger.csv");
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("Time,Temp\n2026-03-01 06:50,20\n");
    file.close();
    press(*part, "importLogger");
    ASSERT_TRUE(soon([&] { return part->findChild<QDialog*>("loggerDialog") != nullptr; }));
    ASSERT_TRUE(soon([&] { return !tasks.isBusy(); }));
    part->findChild<QDialog*>("loggerDialog")->reject();
    press(*part, "lampLight");
    EXPECT_NE(part->findChild<QDialog*>("lampDialog"), nullptr);
}

TEST_F(JournalPartTest, SaysWhenTheBackupCannotBeWritten)
{
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = folder.filePath("nowhere/copy.plumule");
    press(*part, "backUp");
    ASSERT_TRUE(tells());
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_FALSE(QFile::exists(ask.fileAnswer));
}

TEST_F(JournalPartTest, FindsTheJournalSound)
{
    const auto part = openPart<JournalPart>();
    press(*part, "check");
    ASSERT_TRUE(tells());
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_TRUE(messages.text().contains("sound"));
}

TEST_F(JournalPartTest, ExportsTheTraysAsATable)
{
    growDueTrays(2);
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = folder.filePath("trays.csv");
    press(*part, "exportTrays");
    EXPECT_FALSE(messages.isRefusal());
    const QByteArray table = contentOf(ask.fileAnswer);
    EXPECT_EQ(table.toStdString(), journal->exchange().traysAsCsv().value());
    EXPECT_TRUE(table.startsWith("code,variety,medium,sown,"));
    EXPECT_EQ(table.count('\n'), 3);
    ask.fileAnswer = folder.filePath("nowhere/trays.csv");
    press(*part, "exportTrays");
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(JournalPartTest, ExportsEverythingAsAFolderOfTables)
{
    growDueTrays(2);
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = folder.path();
    press(*part, "exportAll");
    ASSERT_TRUE(tells());
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const QString target = folder.filePath("test tables 2026-03-12");
    EXPECT_TRUE(QFile::exists(target + "/dictionary.csv"));
    EXPECT_EQ(contentOf(target + "/tray.csv").count('\n'), 3);
    press(*part, "exportAll");
    ASSERT_TRUE(soon([this] { return messages.isRefusal(); })) << "it is not written over";
}

TEST_F(JournalPartTest, KeepsWhatTheScannerSendsAroundACode)
{
    const auto part = openPart<JournalPart>();
    write(*part, "scanBefore", "~");
    write(*part, "scanAfter", "#;");
    press(*part, "applyScanner");
    EXPECT_EQ(preferences.get(Preference::ScanBefore).toString(), "~");
    EXPECT_EQ(preferences.get(Preference::ScanAfter).toString(), "#;");
}

// Who hears it stores it, once nothing typed is lost.
TEST_F(JournalPartTest, AsksForTheLookOfThisComputer)
{
    const auto part = openPart<JournalPart>();
    const QSignalSpy asked(part.get(), &JournalPart::lookAsked);
    EXPECT_EQ(find<QComboBox>(*part, "look")->currentText(), "light");
    EXPECT_EQ(find<QDoubleSpinBox>(*part, "fontScale")->value(), 100);
    choose(*part, "look", "dark");
    find<QDoubleSpinBox>(*part, "fontScale")->setValue(150);
    EXPECT_EQ(asked.count(), 0);
    press(*part, "applyLook");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front(), QVariantList({"dark", 1.5}));
    EXPECT_EQ(preferences.get(Preference::Look).toString(), "light");
    preferences.set(Preference::Look, "dark");
    preferences.set(Preference::FontScale, 1.5);
    const auto again = openPart<JournalPart>();
    EXPECT_EQ(find<QComboBox>(*again, "look")->currentText(), "dark");
    EXPECT_EQ(find<QDoubleSpinBox>(*again, "fontScale")->value(), 150);
}

TEST_F(JournalPartTest, AsksForAnotherJournal)
{
    const auto part = openPart<JournalPart>();
    const QSignalSpy asked(part.get(), &JournalPart::journalAsked);
    press(*part, "openAnother");
    EXPECT_EQ(asked.count(), 0);
    ask.fileAnswer = "other.plumule";
    press(*part, "openAnother");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().toString(), "other.plumule");
}

TEST_F(JournalPartTest, MakesANewJournalWithThisRoomsUnitsAndLeavesAnOldFileAlone)
{
    useUsUnits();
    const auto part = openPart<JournalPart>();
    const QSignalSpy asked(part.get(), &JournalPart::journalAsked);
    ask.fileAnswer = folder.filePath("second");
    press(*part, "newJournal");
    ASSERT_EQ(asked.count(), 1) << messages.text().toStdString();
    const QString made = asked.front().front().toString();
    EXPECT_EQ(made, folder.filePath("second.plumule"));
    {
        const auto second = Journal::open(made.toStdString(), clock);
        ASSERT_TRUE(second.has_value());
        EXPECT_EQ((*second)->room().layout()->room.name, "second");
        EXPECT_EQ((*second)->room().layout()->room.units, UnitSystem::UsCustomary);
        EXPECT_TRUE((*second)->trays().list(TrayFilter())->empty());
    }
    const QByteArray before = contentOf(made);
    press(*part, "newJournal");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(asked.count(), 1);
    EXPECT_EQ(contentOf(made), before);
}

TEST_F(JournalPartTest, OpensTheImportOnAFile)
{
    const auto part = openPart<JournalPart>();
    ask.fileAnswer = PLUMULE_REFERENCES "/plant_weights_as_trays.csv";
    press(*part, "importTable");
    auto* run = part->findChild<QPushButton*>("importRun");
    ASSERT_NE(run, nullptr);
    ASSERT_TRUE(soon([&] { return run->isEnabled(); })) << "it is read off the window's thread";
    click(run);
    ASSERT_TRUE(soon([&] { return !tasks.isBusy(); })) << "and stored there";
    ASSERT_EQ(journal->trays().list(TrayFilter())->size(), 30U);
    EXPECT_EQ(sentence(*journal->nextUndo(), UnitSystem::Metric),
              "Brought in the table plant_weights_as_trays.csv.");
}

} // namespace
} // namespace plumule::ui
