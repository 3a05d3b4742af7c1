#include "core/journal/room/room_entries.h"
#include "tests/ui/label/scanned.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/tray/tray_fixture.h"
#include "ui/label/label_dialog.h"

#include <QDoubleSpinBox>
#include <QFile>
#include <QTableView>

namespace plumule::ui {
namespace {

class LabelDialogTest : public TrayPageTest
{
protected:
    [[nodiscard]] LabelDialog* dialog()
    {
        LabelDialog* found = nullptr;
        EXPECT_TRUE(soon([&] {
            found = page->findChild<LabelDialog*>();
            return found != nullptr && found->isVisible();
        }));
        return found;
    }
    LabelDialog* openFromPage()
    {
        click(find<QPushButton>(*page, "labels"));
        return dialog();
    }
    [[nodiscard]] static QStringList codesOf(const LabelDialog& dialog)
    {
        QStringList codes;
        for (const LabelTray& label : dialog.labels()) {
            codes << label.code;
        }
        return codes;
    }
    [[nodiscard]] QString summaryOf(LabelDialog& dialog)
    {
        return find<QLabel>(dialog, "labelSummary")->text();
    }
};

TEST_F(LabelDialogTest, MakesAPdfOfTheGrowingTraysThatAreListed)
{
    growDueTrays(5);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    EXPECT_EQ(labels->labels().size(), 5U);
    EXPECT_EQ(summaryOf(*labels), QString::fromUtf8("5 labels, 70.0 × 37.1 mm, 1 sheet."));
    ask.fileAnswer = folder.path() + "/labels.pdf";
    click(find<QPushButton>(*labels, "labelSave"));
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF"));
}

TEST_F(LabelDialogTest, TakesTheTraysSelectedWithCtrl)
{
    growDueTrays(4);
    open();
    auto* table = find<QTableView>(*page, "trays");
    for (const int row : {0, 2}) {
        const QRect cell = table->visualRect(table->model()->index(row, 0));
        QTest::mouseClick(table->viewport(), Qt::LeftButton, Qt::ControlModifier, cell.center());
    }
    ASSERT_TRUE(table->isVisible()) << "Ctrl selects and opens no sheet";
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    EXPECT_EQ(codesOf(*labels),
              QStringList({cell(0, TrayListModel::Code), cell(2, TrayListModel::Code)}));
}

TEST_F(LabelDialogTest, SaysWhyAPaperCantBePrinted)
{
    growDueTrays(1);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    find<QSpinBox>(*labels, "labelRows")->setValue(19);
    find<QDoubleSpinBox>(*labels, "labelTop")->setValue(30);
    EXPECT_FALSE(find<QPushButton>(*labels, "labelSave")->isEnabled());
    EXPECT_FALSE(find<QPushButton>(*labels, "labelPrint")->isEnabled());
    EXPECT_TRUE(summaryOf(*labels).contains(QString::fromUtf8("24 × 15 mm"))) << "what is wrong";
    find<QSpinBox>(*labels, "labelRows")->setValue(8);
    EXPECT_TRUE(find<QPushButton>(*labels, "labelSave")->isEnabled());
}

TEST_F(LabelDialogTest, RemembersThePaperButNotTheLabelsSkipped)
{
    growDueTrays(1);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    find<QComboBox>(*labels, "labelStock")->setCurrentIndex(1);
    find<QSpinBox>(*labels, "labelColumns")->setValue(2);
    find<QSpinBox>(*labels, "labelSkip")->setValue(3);
    find<QDoubleSpinBox>(*labels, "labelLeft")->setValue(6.5);
    ask.fileAnswer = folder.path() + "/labels.pdf";
    click(find<QPushButton>(*labels, "labelSave"));
    LabelDialog again(*journal, services(), {});
    EXPECT_EQ(again.paper().stock, LabelStock::Letter);
    EXPECT_EQ(again.paper().columns, 2);
    EXPECT_DOUBLE_EQ(again.paper().marginLeft, 6.5);
    EXPECT_EQ(again.paper().skip, 0);
    EXPECT_FALSE(find<QPushButton>(again, "labelSave")->isEnabled()) << "no trays, no labels";
}

TEST_F(LabelDialogTest, ARollAsksOnlyForAnOwnSize)
{
    growDueTrays(1);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    auto* stock = find<QComboBox>(*labels, "labelStock");
    stock->setCurrentText(QString::fromUtf8("Roll, 62 × 29 mm"));
    EXPECT_EQ(labels->paper().labelWide, 62);
    EXPECT_FALSE(find<QSpinBox>(*labels, "labelRows")->isVisible());
    EXPECT_FALSE(find<QDoubleSpinBox>(*labels, "labelWide")->isVisible());
    stock->setCurrentText("Roll, own size");
    EXPECT_TRUE(find<QDoubleSpinBox>(*labels, "labelWide")->isVisible());
    find<QDoubleSpinBox>(*labels, "labelWide")->setValue(80);
    EXPECT_EQ(labels->paper().labelWide, 80);
}

TEST_F(LabelDialogTest, InUsUnitsItProposesLetterAndAsksForInches)
{
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    growDueTrays(1);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    EXPECT_EQ(labels->paper().stock, LabelStock::Letter);
    EXPECT_TRUE(summaryOf(*labels).contains(" in, 1 sheet")) << summaryOf(*labels).toStdString();
    auto* left = find<QDoubleSpinBox>(*labels, "labelLeft");
    EXPECT_EQ(left->suffix(), " in");
    left->setValue(0.25);
    EXPECT_DOUBLE_EQ(labels->paper().marginLeft, 6.35);
    EXPECT_EQ(labels->paper().labelWide, 62) << "what was not touched stays exact";
}

TEST_F(LabelDialogTest, ThePreviewShowsTheLabels)
{
    growDueTrays(2);
    open();
    LabelDialog* labels = openFromPage();
    ASSERT_NE(labels, nullptr);
    labels->resize(1400, 1300);
    find<QComboBox>(*labels, "labelStock")->setCurrentText(QString::fromUtf8("Roll, 62 × 29 mm"));
    auto* preview = find<QWidget>(*labels, "labelPreview");
    ASSERT_TRUE(soon([&] { return preview->width() > 700; }));
    const QStringList seen = qrCodesIn(preview->grab().toImage());
    ASSERT_EQ(seen.size(), 1);
    EXPECT_EQ(seen.front(), labels->labels().front().code);
}

TEST_F(LabelDialogTest, NothingGrowingHasNoLabels)
{
    open();
    EXPECT_FALSE(find<QPushButton>(*page, "labels")->isEnabled());
}

TEST_F(LabelDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const auto trays = growDueTrays(3);
    const auto faults =
        faultsOfDialog([&] { return new LabelDialog(*journal, services(), trays); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
