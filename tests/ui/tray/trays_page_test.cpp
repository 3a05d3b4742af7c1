#include "core/journal/tray/tray_entries.h"
#include "tests/ui/tray/tray_fixture.h"
#include "ui/tray/sow_dialog.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

TEST_F(TrayPageTest, ListsEveryTrayOfTheRoomNewestSowingFirst)
{
    useSample();
    open();
    const auto all = journal->trays().list({});
    ASSERT_TRUE(all);
    ASSERT_GT(all->size(), 200U);
    readToTheEnd();
    EXPECT_EQ(rows().rowCount(), static_cast<int>(all->size()));
    EXPECT_EQ(cell(0, TrayListModel::Code).toStdString(), all->front().record.tray.code);
    const QString counted = QString::number(all->size()) + QStringLiteral(" trays  ·");
    EXPECT_TRUE(soon([&] { return !textsIn(*page).filter(counted).isEmpty(); }));
    EXPECT_EQ(nameOfFocus(), "search");
}

TEST_F(TrayPageTest, AnEmptyRoomSaysThatNothingWasSown)
{
    open();
    EXPECT_TRUE(find<QLabel>(*page, "noTrays")->isVisible());
    EXPECT_EQ(find<QLabel>(*page, "noTrays")->text().toStdString(), "Nothing was sown yet.");
}

TEST_F(TrayPageTest, TheListIsASoundModelWhileItIsFiltered)
{
    useSample();
    open();
    const QAbstractItemModelTester tester(&rows(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    readToTheEnd();
    const int all = rows().rowCount();
    type("rd02");
    EXPECT_LT(rows().rowCount(), all);
    ASSERT_GT(rows().rowCount(), 0);
    for (const QString& code : shown(TrayListModel::Code)) {
        EXPECT_TRUE(code.startsWith("RD02")) << code.toStdString();
    }
    type("no such tray");
    EXPECT_EQ(rows().rowCount(), 0);
    EXPECT_FALSE(find<QTableView>(*page, "trays")->isVisible());
    EXPECT_FALSE(textsIn(*page).filter("No tray fits").isEmpty());
    find<QLineEdit>(*page, "search")->clear();
    readToTheEnd();
    EXPECT_EQ(rows().rowCount(), all);
}

TEST_F(TrayPageTest, ALongListIsReadOnWhereOneScrollsToItsEnd)
{
    useSample();
    open();
    const QAbstractItemModelTester tester(&rows(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    const auto all = journal->trays().list({}).value();
    // Whatever fetched it, the rows are those of the list, from its beginning.
    ASSERT_GE(rows().rowCount(), 200);
    find<QTableView>(*page, "trays")->scrollToBottom();
    readToTheEnd();
    ASSERT_EQ(rows().rowCount(), static_cast<int>(all.size()));
    for (std::size_t i = 0; i < all.size(); ++i) {
        ASSERT_EQ(cell(static_cast<int>(i), TrayListModel::Code).toStdString(),
                  all[i].record.tray.code);
    }
    // A change reads as much again, so that nobody is thrown back to the top.
    ASSERT_TRUE(journal->trays().setAside(all.back().record.tray.id, "lamp out"));
    settleDown();
    EXPECT_EQ(rows().rowCount(), static_cast<int>(all.size()));
}

TEST_F(TrayPageTest, AWateringLeavesTheListAlone)
{
    growDueTrays(2);
    open();
    QSignalSpy reads(&rows(), &QAbstractItemModel::modelReset);
    ASSERT_TRUE(journal->watering().giveBetween({{trayOf("BR001")},
                                                 WateringMethod::Below,
                                                 WaterKind::Plain,
                                                 millilitres(40),
                                                 clock.now()}));
    settleDown();
    EXPECT_EQ(reads.count(), 0);
    ASSERT_TRUE(journal->trays().discard(trayOf("BR002"), "mould", clock.now()));
    EXPECT_TRUE(soon([&] { return reads.count() == 1; }));
}

TEST_F(TrayPageTest, TheListWaitsForAPauseInTyping)
{
    growDueTrays(3);
    open();
    pause().setInterval(24 * 3600 * 1000);
    QSignalSpy reads(&rows(), &QAbstractItemModel::modelReset);
    type("BR00");
    EXPECT_EQ(reads.count(), 0);
    EXPECT_TRUE(pause().isActive());
    // As the clock would.
    ASSERT_TRUE(QMetaObject::invokeMethod(&pause(), "timeout"));
    EXPECT_EQ(reads.count(), 1);
    // Enter waits for nothing.
    type("2");
    EXPECT_EQ(rows().rowCount(), 3);
    press(Qt::Key_Return);
    ASSERT_TRUE(sheet().isVisible());
    EXPECT_FALSE(textsIn(sheet()).filter("BR002").isEmpty());
}

TEST_F(TrayPageTest, FiltersNarrowEachOther)
{
    useSample();
    open();
    choose("variety", "Radish, rose");
    const int ofVariety = rows().rowCount();
    ASSERT_GT(ofVariety, 0);
    for (const QString& name : shown(TrayListModel::VarietyName)) {
        EXPECT_EQ(name, "Radish, rose");
    }
    choose("medium", "Steel mesh");
    const int ofBoth = rows().rowCount();
    EXPECT_LT(ofBoth, ofVariety);
    ASSERT_GT(ofBoth, 0);
    for (const QString& name : shown(TrayListModel::MediumName)) {
        EXPECT_EQ(name, "Steel mesh");
    }
    choose("state", "harvested");
    EXPECT_LE(rows().rowCount(), ofBoth);
    for (const QString& stage : shown(TrayListModel::StageNow)) {
        EXPECT_EQ(stage, "harvested");
    }
    choose("state", "All trays");
    EXPECT_EQ(rows().rowCount(), ofBoth);
}

TEST_F(TrayPageTest, TheTrialFilterShowsItsTraysAlone)
{
    useSample();
    open();
    auto* trials = find<QComboBox>(*page, "trial");
    ASSERT_GT(trials->count(), 1);
    trials->setCurrentIndex(1);
    const QString code = trials->currentText().section(' ', 0, 0);
    ASSERT_GT(rows().rowCount(), 0);
    for (const QString& each : shown(TrayListModel::TrialCode)) {
        EXPECT_EQ(each, code);
    }
}

TEST_F(TrayPageTest, KeepsTheFilterOverAChange)
{
    growDueTrays(2);
    sow(broccoli(1, kTwoDaysAgo));
    open();
    choose("state", "growing");
    ASSERT_EQ(rows().rowCount(), 3);
    ASSERT_TRUE(journal->trays().discard(trayOf("BR002"), "mould", clock.now()));
    EXPECT_TRUE(soon([&] { return rows().rowCount() == 2; }));
    EXPECT_EQ(find<QComboBox>(*page, "state")->currentText(), "growing");
    EXPECT_EQ(shown(TrayListModel::Code), QStringList({"BR003", "BR001"}));
}

TEST_F(TrayPageTest, ARowSaysWhereItStandsAndWhenItIsDue)
{
    growDueTrays(1);
    open();
    ASSERT_EQ(rows().rowCount(), 1);
    EXPECT_EQ(cell(0, TrayListModel::Place), nameOf(sheetOf("BR001").spot));
    EXPECT_EQ(cell(0, TrayListModel::StageNow), nameOf(Stage::Light));
    EXPECT_EQ(cell(0, TrayListModel::Day), "13"); // sown on 28 February: day 1
    EXPECT_EQ(cell(0, TrayListModel::Harvest), "due 12 Mar");
    EXPECT_EQ(cell(0, TrayListModel::Yield), QStringLiteral("–"));
}

TEST_F(TrayPageTest, EnterInTheSearchOpensTheFirstSheetAndEscLeadsBack)
{
    growDueTrays(3);
    open();
    enter("BR002");
    ASSERT_TRUE(sheet().isVisible());
    EXPECT_FALSE(textsIn(sheet()).filter("BR002").isEmpty());
    press(Qt::Key_Escape);
    EXPECT_FALSE(sheet().isVisible());
    EXPECT_EQ(nameOfFocus(), "search");
    EXPECT_EQ(find<QLineEdit>(*page, "search")->text(), "BR002");
}

TEST_F(TrayPageTest, EnterOnARowOpensItsSheet)
{
    growDueTrays(3);
    open();
    auto* table = find<QTableView>(*page, "trays");
    table->setFocus();
    table->setCurrentIndex(rows().index(0, 0));
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_TRUE(sheet().isVisible());
    EXPECT_FALSE(textsIn(sheet()).filter(cell(1, TrayListModel::Code)).isEmpty());
}

TEST_F(TrayPageTest, SowingThroughTheDialogAddsItsTraysToTheList)
{
    open();
    EXPECT_EQ(rows().rowCount(), 0);
    click(find<QPushButton>(*page, "sow"));
    auto* dialog = find<SowDialog>(*page, "sowDialog");
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowExposed(dialog));
    find<QSpinBox>(*dialog, "count")->setValue(3);
    click(find<QPushButton>(*dialog, "sowNow"));
    EXPECT_TRUE(soon([&] { return rows().rowCount() == 3; }));
    EXPECT_FALSE(messages.text().isEmpty());
    EXPECT_FALSE(messages.isRefusal());
    // One intention, taken back at once.
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_TRUE(soon([&] { return rows().rowCount() == 0; }));
}

TEST_F(TrayPageTest, ASheetWhoseSowingIsTakenBackLeadsToTheList)
{
    sow(broccoli(1, kTwoDaysAgo));
    openSheetOf("BR001");
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(soon([&] { return !sheet().isVisible(); }));
    EXPECT_EQ(rows().rowCount(), 0);
}

TEST_F(TrayPageTest, AModelOfNothingHasItsHeads)
{
    TrayListModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    for (int i = 0; i < model.columnCount(); ++i) {
        EXPECT_FALSE(model.headerData(i, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
    }
}

TEST_F(TrayPageTest, SearchFindsNotesAndWhyATrayWasDiscarded)
{
    const auto trays = sow(broccoli(3, kTwoDaysAgo));
    ASSERT_EQ(trays.size(), 3U);
    ASSERT_TRUE(journal->trays().discard(trays[1], "Mould on the stems", clock.now()));
    ASSERT_TRUE(journal->trays().writeNote(trays[2], "leaning to the window", clock.now()));
    open();
    find<QLineEdit>(*page, "search")->setText("mould");
    EXPECT_EQ(shown(TrayListModel::Code), QStringList("BR002"));
    find<QLineEdit>(*page, "search")->setText("Leaning");
    EXPECT_EQ(shown(TrayListModel::Code), QStringList("BR003"));
    find<QLineEdit>(*page, "search")->setText("slugs");
    EXPECT_TRUE(shown(TrayListModel::Code).isEmpty());
}

} // namespace
} // namespace plumule::ui
