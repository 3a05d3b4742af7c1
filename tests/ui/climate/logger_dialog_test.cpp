#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/climate/lamp_dialog.h"
#include "ui/climate/logger_dialog.h"

#include <QCheckBox>
#include <QFile>
#include <QTableWidget>

namespace plumule::ui {
namespace {

// Whole days of a reading an hour from the 1st of March 2026 on; the clock stands at the 12th.
QString hourly(int days, const QString& head = "Time,Temp °C,RH %", const QString& row = ",21.5,60")
{
    QString text = head + '\n';
    for (int day = 1; day <= days; ++day) {
        for (int hour = 0; hour < 24; ++hour) {
            text += QStringLiteral("2026-03-%1 %2:00%3\n")
                        .arg(day, 2, 10, QChar('0'))
                        .arg(hour, 2, 10, QChar('0'))
                        .arg(row);
        }
    }
    return text;
}

class LoggerDialogTest : public SetupTest
{
protected:
    QString fileWith(const QString& text)
    {
        const QString path = folder.filePath("shelf two.csv");
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.toUtf8());
        return path;
    }
    std::unique_ptr<LoggerDialog> openOn(const QString& text)
    {
        messages.setWindowFlags(Qt::ToolTip);
        const QString path = fileWith(text);
        auto dialog = std::make_unique<LoggerDialog>(*journal, services(), path,
                                                     loggerTableIn(path.toStdString()).value());
        dialog->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
        EXPECT_TRUE(isRead());
        return dialog;
    }
    // What was asked of the file has been read.
    [[nodiscard]] bool isRead()
    {
        return soon([this] { return !tasks.isBusy(); });
    }
    static QString found(QWidget& dialog) { return find<QLabel>(dialog, "loggerFound")->text(); }
    static bool canBringIn(QWidget& dialog)
    {
        return find<QPushButton>(dialog, "loggerBring")->isEnabled();
    }
    [[nodiscard]] std::vector<LoggerDays> days()
    {
        return journal->climate().days(date(2026, 3, 1), date(2026, 3, 31)).value();
    }
};

TEST_F(LoggerDialogTest, SaysWhatAFileTellsBeforeAnythingIsWritten)
{
    const auto dialog = openOn(hourly(3));
    EXPECT_EQ(textOf(*dialog, "loggerName"), "shelf two");
    EXPECT_TRUE(found(*dialog).contains("72 readings, 1 Mar 2026, 00:00 to 3 Mar 2026, 23:00"))
        << found(*dialog).toStdString();
    EXPECT_TRUE(found(*dialog).contains("New: 72 hours"));
    EXPECT_TRUE(find<QLabel>(*dialog, "clockWords")->text().contains("the room's clock"));
    EXPECT_FALSE(find<QTableWidget>(*dialog, "loggerFaults")->isVisible());
    EXPECT_TRUE(canBringIn(*dialog));
    EXPECT_TRUE(days().empty());
    EXPECT_FALSE(journal->nextUndo().has_value());
}

TEST_F(LoggerDialogTest, BringsItInAtAShelfAndTakesItBackAsOne)
{
    const auto dialog = openOn(hourly(3));
    choose(*dialog, "loggerPlace", "shelf A2");
    click(find<QPushButton>(*dialog, "loggerBring"));
    EXPECT_EQ(dialog->result(), int(QDialog::Accepted));
    ASSERT_EQ(days().size(), 1U);
    EXPECT_EQ(days()[0].logger.name, "shelf two");
    EXPECT_TRUE(days()[0].logger.shelf);
    EXPECT_EQ(days()[0].days.size(), 3U);
    EXPECT_TRUE(messages.text().contains("shelf two.csv")) << messages.text().toStdString();
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_TRUE(days().empty());
}

TEST_F(LoggerDialogTest, FindsWhatWasBroughtInBefore)
{
    click(find<QPushButton>(*openOn(hourly(3)), "loggerBring"));
    const auto again = openOn(hourly(3));
    EXPECT_TRUE(found(*again).contains("In the journal already: 72 hours"));
    EXPECT_FALSE(canBringIn(*again));
    // Of another logger they are new.
    write(*again, "loggerName", "shelf three");
    EXPECT_TRUE(canBringIn(*again));
    write(*again, "loggerName", " ");
    EXPECT_TRUE(found(*again).contains("no name"));
    EXPECT_FALSE(canBringIn(*again));
}

TEST_F(LoggerDialogTest, ReadsAgainWhenAColumnIsChosenOtherwise)
{
    const auto dialog = openOn(hourly(1, "Time,Temp,RH", ",70.7,60"));
    EXPECT_EQ(find<QComboBox>(*dialog, "temperatureUnit")->currentText(), "°C");
    choose(*dialog, "temperatureUnit", "°F");
    EXPECT_FALSE(canBringIn(*dialog)); // till it is read
    ASSERT_TRUE(isRead());
    click(find<QPushButton>(*dialog, "loggerBring"));
    EXPECT_NEAR(days().at(0).days.at(0).temperature->mean, 21.5, 1e-3);
}

TEST_F(LoggerDialogTest, AsksForTheOrderOfDaysThatMayBeReadInTwoWays)
{
    const auto dialog = openOn("Time,Temp\n01/02/2026 06:50,20\n");
    EXPECT_TRUE(found(*dialog).contains("may be read in two ways"));
    EXPECT_FALSE(canBringIn(*dialog));
    choose(*dialog, "dateOrder", "month, day, year");
    ASSERT_TRUE(isRead());
    EXPECT_TRUE(found(*dialog).contains("2 Jan 2026, 06:50")) << found(*dialog).toStdString();
    EXPECT_TRUE(canBringIn(*dialog));
}

TEST_F(LoggerDialogTest, LeavesLinesOutOnlyWhenTheyWereLookedAt)
{
    const auto dialog = openOn("Time,Temp\n2026-03-01 06:50,20\n2026-03-01 07:50,warm\n");
    const auto* faults = find<QTableWidget>(*dialog, "loggerFaults");
    ASSERT_EQ(faults->rowCount(), 1);
    EXPECT_EQ(faults->item(0, 0)->text(), "Line 3");
    EXPECT_TRUE(faults->item(0, 1)->text().contains("warm"));
    EXPECT_FALSE(canBringIn(*dialog));
    find<QCheckBox>(*dialog, "loggerLeaveOut")->click();
    EXPECT_TRUE(canBringIn(*dialog));
    click(find<QPushButton>(*dialog, "loggerBring"));
    EXPECT_EQ(days().at(0).days.at(0).hours, 1);
}

TEST_F(LoggerDialogTest, KeepsLuxAndSaysThatTheyAreNotConverted)
{
    const auto dialog = openOn(hourly(1, "Time,Lux", ",900"));
    EXPECT_EQ(find<QComboBox>(*dialog, "lightUnit")->currentText(), "lux, not converted");
    click(find<QPushButton>(*dialog, "loggerBring"));
    EXPECT_EQ(days().at(0).days.at(0).lux, 900);
    EXPECT_FALSE(days().at(0).days.at(0).dli);
}

TEST_F(LoggerDialogTest, IsRefusedWithAReasonWhereTheFileIsNoTable)
{
    QWidget page;
    ask.fileAnswer = fileWith("a,b\n1\n");
    LoggerDialog::begin(*journal, services(), &page);
    ASSERT_TRUE(soon([this] { return messages.isRefusal(); }));
    EXPECT_TRUE(messages.text().contains("Line 2")) << messages.text().toStdString();
}

TEST_F(LoggerDialogTest, FitsEveryLook)
{
    const QString path = fileWith(hourly(1) + "2026-03-02 00:00,warm,60\n");
    const CsvTable table = loggerTableIn(path.toStdString()).value();
    EXPECT_EQ(faultsOfDialog([&] { return new LoggerDialog(*journal, services(), path, table); })
                  .join('\n')
                  .toStdString(),
              "");
    ASSERT_TRUE(isRead());
}

class LampDialogTest : public SetupTest
{
protected:
    [[nodiscard]] ShelfId firstShelf() { return journal->room().layout()->shelves.front().id; }
    [[nodiscard]] QByteArray firstField()
    {
        return QByteArray("ppfd") + QByteArray::number(qlonglong(firstShelf().value));
    }
};

TEST_F(LampDialogTest, KeepsTheLightOfAShelfInOneAct)
{
    LampDialog dialog(*journal, services());
    show(dialog, {500, 600});
    write(dialog, firstField().constData(), "180");
    press(dialog, "lampSave");
    EXPECT_EQ(journal->climate().lampLight().value().at(firstShelf()), 180);
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(journal->climate().lampLight()->empty());
}

TEST_F(LampDialogTest, MarksWhatIsNoLight)
{
    LampDialog dialog(*journal, services());
    show(dialog, {500, 600});
    write(dialog, firstField().constData(), "60000");
    press(dialog, "lampSave");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_FALSE(journal->nextUndo().has_value());
}

TEST_F(LampDialogTest, FitsEveryLook)
{
    EXPECT_EQ(faultsOfDialog([&] { return new LampDialog(*journal, services()); })
                  .join('\n')
                  .toStdString(),
              "");
}

} // namespace
} // namespace plumule::ui
