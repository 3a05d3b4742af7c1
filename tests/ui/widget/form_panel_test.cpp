#include "ui/widget/check_list.h"
#include "ui/widget/date_field.h"
#include "ui/widget/form_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTest>
#include <QVBoxLayout>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

class FormPanelTest : public ::testing::Test
{
protected:
    FormPanel panel;
    QLineEdit* line = new QLineEdit("name");
    DateField* day = new DateField("day");
    QSpinBox* count = new QSpinBox;
    QComboBox* choice = new QComboBox;
    QCheckBox* check = new QCheckBox("used up");
    QPlainTextEdit* lines = new QPlainTextEdit;
    CheckList* list = new CheckList("places");
    QPushButton* act = new QPushButton("Remove");
    QSignalSpy entered{&panel, &FormPanel::entered};

    void SetUp() override
    {
        auto* column = new QVBoxLayout(&panel);
        for (QWidget* each :
             std::initializer_list<QWidget*>{line, day, count, choice, check, lines, list, act}) {
            column->addWidget(each);
        }
        choice->addItems({"mat", "mesh"});
        list->addCheck("A1", 1);
        act->setAutoDefault(false);
        panel.show();
        panel.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
        panel.settle();
    }
};

TEST_F(FormPanelTest, EnterSavesWhereverTheFocusIs)
{
    int times = 0;
    for (QWidget* each : std::initializer_list<QWidget*>{line, day, count, choice, check, list}) {
        each->setFocus();
        QTest::keyClick(each, Qt::Key_Return);
        EXPECT_EQ(entered.count(), ++times) << each->metaObject()->className();
    }
    QTest::keyClick(count, Qt::Key_Enter);
    EXPECT_EQ(entered.count(), ++times) << "the number pad's too";
}

TEST_F(FormPanelTest, EnterOnAButtonPressesIt)
{
    const QSignalSpy pressed(act, &QPushButton::clicked);
    act->setFocus();
    QTest::keyClick(act, Qt::Key_Return);
    EXPECT_EQ(pressed.count(), 1);
    EXPECT_EQ(entered.count(), 0);
}

TEST_F(FormPanelTest, KnowsWhetherAnyFieldWasChanged)
{
    EXPECT_FALSE(panel.isChanged());
    const std::vector<std::function<void(bool)>> changes = {
        [this](bool there) { line->setText(there ? "other" : "name"); },
        [this](bool there) { count->setValue(there ? 3 : 0); },
        [this](bool there) { choice->setCurrentIndex(there ? 1 : 0); },
        [this](bool there) { check->setChecked(there); },
        [this](bool there) { lines->setPlainText(there ? "Mo" : ""); },
        [this](bool there) { list->checkFirst(there ? 1 : 0); },
        [this](bool there) {
            day->setDate(there ? std::optional(date(2026, 3, 12)) : std::nullopt);
        },
    };
    for (std::size_t i = 0; i < changes.size(); ++i) {
        changes[i](true);
        EXPECT_TRUE(panel.isChanged()) << i;
        changes[i](false);
        EXPECT_FALSE(panel.isChanged()) << i << ", changed back";
    }
    line->setText("other");
    panel.settle();
    EXPECT_FALSE(panel.isChanged());
}

TEST_F(FormPanelTest, NothingIsChangedBeforeItIsSettled)
{
    FormPanel fresh;
    auto* field = new QLineEdit(&fresh);
    field->setText("typed");
    EXPECT_FALSE(fresh.isChanged());
}

TEST_F(FormPanelTest, WhatIsOnItsWayOutCountsForNothing)
{
    auto* row = new QWidget;
    auto* field = new QLineEdit(row);
    panel.layout()->addWidget(row);
    panel.settle();
    field->setText("typed");
    EXPECT_TRUE(panel.isChanged());
    row->hide();
    panel.settle();
    delete row;
    EXPECT_FALSE(panel.isChanged());
}

} // namespace
} // namespace plumule::ui
