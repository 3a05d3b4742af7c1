#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/page/ask.h"
#include "ui/page/line_dialog.h"
#include "ui/widget/theme.h"

#include <QFileDialog>
#include <QLineEdit>
#include <QMessageBox>
#include <QTreeView>

namespace plumule::ui {
namespace {

// The dialogs that the program really asks with.
class DialogAskTest : public GrowingTest
{
protected:
    QWidget window;
    DialogAsk asking;
    int agreed = 0;
    int left = 0;
    QStringList answers;

    void SetUp() override
    {
        GrowingTest::SetUp();
        show(window, {600, 400});
    }
    // The question in front.
    template <class Dialog>
    Dialog* asked()
    {
        EXPECT_TRUE(soon([this] { return window.findChild<Dialog*>() != nullptr; }));
        auto* dialog = window.findChild<Dialog*>();
        if (dialog != nullptr) {
            dialog->activateWindow();
            EXPECT_TRUE(QTest::qWaitForWindowActive(dialog));
        }
        return dialog;
    }
    template <class Dialog>
    [[nodiscard]] bool isGone()
    {
        return soon([this] {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            return window.findChild<Dialog*>() == nullptr;
        });
    }
    static QAbstractButton* buttonSaying(QMessageBox& box, const QString& words)
    {
        for (QAbstractButton* each : box.buttons()) {
            if (each->text().remove('&') == words) {
                return each;
            }
        }
        return nullptr;
    }
    void confirm(const QString& question)
    {
        asking.confirm(&window, "Discard", question, "Discard the tray", [this] { ++agreed; });
    }
    void askUnsaved()
    {
        asking.unsaved(
            &window, "Save first?", [this] { ++agreed; }, [this] { ++left; });
    }
    void askLine()
    {
        asking.line(&window, "Discard this tray", "Why?", "mould",
                    [this](const QString& text) { answers << text; });
    }
    void askWhereToSave(const QString& preset)
    {
        asking.fileToSave(&window, "Save", preset, "PDF (*.pdf)",
                          [this](const QString& path) { answers << path; });
    }
};

TEST_F(DialogAskTest, AQuestionIsAgreedToByItsOwnButtonAlone)
{
    confirm("Discard BR001?");
    auto* box = asked<QMessageBox>();
    ASSERT_NE(box, nullptr);
    EXPECT_EQ(box->text(), "Discard BR001?");
    auto* yes = buttonSaying(*box, "Discard the tray");
    ASSERT_NE(yes, nullptr);
    EXPECT_FALSE(yes == box->defaultButton()) << "an Enter on its way agrees to nothing";
    click(yes);
    EXPECT_EQ(agreed, 1);
    EXPECT_TRUE(isGone<QMessageBox>());
}

TEST_F(DialogAskTest, EnterEscapeAndCancelLeaveEverythingAsItIs)
{
    for (const int key : {int(Qt::Key_Return), int(Qt::Key_Escape)}) {
        confirm("Discard BR001?");
        auto* box = asked<QMessageBox>();
        ASSERT_NE(box, nullptr);
        QTest::keyClick(box, static_cast<Qt::Key>(key));
        EXPECT_TRUE(isGone<QMessageBox>());
    }
    confirm("Discard BR001?");
    click(asked<QMessageBox>()->button(QMessageBox::Cancel));
    EXPECT_TRUE(isGone<QMessageBox>());
    EXPECT_EQ(agreed, 0);
}

TEST_F(DialogAskTest, WhatIsNotSavedIsSavedLeftOrGoneBackTo)
{
    askUnsaved();
    QTest::keyClick(asked<QMessageBox>(), Qt::Key_Escape);
    EXPECT_TRUE(isGone<QMessageBox>());
    EXPECT_EQ(agreed + left, 0);
    askUnsaved();
    QTest::keyClick(asked<QMessageBox>(), Qt::Key_Return);
    EXPECT_TRUE(isGone<QMessageBox>());
    EXPECT_EQ(agreed, 1) << "Enter saves";
    EXPECT_EQ(left, 0);
    askUnsaved();
    click(buttonSaying(*asked<QMessageBox>(), "Leave without saving"));
    EXPECT_TRUE(isGone<QMessageBox>());
    EXPECT_EQ(agreed, 1);
    EXPECT_EQ(left, 1);
}

TEST_F(DialogAskTest, ALineIsTakenWithoutItsBlanksAndNotWhereItIsEmpty)
{
    askLine();
    auto* dialog = asked<LineDialog>();
    auto* field = dialog->findChild<QLineEdit*>();
    EXPECT_EQ(field->text(), "mould");
    field->selectAll();
    QTest::keyClicks(field, "  fan failed ");
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(answers, QStringList("fan failed"));
    EXPECT_TRUE(isGone<LineDialog>());
    askLine();
    field = asked<LineDialog>()->findChild<QLineEdit*>();
    field->selectAll();
    QTest::keyClicks(field, "   ");
    QTest::keyClick(field, Qt::Key_Return);
    auto* unanswered = asked<LineDialog>();
    ASSERT_NE(unanswered, nullptr) << "what says nothing is not taken for an answer";
    EXPECT_EQ(unanswered->findChild<QLabel*>("refusal")->text(), "Nothing is written yet.");
    QTest::keyClick(unanswered, Qt::Key_Escape);
    EXPECT_TRUE(isGone<LineDialog>());
    EXPECT_EQ(answers.size(), 1);
}

TEST_F(DialogAskTest, NamesWithMarksAreReadAsTheyAre)
{
    confirm("Remove <b>Mix</b> and <img src=x>?");
    auto* box = asked<QMessageBox>();
    EXPECT_EQ(box->textFormat(), Qt::PlainText);
    click(box->button(QMessageBox::Cancel));
    EXPECT_TRUE(isGone<QMessageBox>());
    asking.line(&window, "Discard", "Why <b>BR001</b>?", {}, [](const QString&) {});
    for (const QLabel* each : asked<LineDialog>()->findChildren<QLabel*>()) {
        EXPECT_EQ(each->textFormat(), Qt::PlainText) << each->text().toStdString();
    }
}

TEST_F(DialogAskTest, ANameTypedWithoutAnEndingGetsThatOfItsKind)
{
    askWhereToSave(folder.filePath("labels.pdf"));
    auto* dialog = asked<QFileDialog>();
    ASSERT_NE(dialog, nullptr);
    auto* name = dialog->findChild<QLineEdit*>("fileNameEdit");
    ASSERT_NE(name, nullptr);
    EXPECT_EQ(name->text(), "labels.pdf");
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, "spring");
    QTest::keyClick(name, Qt::Key_Return);
    ASSERT_EQ(answers.size(), 1);
    EXPECT_TRUE(answers.front().endsWith("/spring.pdf")) << answers.front().toStdString();
    EXPECT_TRUE(isGone<QFileDialog>());
}

TEST_F(DialogAskTest, AFileThatIsThereIsOpenedByItsName)
{
    QFile file(folder.filePath("table.csv"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.close();
    asking.fileToOpen(&window, "Import", "Tables (*.csv);;All files (*)",
                      [this](const QString& path) { answers << path; });
    auto* dialog = asked<QFileDialog>();
    ASSERT_NE(dialog, nullptr);
    auto* name = dialog->findChild<QLineEdit*>("fileNameEdit");
    name->setText(folder.filePath("table.csv")); // without the list that completes it
    name->setFocus();
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(answers, QStringList(folder.filePath("table.csv")));
    asking.folder(&window, "Backups", [this](const QString& path) { answers << path; });
    EXPECT_TRUE(soon([this] { return window.findChildren<QFileDialog*>().size() > 0; }));
    QTest::keyClick(window.findChildren<QFileDialog*>().back(), Qt::Key_Escape);
    EXPECT_EQ(answers.size(), 1);
}

TEST_F(DialogAskTest, ALineCanBeAskedForAtEverySizeOfType)
{
    const auto faults = faultsOfDialog([this] {
        return new LineDialog(asking, "Discard this tray",
                              "Why? Mould means: out of the room, closed up, with gloves and a "
                              "mask.",
                              QString());
    });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

constexpr QSize kPortable(1024, 768); // the screen that the largest type has to do with

// The folder is named, and the day a file was changed stands there whole.
TEST_F(DialogAskTest, FilesAreChosenAtEverySizeOfType)
{
    QFile file(folder.filePath("table.csv"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.close();
    for (const double type : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, type > 1 ? Ground::Dark : Ground::Light, type);
        asking.fileToOpen(&window, "Import", "Tables (*.csv)", [](const QString&) {});
        auto* dialog = asked<QFileDialog>();
        ASSERT_NE(dialog, nullptr);
        dialog->setDirectory(folder.path());
        auto* files = dialog->findChild<QTreeView*>("treeView");
        ASSERT_TRUE(soon([&] { return files->model()->rowCount(files->rootIndex()) == 1; }));
        settleDown();
        EXPECT_LE(dialog->width(), kPortable.width()) << type;
        EXPECT_LE(dialog->height(), kPortable.height()) << type;
        const QModelIndex changedOn = files->model()->index(0, 3, files->rootIndex());
        EXPECT_LE(files->sizeHintForIndex(changedOn).width(), files->columnWidth(3))
            << type << ' ' << changedOn.data().toString().toStdString();
        EXPECT_EQ(files->horizontalScrollBar()->maximum(), 0) << type;
        const auto* where = dialog->findChild<QComboBox*>("lookInCombo");
        EXPECT_GE(where->width(), where->fontMetrics().horizontalAdvance("the grow room")) << type;
        QTest::keyClick(dialog, Qt::Key_Escape);
        EXPECT_TRUE(isGone<QFileDialog>());
    }
    applyTheme(*qApp, Ground::Light);
}

// What stands beside the question scales with the type of the program.
TEST_F(DialogAskTest, AQuestionCanBeReadAtEverySizeOfType)
{
    for (const double type : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, type > 1 ? Ground::Dark : Ground::Light, type);
        confirm("What you typed here is not saved. Leave it all the same?\nIt is gone then.");
        auto* box = asked<QMessageBox>();
        ASSERT_NE(box, nullptr);
        EXPECT_LE(box->width(), box->screen()->availableSize().width()) << type;
        for (QAbstractButton* each : box->buttons()) {
            EXPECT_GE(each->width(), each->sizeHint().width()) << type;
        }
        const auto* words = box->findChild<QLabel*>("qt_msgbox_label");
        ASSERT_NE(words, nullptr);
        EXPECT_GE(words->height(), words->heightForWidth(words->width())) << type;
        click(box->button(QMessageBox::Cancel));
        EXPECT_TRUE(isGone<QMessageBox>());
    }
    applyTheme(*qApp, Ground::Light);
}

} // namespace
} // namespace plumule::ui
