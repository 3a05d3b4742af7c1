#include "core/journal/stock/stock_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/paper/paper.h"
#include "ui/stock/stock_page.h"
#include "ui/stock/stock_sheet.h"
#include "ui/stock/stock_text.h"
#include "ui/stock/trace_card.h"
#include "ui/stock/trace_sheet.h"
#include "ui/widget/check_list.h"
#include "ui/widget/widgets.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDialog>
#include <QPdfWriter>
#include <QSignalSpy>
#include <QTableView>

namespace plumule::ui {
namespace {

// A room with a lot of broccoli, two trays of it, and a piece that is to be sanitised.
class StockPageTest : public GrowingTest
{
protected:
    void SetUp() override
    {
        GrowingTest::SetUp();
        SeedLot lot;
        lot.variety = varietyNamed("Broccoli");
        lot.lotNumber = "B3";
        lot.bought = grams(400);
        lot.germinationPercent = 80;
        lot.boughtOn = date(2026, 3, 1);
        seed = journal->varieties().saveLot(lot).value().id;
        SowingDraft draft = broccoli(2, kTwoDaysAgo);
        draft.seedLot = seed;
        draft.seedPerTray = grams(20);
        draft.sownBy = "Ada";
        trays = journal->trays().sow(draft).value();
        useOnePiece();
        page = std::make_unique<StockPage>(*journal, services());
        listener = journal->addListener([this](const std::vector<Change>&) { page->noteChange(); });
        show(*page, {1180, 900});
        settleDown();
    }
    void TearDown() override
    {
        journal->removeListener(listener);
        page.reset();
        GrowingTest::TearDown();
    }
    void useOnePiece()
    {
        const Medium mesh = inertMedium(true);
        piece = journal->media().addPieces(mesh.id, 1, std::nullopt).value().front().id;
        SowingDraft draft = broccoli(1, kTwoDaysAgo);
        draft.medium = mesh.id;
        draft.pieces = {piece};
        const TrayId tray = journal->trays().sow(draft).value().front();
        ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    }
    [[nodiscard]] QString cell(const char* table, int row, int column)
    {
        return find<QTableView>(*page, table)->model()->index(row, column).data().toString();
    }
    [[nodiscard]] QStringList traceWords()
    {
        QStringList words;
        for (const QLabel* each : find<QWidget>(*page, "trace")->findChildren<QLabel*>()) {
            words << each->text();
        }
        return words;
    }
    [[nodiscard]] QDialog* dialog(const char* name)
    {
        auto* found = page->findChild<QDialog*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    void press(const char* button)
    {
        click(find<QPushButton>(*page, button));
        settleDown();
    }
    void chooseIn(QDialog& in, const char* list, const QString& text)
    {
        auto* box = find<QComboBox>(in, list);
        const int row = box->findText(text);
        ASSERT_GE(row, 0) << text.toStdString();
        box->setCurrentIndex(row);
    }

    SeedLotId seed;
    PieceId piece;
    std::vector<TrayId> trays;
    std::unique_ptr<StockPage> page;
    int listener = 0;
};

TEST_F(StockPageTest, ShowsWhatIsLeftAndWarnsOfAWeakLot)
{
    const QAbstractItemModelTester tester(find<QTableView>(*page, "seedStock")->model());
    EXPECT_EQ(cell("seedStock", 0, 0), "B3");
    EXPECT_EQ(cell("seedStock", 0, 2), "360 g");
    EXPECT_TRUE(find<QLabel>(*page, "seedNote")->text().contains("Broccoli B3"));
    EXPECT_EQ(cell("pieces0", 0, 3), "emptied 12 Mar");
    EXPECT_EQ(cell("pieces0", 0, 5), "today");
    EXPECT_EQ(cell("supplies", 0, 1), "not counted");
}

TEST_F(StockPageTest, TheLotInHandIsTracedAtOnceAndAddsUp)
{
    EXPECT_TRUE(traceWords().contains("Lot B3, forward"));
    EXPECT_TRUE(traceWords().contains("2 trays sown: 0 cut, 0 thrown away, 2 growing"))
        << traceWords().join('|').toStdString();
    EXPECT_TRUE(traceWords().contains("BR001–BR002"));
}

TEST_F(StockPageTest, WhatRunsLowIsToldBeforeThePageIsShown)
{
    ASSERT_TRUE(journal->stock().markSeedLow(
        {{}, journal->stock().now()->seed[0].stock.lot.variety, std::nullopt, grams(1e5)}));
    StockPage hidden(*journal, services());
    const QSignalSpy badges(&hidden, &Page::badgeChanged);
    ASSERT_TRUE(soon([&] { return badges.count() > 0; }));
    EXPECT_GE(badges.front().front().toInt(), 1);
}

TEST_F(StockPageTest, ACountIsEnteredAndTakenBack)
{
    press("stockCount");
    QDialog* count = dialog("countDialog");
    const QString medium = QString::fromStdString(inertMedium().name);
    chooseIn(*count, "countThing", medium);
    EXPECT_EQ(find<QLabel>(*count, "countLeft")->text(), "Not counted before.");
    write(*count, "countAmount", "7");
    click(find<QPushButton>(*count, "countSave"));
    settleDown();
    const auto shown = [&] {
        const auto* model = find<QTableView>(*page, "supplies")->model();
        for (int row = 0; row < model->rowCount(); ++row) {
            if (model->index(row, 0).data().toString() == medium) {
                return model->index(row, 1).data().toString();
            }
        }
        return QString();
    };
    EXPECT_TRUE(shown() == "7" || shown() == "7.00 L") << shown().toStdString();
    ASSERT_TRUE(journal->undo());
    settleDown();
    EXPECT_EQ(shown(), "not counted");
}

TEST_F(StockPageTest, ALotIsCountedByItsWeight)
{
    press("stockCount");
    QDialog* count = dialog("countDialog");
    chooseIn(*count, "countThing", "Broccoli, B3");
    write(*count, "countAmount", "");
    click(find<QPushButton>(*count, "countSave"));
    EXPECT_TRUE(count->isVisible()) << "nothing was entered";
    write(*count, "countAmount", "300");
    click(find<QPushButton>(*count, "countSave"));
    settleDown();
    EXPECT_EQ(cell("seedStock", 0, 2), "300 g");
}

TEST_F(StockPageTest, ACountWithASlippedPointIsAskedAboutOnce)
{
    const QString before = cell("seedStock", 0, 2);
    press("stockCount");
    QDialog* count = dialog("countDialog");
    chooseIn(*count, "countThing", "Broccoli, B3");
    write(*count, "countAmount", "30000");
    click(find<QPushButton>(*count, "countSave"));
    EXPECT_TRUE(find<QLabel>(*count, "refusal")->text().contains("should be left"));
    EXPECT_EQ(cell("seedStock", 0, 2), before);
    click(find<QPushButton>(*count, "countSave"));
    settleDown();
    EXPECT_EQ(cell("seedStock", 0, 2), "30000 g");
}

TEST_F(StockPageTest, ANewLotAndANewThingAreBought)
{
    press("stockBought");
    QDialog* bought = dialog("countDialog");
    chooseIn(*bought, "boughtVariety", "Radish");
    write(*bought, "boughtLot", "R9");
    write(*bought, "countAmount", "1000");
    click(find<QPushButton>(*bought, "countSave"));
    settleDown();
    EXPECT_EQ(cell("seedStock", 1, 0), "R9");
    EXPECT_EQ(cell("seedStock", 1, 2), "1000 g");
    press("stockBought");
    bought = dialog("countDialog");
    chooseIn(*bought, "countThing", "Something else…");
    write(*bought, "newItemName", "Tubs");
    write(*bought, "countAmount", "50");
    click(find<QPushButton>(*bought, "countSave"));
    settleDown();
    const auto* model = find<QTableView>(*page, "supplies")->model();
    const int last = model->rowCount() - 1;
    EXPECT_EQ(cell("supplies", last, 0), "Tubs");
    EXPECT_EQ(cell("supplies", last, 1), "50");
}

TEST_F(StockPageTest, PiecesAreSanitisedWithAgentStrengthMinutesAndName)
{
    press("stockSanitised");
    QDialog* sanitise = dialog("sanitiseDialog");
    EXPECT_EQ(find<CheckList>(*sanitise, "sanitisePieces")->count(), 1);
    find<QComboBox>(*sanitise, "sanitiseAgent")->setEditText("peroxide");
    write(*sanitise, "sanitiseStrength", "3");
    write(*sanitise, "sanitiseMinutes", "10");
    find<QComboBox>(*sanitise, "sanitiseBy")->setEditText("Bo");
    click(find<QPushButton>(*sanitise, "sanitiseSave"));
    settleDown();
    EXPECT_EQ(cell("pieces0", 0, 4), "12 Mar, peroxide 3 %, 10 min, Bo");
    EXPECT_EQ(cell("pieces0", 0, 5), "");
    EXPECT_FALSE(find<QPushButton>(*page, "stockSanitised")->isEnabled());
}

TEST_F(StockPageTest, TheMarkOfLowSeedIsSaidOnTheRound)
{
    EXPECT_EQ(lowSentence(journal->stock().low().value()), "");
    press("stockMarks");
    QDialog* marks = dialog("marksDialog");
    chooseIn(*marks, "marksThing", "Seed of Broccoli");
    write(*marks, "marksAmount", "500");
    click(find<QPushButton>(*marks, "marksSave"));
    settleDown();
    EXPECT_TRUE(lowSentence(journal->stock().low().value()).startsWith("Running low: Broccoli"));
    EXPECT_TRUE(find<QLabel>(*page, "seedNote")->isVisible());
}

TEST_F(StockPageTest, ATrayIsFollowedBackAndAPersonForward)
{
    ask.lineAnswer = "br001";
    press("traceTray");
    EXPECT_TRUE(traceWords().contains("BR001, back"));
    EXPECT_TRUE(traceWords().contains("lot B3, bought 1 Mar 2026, germination 80 %"))
        << traceWords().join('|').toStdString();
    TrayId asked;
    QObject::connect(page.get(), &Page::trayAsked, [&](TrayId tray) { asked = tray; });
    press("traceOpen");
    EXPECT_EQ(asked, trays[0]);
    ask.lineAnswer = "nobody";
    press("traceTray");
    EXPECT_TRUE(traceWords().contains("BR001, back")) << "what stood there stays";
    press("traceOther");
    QDialog* trace = dialog("traceDialog");
    click(find<Segmented>(*trace, "traceKind")->segment(3));
    chooseIn(*trace, "traceList", "Ada");
    click(find<QPushButton>(*trace, "traceGo"));
    settleDown();
    EXPECT_TRUE(traceWords().contains("Ada, forward"));
}

TEST_F(StockPageTest, ARowLeadsToItsTrace)
{
    auto* table = find<QTableView>(*page, "pieces0");
    table->setCurrentIndex(table->model()->index(0, 0));
    settleDown();
    EXPECT_TRUE(traceWords().contains("1 tray sown: 0 cut, 1 thrown away, 0 growing"))
        << traceWords().join('|').toStdString();
}

TEST_F(StockPageTest, SheetsArePrinted)
{
    const QString path = folder.path() + "/trace.pdf";
    const auto printed = [&](const std::function<bool(QPagedPaintDevice&)>& print) {
        return writePdf(path, "Trace", QPageSize(QPageSize::A4), print).has_value();
    };
    const UnitText units(UnitSystem::Metric);
    EXPECT_TRUE(printed([&](QPagedPaintDevice& paper) {
        return printTraceSheet(*journal, TraceFrom{seed}, units, paper);
    }));
    EXPECT_TRUE(printed([&](QPagedPaintDevice& paper) {
        return printTraceSheet(*journal, TraceFrom{trays[0]}, units, paper);
    }));
    const Stock stock = journal->stock().now().value();
    EXPECT_TRUE(
        printed([&](QPagedPaintDevice& paper) { return printStockSheet(stock, units, paper); }));
    EXPECT_FALSE(printed([&](QPagedPaintDevice& paper) {
        return printTraceSheet(*journal, TraceFrom{SeedLotId{99}}, units, paper);
    })) << "a lot that is gone";
}

TEST_F(StockPageTest, StandsBelowInANarrowWindow)
{
    auto* trace = find<QWidget>(*page, "trace");
    auto* table = find<QTableView>(*page, "seedStock");
    EXPECT_GT(trace->mapTo(page.get(), QPoint()).x(), table->mapTo(page.get(), QPoint()).x());
    page->resize(720, 700);
    settleDown();
    EXPECT_GT(trace->mapTo(page.get(), QPoint()).y(), table->mapTo(page.get(), QPoint()).y());
}

} // namespace
} // namespace plumule::ui
