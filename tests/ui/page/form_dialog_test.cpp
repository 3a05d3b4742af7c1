#include "tests/ui/support/ui_fixture.h"
#include "ui/page/form_dialog.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QApplication>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

class NameDialog : public FormDialog
{
public:
    explicit NameDialog(Ask& ask, int rows = 1)
        : FormDialog(ask, "nameDialog", "What shall it be called, and by whom?", nullptr)
    {
        for (int i = 0; i < rows; ++i) {
            auto* field = new QLineEdit;
            field->setObjectName(QStringLiteral("name%1").arg(i));
            body()->addWidget(field);
        }
        addCancel();
        connect(addButton("Save", "save", "primary"), &QPushButton::clicked, this, [this] {
            ++saves;
            refuse(mayLeave ? QString() : QStringLiteral("That name is taken."));
            if (mayLeave) {
                accept();
            }
        });
    }
    using FormDialog::leaveFreely;
    int saves = 0;
    bool mayLeave = true;
};

class FormDialogTest : public UiTest
{
protected:
    static void open(QDialog& dialog)
    {
        dialog.open();
        dialog.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    }
};

TEST_F(FormDialogTest, EnterSavesOnce)
{
    NameDialog dialog(ask);
    open(dialog);
    auto* field = find<QLineEdit>(dialog, "name0");
    field->setFocus();
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(dialog.saves, 1);
    EXPECT_FALSE(dialog.isVisible());
}

TEST_F(FormDialogTest, EscapeAsksOnlyWhereSomethingWasTyped)
{
    NameDialog untouched(ask);
    open(untouched);
    QTest::keyClick(&untouched, Qt::Key_Escape);
    EXPECT_FALSE(untouched.isVisible());
    EXPECT_TRUE(ask.questions.isEmpty());

    NameDialog typed(ask);
    open(typed);
    write(typed, "name0", "Mesh against mix");
    ask.agrees = false;
    QTest::keyClick(&typed, Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(typed.isVisible()) << "the grower stays";
    ask.agrees = true;
    typed.close();
    EXPECT_EQ(ask.questions.size(), 2);
    EXPECT_FALSE(typed.isVisible());
}

TEST_F(FormDialogTest, ADialogThatKeepsNoRecordIsLeftFreely)
{
    NameDialog dialog(ask);
    dialog.leaveFreely();
    open(dialog);
    write(dialog, "name0", "Mesh");
    QTest::keyClick(&dialog, Qt::Key_Escape);
    EXPECT_FALSE(dialog.isVisible());
    EXPECT_TRUE(ask.questions.isEmpty());
}

TEST_F(FormDialogTest, EnterOnCancelSavesNothing)
{
    NameDialog dialog(ask);
    open(dialog);
    auto* cancel = find<QPushButton>(dialog, "cancel");
    cancel->setFocus();
    QTest::keyClick(cancel, Qt::Key_Return);
    EXPECT_EQ(dialog.saves, 0);
    EXPECT_FALSE(dialog.isVisible());
}

TEST_F(FormDialogTest, ThePageKeysScrollFromItsButtonsToo)
{
    NameDialog dialog(ask, 60);
    open(dialog);
    auto* bar = dialog.findChild<QScrollArea*>()->verticalScrollBar();
    auto* save = find<QPushButton>(dialog, "save");
    save->setFocus();
    QTest::keyClick(save, Qt::Key_PageDown);
    EXPECT_GT(bar->value(), 0);
    QTest::keyClick(save, Qt::Key_PageUp);
    EXPECT_EQ(bar->value(), 0);
    EXPECT_EQ(dialog.saves, 0);
}

TEST_F(FormDialogTest, SaysWhyAndTakesItBack)
{
    NameDialog dialog(ask);
    dialog.mayLeave = false;
    open(dialog);
    auto* refusal = find<QLabel>(dialog, "refusal");
    EXPECT_FALSE(refusal->isVisible());
    click(find<QPushButton>(dialog, "save"));
    EXPECT_TRUE(refusal->isVisible());
    EXPECT_EQ(refusal->text(), "That name is taken.");
}

// Where the screen is small the fields scroll and the buttons stay in sight.
TEST_F(FormDialogTest, FitsTheScreenAtEverySizeOfType)
{
    for (const double scale : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, Ground::Light, scale);
        NameDialog dialog(ask, 30);
        open(dialog);
        const QSize room = dialog.screen()->availableSize();
        EXPECT_LE(dialog.width(), room.width()) << scale;
        EXPECT_LE(dialog.height(), room.height()) << scale;
        auto* save = find<QPushButton>(dialog, "save");
        EXPECT_TRUE(dialog.rect().contains(QRect(save->mapTo(&dialog, QPoint()), save->size())))
            << scale;
        EXPECT_GE(save->width(), save->sizeHint().width()) << scale;
        EXPECT_TRUE(dialog.findChild<QScrollArea*>()->verticalScrollBar()->maximum() > 0) << scale;
    }
    applyTheme(*qApp, Ground::Light);
}

} // namespace
} // namespace plumule::ui
