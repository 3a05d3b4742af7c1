#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/order/order_entries.h"
#include "tests/ui/support/aside_page.h"
#include "tests/ui/support/dialog_check.h"
#include "ui/chart/chart_view.h"
#include "ui/order/order_cuts_dialog.h"
#include "ui/order/order_dialog.h"
#include "ui/order/order_page.h"
#include "ui/order/order_text.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/check_list.h"
#include "ui/widget/date_field.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QSpinBox>
#include <QTableView>

namespace plumule::ui {
namespace {

// The clock stands at Thursday 12 March 2026; broccoli takes twelve days.
class OrderPageTest : public AsidePageTest
{
protected:
    std::unique_ptr<OrderPage> page;

    Order promised(double inGramsPromised, Date day, Recurrence recurs = Recurrence::Once)
    {
        Order order;
        order.variety = varietyNamed("Broccoli");
        order.medium = inertMedium().id;
        order.amount = grams(inGramsPromised);
        order.day = day;
        order.recurs = recurs;
        order.customer = "Canteen";
        const auto stored = journal->orders().save(order);
        EXPECT_TRUE(stored);
        return stored.value_or(Order());
    }
    void open()
    {
        page = openPage<OrderPage>();
        settleDown();
    }
    [[nodiscard]] QTableView& table() { return *find<QTableView>(*page, "orders"); }
    [[nodiscard]] QString cell(int row, int column)
    {
        return table().model()->index(row, column).data().toString();
    }
    [[nodiscard]] QString textOf(const char* name) { return find<QLabel>(*page, name)->text(); }
    template <class Dialog>
    [[nodiscard]] Dialog* dialog()
    {
        Dialog* found = nullptr;
        EXPECT_TRUE(soon([&] {
            found = page->findChild<Dialog*>();
            return found != nullptr && found->isVisible();
        }));
        return found;
    }
};

TEST_F(OrderPageTest, SaysWhatAnEmptyPageIsFor)
{
    open();
    EXPECT_TRUE(textOf("orderPlan").contains("Write down what was promised"));
    EXPECT_FALSE(find<QPushButton>(*page, "orderSow")->isVisible());
    EXPECT_TRUE(textOf("keptWords").contains("No promise has passed yet"));
}

TEST_F(OrderPageTest, WritesAnOrderDownWithTheKeyboardAndTakesItBack)
{
    open();
    press(Qt::Key_N);
    auto* form = dialog<OrderDialog>();
    ASSERT_NE(form, nullptr);
    write(*form, "orderCustomer", "Market");
    find<QComboBox>(*form, "orderVariety")->setCurrentText("Broccoli");
    write(*form, "orderAmount", "450");
    give(*form, "orderDay", "2026-04-02");
    find<QComboBox>(*form, "orderRecurs")->setCurrentText("every week");
    EXPECT_TRUE(find<DateField>(*form, "orderEnds")->isVisible());
    click(find<QPushButton>(*form, "orderSave"));
    const auto all = journal->orders().all().value();
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].customer, "Market");
    EXPECT_EQ(all[0].amount, grams(450));
    EXPECT_EQ(all[0].day, date(2026, 4, 2));
    EXPECT_EQ(all[0].recurs, Recurrence::Weekly);
    ASSERT_TRUE(soon([&] { return table().model()->rowCount() == 2; }));
    settleDown();
    QTest::keyClick(&table(), Qt::Key_N);
    auto* again = dialog<OrderDialog>();
    ASSERT_NE(again, nullptr);
    QTest::keyClick(again, Qt::Key_Escape);
    EXPECT_EQ(cell(0, 0), "Thu 2 Apr");
    EXPECT_EQ(cell(1, 0), "Thu 9 Apr");
    ASSERT_TRUE(journal->undo());
    ASSERT_TRUE(soon([&] { return table().model()->rowCount() == 0; }));
}

TEST_F(OrderPageTest, SaysWhyAnOrderIsRefused)
{
    open();
    press(Qt::Key_N);
    auto* form = dialog<OrderDialog>();
    ASSERT_NE(form, nullptr);
    click(find<QPushButton>(*form, "orderSave"));
    EXPECT_TRUE(find<QLabel>(*form, "refusal")->text().contains("enter its weight"));
    write(*form, "orderAmount", "ten");
    click(find<QPushButton>(*form, "orderSave"));
    EXPECT_TRUE(form->isVisible());
    EXPECT_TRUE(journal->orders().all()->empty());
}

TEST_F(OrderPageTest, TellsTraysDayAndChanceAndThatItIsFromTheLibrary)
{
    promised(450, date(2026, 4, 2));
    open();
    const QAbstractItemModelTester tester(table().model());
    const OrderLine line = journal->orders().book()->toCome.at(0);
    ASSERT_TRUE(line.sowing);
    EXPECT_EQ(cell(0, 5), QString::number(line.sowing->trays));
    EXPECT_EQ(cell(0, 6), "Sat 21 Mar");
    EXPECT_EQ(cell(0, 9), QString::number(inHundred(line.planned.chance)));
    EXPECT_TRUE(textOf("orderPlan").contains("on Sat 21 Mar: met"));
    const QString facts = textsIn(*page).join(' ');
    EXPECT_TRUE(facts.contains("no tray of it on record; the library's value"))
        << facts.toStdString();
    EXPECT_EQ(find<ChartView>(*page, "orderChart")->spec().key, "chance_by_trays");
    // It is not time yet.
    EXPECT_FALSE(find<QPushButton>(*page, "orderSow")->isEnabled());
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(page->findChild<SowDialog*>(), nullptr);
}

TEST_F(OrderPageTest, SowsWhatIsToBeSownTodayWithOneKey)
{
    promised(450, date(2026, 3, 24));
    open();
    const int trays = journal->orders().book()->toCome.at(0).sowing->trays;
    ASSERT_TRUE(find<QPushButton>(*page, "orderSow")->isEnabled());
    table().setFocus();
    press(Qt::Key_Return);
    auto* sowing = dialog<SowDialog>();
    ASSERT_NE(sowing, nullptr);
    EXPECT_EQ(find<QComboBox>(*sowing, "variety")->currentText(), "Broccoli");
    EXPECT_EQ(find<QComboBox>(*sowing, "medium")->currentText().toStdString(), inertMedium().name);
    EXPECT_EQ(find<QSpinBox>(*sowing, "count")->value(), trays);
    EXPECT_EQ(find<DateField>(*sowing, "harvest")->date(), date(2026, 3, 24));
    EXPECT_EQ(find<DateField>(*sowing, "day")->date(), date(2026, 3, 12));
    click(find<QPushButton>(*sowing, "sowNow"));
    ASSERT_TRUE(soon([&] { return cell(0, 6) == "is sown"; })) << cell(0, 6).toStdString();
    EXPECT_TRUE(cell(0, 4).startsWith(QString::number(trays) + " tray"));
    EXPECT_TRUE(textOf("orderPlan").contains("Nothing has to be sown"));
}

TEST_F(OrderPageTest, SaysThatItIsTooLate)
{
    promised(450, date(2026, 3, 15));
    open();
    EXPECT_EQ(cell(0, 6), "too late");
    EXPECT_TRUE(textOf("orderPlan").contains("too late to sow for that day"));
    EXPECT_FALSE(find<QPushButton>(*page, "orderSow")->isVisible());
}

TEST_F(OrderPageTest, ChangesAndEndsAStandingOrder)
{
    const Order standing = promised(450, date(2026, 3, 5), Recurrence::Weekly);
    open();
    click(find<QPushButton>(*page, "orderChange"));
    auto* form = dialog<OrderDialog>();
    ASSERT_NE(form, nullptr);
    write(*form, "orderAmount", "600");
    click(find<QPushButton>(*form, "orderSave"));
    auto all = journal->orders().all().value();
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].id, standing.id);
    EXPECT_EQ(all[1].amount, grams(600));
    ASSERT_TRUE(soon([&] { return cell(0, 3).startsWith("600"); }));
    ASSERT_TRUE(journal->undo());
    ASSERT_TRUE(soon([&] { return cell(0, 3).startsWith("450"); }));
    settleDown();
    click(find<QPushButton>(*page, "orderChange"));
    form = dialog<OrderDialog>();
    ASSERT_NE(form, nullptr);
    click(find<QPushButton>(*form, "orderEnd"));
    EXPECT_EQ(journal->orders().all()->at(0).endsOn, date(2026, 3, 12));
    ASSERT_TRUE(soon([&] { return table().model()->rowCount() == 0; }));
}

TEST_F(OrderPageTest, ShowsWhatWasKeptAndLetsTheGrowerSayWhichCutsWentToIt)
{
    promised(250, date(2026, 3, 12));
    for (const TrayId tray : growDueTrays(2)) {
        WeighingDraft weighing;
        weighing.tray = tray;
        weighing.bowls = {{grams(130), grams(0)}};
        weighing.at = clock.now();
        weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::TareForgotten};
        ASSERT_TRUE(journal->harvests().record(weighing));
    }
    clock.set(clock.now() + kMinutesPerDay);
    open();
    auto& kept = *find<QTableView>(*page, "kept");
    const auto verdict = [&] { return kept.model()->index(0, 4).data().toString(); };
    EXPECT_EQ(verdict(), "kept, +10 g");
    EXPECT_TRUE(textOf("keptWords").startsWith("1 of 1 kept"));
    QTest::mouseClick(kept.viewport(), Qt::LeftButton, {},
                      kept.visualRect(kept.model()->index(0, 0)).center());
    auto* cuts = dialog<OrderCutsDialog>();
    ASSERT_NE(cuts, nullptr);
    auto* list = find<CheckList>(*cuts, "orderCuts");
    ASSERT_EQ(list->count(), 2);
    EXPECT_EQ(list->checked<HarvestId>().size(), 2U);
    list->item(1)->setCheckState(Qt::Unchecked);
    click(find<QPushButton>(*cuts, "orderCutsSave"));
    ASSERT_TRUE(soon([&] { return verdict().startsWith("short"); })) << verdict().toStdString();
    ASSERT_TRUE(journal->undo());
    ASSERT_TRUE(soon([&] { return verdict() == "kept, +10 g"; }));
}

TEST_F(OrderPageTest, ItsDialogsStandEveryLook)
{
    const Order order = promised(450, date(2026, 3, 5), Recurrence::Weekly);
    EXPECT_EQ(faultsOfDialog([&] { return new OrderDialog(*journal, services(), order); }),
              QStringList());
    EXPECT_EQ(faultsOfDialog([&] {
                  return new OrderCutsDialog(*journal, services(), {order, order.day}, "Broccoli");
              }),
              QStringList());
}

} // namespace
} // namespace plumule::ui
