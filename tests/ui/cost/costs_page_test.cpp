#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/costs_page.h"
#include "ui/cost/what_if_slider.h"
#include "ui/cost/work_time_dialog.h"

#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QLineEdit>
#include <QTableView>

namespace plumule::ui {
namespace {

class CostsPageTest : public GrowingTest
{
protected:
    std::unique_ptr<CostsPage> page;

    void price(PriceItem item, double units, const char* medium = "")
    {
        Price one;
        one.item = item;
        const auto media = journal->media().all(Listed::All).value();
        for (const Medium& each : media) {
            if (each.name == medium) {
                one.medium = each.id;
            }
        }
        one.from = date(2024, 1, 1);
        one.amount = money(units);
        ASSERT_TRUE(journal->costs().savePrice(one));
    }
    // In 450 s.
    void timeTenWaterings()
    {
        WorkTime work;
        work.task = LabourKind::Watering;
        work.on = clock.today();
        work.seconds = 450;
        work.times = 10;
        ASSERT_TRUE(journal->workTimes().save(work));
    }
    void bringInTrays()
    {
        const QString path = folder.filePath("table.csv");
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write("code,variety,medium,sown,seed_g,harvested,net_g\n"
                   "A1,Radish,Coir mix,2026-01-10,30,2026-01-20,200\n"
                   "A2,Radish,Coir mix,2026-01-10,30,2026-01-20,220\n"
                   "B1,Radish,Steel mesh,2026-01-10,30,2026-01-20,210\n");
        file.close();
        const auto preview = journal->exchange().preview(path.toStdString());
        ASSERT_TRUE(preview && preview->isClean());
        ASSERT_TRUE(journal->exchange().importTrays(*preview, "table.csv"));
    }
    void open()
    {
        page = openPage<CostsPage>();
        waitForAnswer();
    }
    void waitForAnswer()
    {
        EXPECT_TRUE(soon([&] { return page->answer().has_value() && !tasks.isBusy(); }));
        settleDown();
    }
    QString textOf(const char* name) { return find<QLabel>(*page, name)->text(); }
    QDialog* dialog(const char* name) { return page->findChild<QDialog*>(name); }
    // The cells of a row of the parts, by its name.
    QStringList row(const QString& name)
    {
        const QAbstractItemModel* model = find<QTableView>(*page, "costParts")->model();
        QStringList cells;
        for (int i = 0; i < model->rowCount(); ++i) {
            if (model->index(i, 0).data().toString() == name) {
                for (int column = 1; column < model->columnCount(); ++column) {
                    cells << model->index(i, column).data().toString();
                }
            }
        }
        return cells;
    }
};

TEST_F(CostsPageTest, SaysWhatIsMissingAndOpensItsForm)
{
    bringInTrays();
    price(PriceItem::Packaging, 0.42);
    open();
    EXPECT_TRUE(textOf("costsLacks").contains("Waste has no price"))
        << textOf("costsLacks").toStdString();
    EXPECT_EQ(row("waste"), QStringList({"no price", "no price"}));
    click(find<QPushButton>(*page, "lack_waste"));
    QDialog* form = dialog("priceDialog");
    ASSERT_NE(form, nullptr);
    EXPECT_FALSE(find<QComboBox>(*form, "priceItem")->isEnabled());
    give(*form, "priceFrom", "1 Jan 2024");
    write(*form, "priceAmount", "0.12");
    click(find<QPushButton>(*form, "savePrice"));
    EXPECT_TRUE(soon([&] { return row("waste") == QStringList({"not noted", "not noted"}); }));
    EXPECT_FALSE(textOf("costsLacks").contains("Waste has no price"));
}

// 0.42 a tray over 420 and 210 g: 2.00 a kilogram; by hand.
TEST_F(CostsPageTest, ShowsThePartsAndTheirSum)
{
    bringInTrays();
    price(PriceItem::Packaging, 0.42);
    open();
    EXPECT_EQ(row("packaging"), QStringList({"2.00", "2.00"}));
    EXPECT_EQ(row("together"), QStringList({"2.00", "2.00"}));
    EXPECT_EQ(row("trays cut of sown"), QStringList({"2 of 2", "1 of 1"}));
    EXPECT_FALSE(find<ChartView>(*page, "costBars")->spec().series.empty());
}

TEST_F(CostsPageTest, KeepsTodayInSightWhileASliderIsMoved)
{
    bringInTrays();
    price(PriceItem::Medium, 0.58, "Coir mix");
    price(PriceItem::Medium, 18, "Steel mesh");
    open();
    const QStringList today = row("together");
    ASSERT_EQ(today.size(), 2);
    EXPECT_FALSE(today.contains("–"));
    EXPECT_TRUE(row("change").isEmpty());
    const int asked = page->answer()->harvested;
    auto* slider = find<WhatIfSlider>(*page, "whatIf0");
    slider->setFocus();
    for (int step = 0; step < 10; ++step) {
        QTest::keyClick(slider, Qt::Key_Right);
    }
    EXPECT_EQ(slider->value(), 50);
    ASSERT_TRUE(soon([&] { return !row("change").isEmpty(); }));
    EXPECT_EQ(row("together"), today);
    EXPECT_NE(row("what if, as the sliders stand"), today);
    EXPECT_EQ(page->answer()->harvested, asked);
    click(find<QPushButton>(*page, "whatIfToday"));
    ASSERT_TRUE(soon([&] { return row("change").isEmpty(); }));
    EXPECT_EQ(slider->value(), 0);
}

TEST_F(CostsPageTest, StartsAndStopsTheTimerByOneKey)
{
    open();
    QTest::keyClick(page.get(), Qt::Key_F8);
    ASSERT_TRUE(journal->workTimes().running().value());
    EXPECT_EQ(journal->workTimes().running().value()->task, LabourKind::Sowing);
    clock.set(clock.now() + 10);
    QTest::keyClick(page.get(), Qt::Key_F8);
    // The journal does not tell how many were sown.
    auto* asks = page->findChild<QDialog*>("workTimeDialog");
    ASSERT_NE(asks, nullptr);
    EXPECT_EQ(find<QLineEdit>(*asks, "workMinutes")->text(), "10");
    write(*asks, "workTimes", "4");
    click(find<QPushButton>(*asks, "saveWorkTime"));
    EXPECT_FALSE(journal->workTimes().running().value());
    ASSERT_EQ(journal->workTimes().measured().value().size(), 1U);
    EXPECT_EQ(journal->workTimes().measured().value().front().seconds, 600);
}

TEST_F(CostsPageTest, TakesAMeasuredMeanOnlyWhenToldTo)
{
    timeTenWaterings();
    const auto before = journal->costs().labour().value();
    open();
    EXPECT_TRUE(textOf("measured_watering").contains("0.75 min"));
    EXPECT_TRUE(textOf("measured_watering").contains("10 time"));
    EXPECT_EQ(journal->costs().labour().value(), before);
    click(find<QPushButton>(*page, "take_watering"));
    const auto tasksNow = journal->costs().labour().value();
    for (const LabourTask& task : tasksNow) {
        if (task.kind == LabourKind::Watering) {
            EXPECT_EQ(task.seconds, 45);
        }
    }
}

TEST_F(CostsPageTest, CorrectsWhatWasTimedInItsLine)
{
    timeTenWaterings();
    open();
    click(find<QPushButton>(*page, "timed"));
    auto* asks = page->findChild<QDialog*>("workTimeDialog");
    ASSERT_NE(asks, nullptr);
    EXPECT_EQ(find<QLineEdit>(*asks, "workTimes")->text(), "10");
    write(*asks, "workTimes", "9");
    click(find<QPushButton>(*asks, "saveWorkTime"));
    ASSERT_EQ(journal->workTimes().measured().value().size(), 1U);
    EXPECT_EQ(journal->workTimes().measured().value().front().times, 9);
}

TEST_F(CostsPageTest, AsksAboutATimerThatWasForgotten)
{
    ASSERT_TRUE(journal->workTimes().begin(LabourKind::Watering));
    clock.set(clock.now() + kMinutesPerDay);
    open();
    EXPECT_TRUE(find<QPushButton>(*page, "workTimer")->text().startsWith("Timer since"));
    click(find<QPushButton>(*page, "workTimer"));
    auto* asks = page->findChild<QDialog*>("workTimeDialog");
    ASSERT_NE(asks, nullptr);
    EXPECT_EQ(find<QLineEdit>(*asks, "workMinutes")->text(), "") << "nothing is guessed";
    click(find<QPushButton>(*asks, "workTimeRemove"));
    EXPECT_FALSE(journal->workTimes().running().value());
    EXPECT_TRUE(journal->workTimes().measured().value().empty());
}

} // namespace
} // namespace plumule::ui
