#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/date_field.h"
#include "ui/widget/held_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QSpinBox>

namespace plumule::ui {
namespace {

class HeldFieldTest : public UiTest
{};

TEST_F(HeldFieldTest, ALineComesBackWithItsCursorAndWhatWasMarked)
{
    QLineEdit line("yellow edge");
    line.setSelection(7, 4);
    line.setModified(true);
    const HeldField held(&line);
    line.setText("BR001");
    line.setModified(false);
    held.giveBack();
    EXPECT_EQ(line.text(), "yellow edge");
    EXPECT_EQ(line.selectedText(), "edge");
    EXPECT_EQ(line.cursorPosition(), 11);
    EXPECT_TRUE(line.isModified());
}

TEST_F(HeldFieldTest, NumbersChoicesTicksAndTextComeBack)
{
    QSpinBox number;
    number.setValue(12);
    QComboBox box;
    box.addItems({"Arugula", "Broccoli", "Cress"});
    box.setCurrentIndex(1);
    QCheckBox tick;
    tick.setChecked(true);
    const std::vector<HeldField> held{HeldField(&number), HeldField(&box), HeldField(&tick)};
    number.setValue(3);
    box.setCurrentIndex(2);
    tick.setChecked(false);
    for (const HeldField& each : held) {
        each.giveBack();
    }
    EXPECT_EQ(number.value(), 12);
    EXPECT_EQ(box.currentText(), "Broccoli");
    EXPECT_TRUE(tick.isChecked());
}

TEST_F(HeldFieldTest, ADayComesBackAsItWasTyped)
{
    DateField day("day");
    day.setText("13 Mar");
    const HeldField held(&day);
    day.setText("BR009");
    held.giveBack();
    EXPECT_EQ(day.text(), "13 Mar");
    EXPECT_EQ(day.date().has_value(), true);
}

TEST_F(HeldFieldTest, TheRowOfAListComesBackWhereItStandsNow)
{
    QListWidget list;
    list.addItems({"B", "C"});
    list.setCurrentRow(1);
    const HeldField held(&list);
    list.setCurrentRow(0);
    list.insertItem(0, "A");
    held.giveBack();
    ASSERT_NE(list.currentItem(), nullptr);
    EXPECT_EQ(list.currentItem()->text(), "C");
}

TEST_F(HeldFieldTest, AFieldThatIsGoneIsLeftAlone)
{
    auto line = std::make_unique<QLineEdit>("x");
    QLineEdit other("y");
    const std::vector<HeldField> held{HeldField(line.get()), HeldField(&other)};
    other.setText("z");
    line.reset();
    for (const HeldField& each : held) {
        each.giveBack();
    }
    EXPECT_EQ(other.text(), "y") << "and those after it come back";
}

} // namespace
} // namespace plumule::ui
