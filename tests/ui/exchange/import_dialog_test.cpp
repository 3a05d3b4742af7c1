#include "core/backup/backup_store.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/support/season_asks.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/exchange/import_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QTableWidget>

#include <set>

namespace plumule::ui {
namespace {

// The 30 weights of PlantGrowth (Dobson 1983) as trays; see tests/references/README.md.
const char* const kPlantWeights = PLUMULE_REFERENCES "/plant_weights_as_trays.csv";

class ImportDialogTest : public SetupTest
{
protected:
    std::unique_ptr<ImportDialog> openOn(const QString& file)
    {
        messages.setWindowFlags(Qt::ToolTip);
        auto dialog = std::make_unique<ImportDialog>(*journal, services(), file);
        dialog->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
        untilRead(*dialog);
        return dialog;
    }
    // It is read off the window's thread.
    void untilRead(ImportDialog& dialog)
    {
        EXPECT_TRUE(soon([&] {
            return !tasks.isBusy() && dialog.findChild<QLabel*>("importSummary") != nullptr;
        }));
        settleDown();
    }
    // Stored off it too.
    void bringIn(QWidget& dialog)
    {
        click(find<QPushButton>(dialog, "importRun"));
        EXPECT_TRUE(soon([&] { return !tasks.isBusy(); }));
        settleDown();
    }
    // As by hand: the choice is told.
    static void pick(QWidget& dialog, const char* box, const QString& text)
    {
        auto* found = find<QComboBox>(dialog, box);
        ASSERT_NE(found, nullptr) << box;
        const int index = found->findText(text);
        ASSERT_GE(index, 0) << text.toStdString();
        found->setCurrentIndex(index);
        Q_EMIT found->activated(index);
    }
    QString fileWith(const QString& text)
    {
        const QString path = folder.filePath("trays.csv");
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.toUtf8());
        return path;
    }
    [[nodiscard]] std::size_t trayCount()
    {
        return journal->trays().list(TrayFilter()).value().size();
    }
    static QStringList rowOf(const QTableWidget& table, int row)
    {
        QStringList cells;
        for (int column = 0; column < table.columnCount(); ++column) {
            const auto* item = table.item(row, column);
            cells << (item == nullptr ? QString() : item->text());
        }
        return cells;
    }
    static QString summary(QWidget& dialog)
    {
        return find<QLabel>(dialog, "importSummary")->text();
    }
};

TEST_F(ImportDialogTest, ShowsWhatWouldComeInBeforeAnythingIsWritten)
{
    const auto dialog = openOn(kPlantWeights);
    EXPECT_TRUE(summary(*dialog).contains("30 trays would come in"));
    EXPECT_TRUE(summary(*dialog).contains("Published plants"));
    EXPECT_TRUE(summary(*dialog).contains("ctrl, trt1, trt2"));
    const auto* rows = find<QTableWidget>(*dialog, "importRows");
    ASSERT_EQ(rows->rowCount(), 30);
    EXPECT_EQ(rowOf(*rows, 0), QStringList({"2", "PW001", "Published plants", "ctrl", "2026-01-05",
                                            "", "2026-01-19", "4.17"}));
    EXPECT_EQ(rowOf(*rows, 29), QStringList({"31", "PW030", "Published plants", "trt2",
                                             "2026-01-05", "", "2026-01-19", "5.26"}));
    EXPECT_TRUE(find<QPushButton>(*dialog, "importRun")->isEnabled());
    EXPECT_EQ(trayCount(), 0U);
    EXPECT_FALSE(journal->nextUndo().has_value());
}

TEST_F(ImportDialogTest, HoldsBackWhatLooksWrongUntilItWasLookedAt)
{
    const auto dialog = openOn(fileWith("code;variety;medium;sown;seed_g;harvested;net_g\n"
                                        "X1;Cress;mat;2026-01-05;30;2026-01-15;1,234\n"
                                        "X2;Cress;mat;2026-01-05;30;2026-01-15;251,5\n"));
    EXPECT_EQ(find<QLabel>(*dialog, "importDoubts")->text(),
              "Line 2, X1: 1.2 g cut from 30.0 g of seed.");
    auto* import = find<QPushButton>(*dialog, "importRun");
    EXPECT_FALSE(import->isEnabled());
    auto* areRight = find<QCheckBox>(*dialog, "importAreRight");
    areRight->click();
    EXPECT_TRUE(import->isEnabled());
    areRight->click();
    EXPECT_FALSE(import->isEnabled());
    areRight->click();
    bringIn(*dialog);
    EXPECT_EQ(trayCount(), 2U);
}

TEST_F(ImportDialogTest, ABackupGoesFirst)
{
    const auto dialog = openOn(kPlantWeights);
    bringIn(*dialog);
    ASSERT_EQ(trayCount(), 30U);
    const BackupStore store = BackupStore::of(journal->path());
    ASSERT_EQ(store.list().size(), 1U);
    EXPECT_EQ(store.look(store.list().front())->trays, 0) << "as it was before";
}

TEST_F(ImportDialogTest, WithoutABackupNothingIsImported)
{
    preferences.set(Preference::BackupFolder, folder.path() + "/stick/backups");
    const auto dialog = openOn(kPlantWeights);
    bringIn(*dialog);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(trayCount(), 0U);
}

TEST_F(ImportDialogTest, AsksNothingOfATableThatLooksRight)
{
    const auto dialog = openOn(fileWith("code;variety;medium;sown;seed_g;harvested;net_g\n"
                                        "X2;Cress;mat;2026-01-05;30;2026-01-15;251,5\n"));
    EXPECT_EQ(dialog->findChild<QCheckBox*>("importAreRight"), nullptr);
    EXPECT_TRUE(find<QPushButton>(*dialog, "importRun")->isEnabled());
}

TEST_F(ImportDialogTest, BringsTheTraysInAndTakesThemBackAsOne)
{
    const auto mediaBefore = journal->media().all(Listed::All).value();
    const auto varietiesBefore = journal->varieties().all(Listed::All).value();
    const auto dialog = openOn(kPlantWeights);
    bringIn(*dialog);
    EXPECT_EQ(dialog->result(), int(QDialog::Accepted));
    EXPECT_FALSE(dialog->isVisible());
    ASSERT_EQ(trayCount(), 30U);
    // Means as published: 5.032, 4.661 and 5.526.
    SeasonFilter all;
    all.from = date(2026, 1, 1);
    all.to = date(2026, 1, 31);
    const SeasonReview review = reviewIn(*journal, all).value();
    ASSERT_EQ(review.media.size(), 3U);
    for (const MediumSeason& each : review.media) {
        const double published = each.medium.name == "ctrl"   ? 5.032
                                 : each.medium.name == "trt1" ? 4.661
                                                              : 5.526;
        EXPECT_EQ(each.yield.n, 10) << each.medium.name;
        EXPECT_NEAR(each.yield.mean, published, 1e-9) << each.medium.name;
    }
    EXPECT_EQ(messages.text(), "Imported 30 trays.");
    pressMessageAction();
    EXPECT_EQ(trayCount(), 0U);
    EXPECT_EQ(journal->media().all(Listed::All).value(), mediaBefore);
    EXPECT_EQ(journal->varieties().all(Listed::All).value(), varietiesBefore);
    EXPECT_FALSE(journal->nextUndo().has_value());
    EXPECT_TRUE(messages.text().startsWith("Taken back: ")) << messages.text().toStdString();
}

TEST_F(ImportDialogTest, TellsThePagesWhatCameIn)
{
    std::set<Concept> told;
    const int listener = journal->addListener([&](const std::vector<Change>& changes) {
        for (const Change& each : changes) {
            told.insert(each.about);
        }
    });
    bringIn(*openOn(kPlantWeights));
    journal->removeListener(listener);
    EXPECT_TRUE(told.contains(Concept::Tray));
    EXPECT_TRUE(told.contains(Concept::Harvest));
    EXPECT_TRUE(told.contains(Concept::Medium));
}

TEST_F(ImportDialogTest, IsStoppedWithoutATraceAndClosesOnlyThen)
{
    QString table = "code;variety;medium;sown;seed_g;harvested;net_g\n";
    for (int i = 0; i < 4000; ++i) {
        table += QString("S%1;Cress;mat;2026-01-05;30;2026-01-15;251,5\n").arg(i);
    }
    const auto dialog = openOn(fileWith(table));
    click(find<QPushButton>(*dialog, "importRun"));
    auto* stop = find<QPushButton>(*dialog, "importLeave");
    EXPECT_EQ(stop->text(), "Stop");
    EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
    press(Qt::Key_Escape);
    EXPECT_TRUE(dialog->isVisible()) << "while the journal is written";
    EXPECT_FALSE(stop->isEnabled());
    ASSERT_TRUE(soon([&] { return !dialog->isVisible(); }));
    EXPECT_EQ(dialog->result(), int(QDialog::Rejected));
    EXPECT_EQ(messages.text(), "Stopped; nothing was imported.");
    EXPECT_EQ(trayCount(), 0U);
    EXPECT_FALSE(journal->nextUndo().has_value());
}

TEST_F(ImportDialogTest, WritesNothingWhenItIsLeft)
{
    const auto dialog = openOn(kPlantWeights);
    click(find<QPushButton>(*dialog, "importLeave"));
    EXPECT_EQ(dialog->result(), int(QDialog::Rejected));
    EXPECT_EQ(trayCount(), 0U);
}

TEST_F(ImportDialogTest, IsImportedAndLeftByKeys)
{
    const auto left = openOn(kPlantWeights);
    QTest::keyClick(left.get(), Qt::Key_Escape);
    EXPECT_EQ(left->result(), int(QDialog::Rejected));
    EXPECT_EQ(trayCount(), 0U);
    const auto taken = openOn(kPlantWeights);
    QTest::keyClick(taken.get(), Qt::Key_Return);
    ASSERT_TRUE(soon([&] { return !taken->isVisible(); }));
    EXPECT_EQ(taken->result(), int(QDialog::Accepted));
    EXPECT_EQ(trayCount(), 30U);
}

TEST_F(ImportDialogTest, ListsEveryFaultWithItsLineAndWhatIsWrong)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g\n"
                                        "X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150\n"
                                        "X2,,Coir mix,2026-01-05,28,2026-01-19,150\n"
                                        "X1,Kale,Coir mix,2026-01-06,28,2026-01-19,150\n"
                                        "X4,Kale,Coir mix,2026-02-30,28,2026-01-19,1.2.3\n"));
    const auto* faults = find<QTableWidget>(*dialog, "importFaults");
    ASSERT_NE(faults, nullptr);
    ASSERT_EQ(faults->rowCount(), 4);
    EXPECT_EQ(rowOf(*faults, 0),
              QStringList({"Line 3", "The cell in variety is empty: fill it in."}));
    EXPECT_EQ(rowOf(*faults, 1),
              QStringList({"Line 4", "The code X1 is taken already: choose another one."}));
    EXPECT_EQ(rowOf(*faults, 2),
              QStringList({"Line 5", "The cell in sown can't be “2026-02-30”: correct it."}));
    EXPECT_EQ(rowOf(*faults, 3),
              QStringList({"Line 5", "The cell in net_g can't be “1.2.3”: correct it."}));
    EXPECT_TRUE(summary(*dialog).contains("Nothing can be imported"));
    EXPECT_EQ(dialog->findChild<QTableWidget*>("importRows"), nullptr);
    EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
    QTest::keyClick(dialog.get(), Qt::Key_Return);
    EXPECT_EQ(trayCount(), 0U);
}

TEST_F(ImportDialogTest, NamesAColumnThatIsNotKnownAndALeftOutOneThatIsNeeded)
{
    const auto extra =
        openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g,moon phase\n"
                        "X1,Kale,Coir mix,2026-01-05,28,2026-01-19,150,full\n"));
    EXPECT_TRUE(summary(*extra).contains("moon phase")) << summary(*extra).toStdString();
    EXPECT_TRUE(summary(*extra).contains("1 tray would come in"));
    EXPECT_TRUE(find<QPushButton>(*extra, "importRun")->isEnabled());
    const auto lacking = openOn(fileWith("code,variety,medium,sown,seed_g,harvested\n"
                                         "X1,Kale,Coir mix,2026-01-05,28,2026-01-19\n"));
    const auto* faults = find<QTableWidget>(*lacking, "importFaults");
    ASSERT_EQ(faults->rowCount(), 1);
    EXPECT_EQ(rowOf(*faults, 0), QStringList({"Line 1", "The column net_g is missing: add it."}));
    EXPECT_FALSE(find<QPushButton>(*lacking, "importRun")->isEnabled());
}

TEST_F(ImportDialogTest, SaysWhenTheFileCannotBeReadOrIsNoTable)
{
    for (const QString& file :
         {folder.filePath("nowhere.csv"), fileWith(""),
          fileWith("code,variety,medium,sown,seed_g,harvested,net_g\nX1,\"Kale\n")}) {
        const auto dialog = openOn(file);
        const auto* faults = find<QTableWidget>(*dialog, "importFaults");
        ASSERT_NE(faults, nullptr) << file.toStdString();
        ASSERT_EQ(faults->rowCount(), 1);
        EXPECT_FALSE(rowOf(*faults, 0)[1].isEmpty());
        EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
    }
}

TEST_F(ImportDialogTest, RefusesATableWithoutARow)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g\n"));
    EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
}

TEST_F(ImportDialogTest, RefusesTheSameTableASecondTime)
{
    {
        const auto first = openOn(kPlantWeights);
        bringIn(*first);
    }
    const auto again = openOn(kPlantWeights);
    EXPECT_TRUE(summary(*again).contains("30 rows are there already"))
        << summary(*again).toStdString();
    EXPECT_FALSE(find<QPushButton>(*again, "importRun")->isEnabled());
}

TEST_F(ImportDialogTest, SaysWhyWhenTheJournalChangedSinceThePreview)
{
    const auto early = openOn(kPlantWeights);
    const auto other = openOn(kPlantWeights);
    bringIn(*other);
    ASSERT_EQ(trayCount(), 30U);
    bringIn(*early);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("PW001")) << messages.text().toStdString();
    EXPECT_EQ(trayCount(), 30U);
}

TEST_F(ImportDialogTest, BeginsByAskingForAFile)
{
    QWidget window;
    ask.fileAnswer = kPlantWeights;
    ImportDialog::begin(*journal, services(), &window);
    EXPECT_EQ(ask.questions.size(), 1);
    const QPointer<ImportDialog> dialog = window.findChild<ImportDialog*>("importDialog");
    ASSERT_NE(dialog, nullptr);
    EXPECT_TRUE(dialog->isVisible());
    untilRead(*dialog);
    dialog->reject();
    EXPECT_TRUE(soon([&] { return dialog.isNull(); }));
}

TEST_F(ImportDialogTest, ANumberThatMayMeanTwoThingsIsRefusedWithItsLine)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g\n"
                                        "A1,Cress,Mix,2026-01-05,,2026-01-19,\"1,234\"\n"));
    const auto* faults = find<QTableWidget>(*dialog, "importFaults");
    ASSERT_NE(faults, nullptr);
    ASSERT_EQ(faults->rowCount(), 1);
    EXPECT_EQ(rowOf(*faults, 0).front(), "Line 2");
    EXPECT_TRUE(rowOf(*faults, 0).back().contains("1,234"))
        << rowOf(*faults, 0).back().toStdString();
    EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
    QTest::keyClick(dialog.get(), Qt::Key_Return);
    EXPECT_EQ(trayCount(), 0U);
}

TEST_F(ImportDialogTest, AColumnThatShowsItsDecimalMarkSettlesItForTheFile)
{
    const auto dialog = openOn(fileWith("code;variety;medium;sown;seed_g;harvested;net_g\n"
                                        "A1;Cress;Mix;2026-01-05;;2026-01-19;1,234\n"
                                        "A2;Cress;Mix;2026-01-05;;2026-01-19;210,5\n"));
    ASSERT_NE(dialog->findChild<QTableWidget*>("importRows"), nullptr)
        << summary(*dialog).toStdString();
    bringIn(*dialog);
    ASSERT_EQ(trayCount(), 2U);
    EXPECT_EQ(sheetOf("A1").harvests.front().net, grams(1.234));
    EXPECT_EQ(sheetOf("A2").harvests.front().net, grams(210.5));
}

TEST_F(ImportDialogTest, ACodeThatStandsTwiceIsRefusedWithBothLines)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g\n"
                                        "A1,Cress,Mix,2026-01-05,,,\n"
                                        "A1,Cress,Mix,2026-01-06,,,\n"));
    const auto* faults = find<QTableWidget>(*dialog, "importFaults");
    ASSERT_NE(faults, nullptr);
    ASSERT_EQ(faults->rowCount(), 1);
    EXPECT_EQ(rowOf(*faults, 0).front(), "Line 3");
    EXPECT_TRUE(rowOf(*faults, 0).back().contains("A1"));
    EXPECT_EQ(trayCount(), 0U);
}

TEST_F(ImportDialogTest, ColumnsAreMatchedByHandAndRememberedByTheirHeader)
{
    const QString text = "what;plant;stuff;when;grain;off;mass\n"
                         "A1;Cress;Mix;05.01.2026;0,03;19.01.2026;0,21\n";
    {
        const auto dialog = openOn(fileWith(text));
        EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled());
        const std::pair<const char*, const char*> columns[] = {
            {"importColumn0", "code"}, {"importColumn1", "variety"}, {"importColumn2", "medium"},
            {"importColumn3", "sown"}, {"importColumn4", "seed_g"},  {"importColumn5", "harvested"},
            {"importColumn6", "net_g"}};
        for (const auto& [box, column] : columns) {
            pick(*dialog, box, column);
            untilRead(*dialog);
        }
        pick(*dialog, "importUnit4", "kg");
        untilRead(*dialog);
        pick(*dialog, "importUnit6", "kg");
        untilRead(*dialog);
        ASSERT_TRUE(find<QPushButton>(*dialog, "importRun")->isEnabled())
            << summary(*dialog).toStdString();
        EXPECT_EQ(
            rowOf(*find<QTableWidget>(*dialog, "importRows"), 0),
            QStringList({"2", "A1", "Cress", "Mix", "2026-01-05", "30", "2026-01-19", "210"}));
        bringIn(*dialog);
    }
    ASSERT_EQ(trayCount(), 1U);
    EXPECT_EQ(sheetOf("A1").harvests.front().net, grams(210));
    QString next = text;
    const auto again = openOn(fileWith(next.replace("A1", "A2")));
    EXPECT_TRUE(find<QPushButton>(*again, "importRun")->isEnabled())
        << summary(*again).toStdString();
}

TEST_F(ImportDialogTest, AColumnOfTheFileGoesToTheOneThatWasChosenLast)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g,second\n"
                                        "A1,Cress,Mix,2026-01-05,,,,A9\n"));
    pick(*dialog, "importColumn7", "code");
    untilRead(*dialog);
    EXPECT_EQ(find<QComboBox>(*dialog, "importColumn0")->currentText(), "left out");
    EXPECT_EQ(rowOf(*find<QTableWidget>(*dialog, "importRows"), 0)[1], "A9");
}

TEST_F(ImportDialogTest, HeightsComeInForTraysThatAreThere)
{
    bringIn(*openOn(kPlantWeights));
    const auto dialog = openOn(fileWith("tray,date,height_mm\nPW001,01/02/2026,80\n"));
    pick(*dialog, "importKind", "heights");
    untilRead(*dialog);
    EXPECT_FALSE(find<QPushButton>(*dialog, "importRun")->isEnabled()) << "day or month first?";
    pick(*dialog, "importDates", "day, month, year");
    untilRead(*dialog);
    bringIn(*dialog);
    EXPECT_EQ(messages.text(), "Imported 1 row.");
    ASSERT_EQ(sheetOf("PW001").heights.size(), 1U);
    EXPECT_EQ(sheetOf("PW001").heights.front().on, date(2026, 2, 1));
}

TEST_F(ImportDialogTest, LettersAreReadInTheEncodingThatTheFileSpeaksFor)
{
    const QString path = fileWith("");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("code,variety,medium,sown,seed_g,harvested,net_g\n"
               "A1,K\xFCmmel,Mix,2026-01-05,,,\n");
    file.close();
    const auto dialog = openOn(path);
    EXPECT_EQ(find<QComboBox>(*dialog, "importEncoding")->currentText(), "Latin-1");
    EXPECT_TRUE(summary(*dialog).contains(QStringLiteral("Kümmel")));
    pick(*dialog, "importEncoding", "UTF-8");
    untilRead(*dialog);
    EXPECT_EQ(find<QTableWidget>(*dialog, "importFaults")->rowCount(), 1);
}

TEST_F(ImportDialogTest, NamesWithMarksAreShownAndKeptAsTheyAre)
{
    const auto dialog = openOn(fileWith("code,variety,medium,sown,seed_g,harvested,net_g\n"
                                        "A1,<b>Cress</b>,<img src=x>,2026-01-05,,,\n"));
    EXPECT_TRUE(summary(*dialog).contains("<b>Cress</b>"));
    EXPECT_EQ(textsWithMarks(*dialog).join('\n').toStdString(), "");
    bringIn(*dialog);
    ASSERT_EQ(trayCount(), 1U);
    EXPECT_EQ(sheetOf("A1").record.variety, "<b>Cress</b>");
}

TEST_F(ImportDialogTest, CanBeReadAndReachedAtEveryLook)
{
    // What the table holds is read by another thread.
    const auto isRead = [this] { return !tasks.isBusy(); };
    const auto clean = faultsOfDialog(
        [this] { return new ImportDialog(*journal, services(), kPlantWeights); }, isRead);
    EXPECT_EQ(clean.join('\n').toStdString(), "");
    const QString file = fileWith("code,variety,medium,sown\nA1,Cress,Mix,soon\n,Cress,Mix,\n");
    const auto refused =
        faultsOfDialog([&] { return new ImportDialog(*journal, services(), file); }, isRead);
    EXPECT_EQ(refused.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
