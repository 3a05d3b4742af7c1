#include "tests/ui/support/growing.h"
#include "ui/widget/one_line_fields.h"

#include <QClipboard>
#include <QPlainTextEdit>

namespace plumule::ui {
namespace {

// The program's own fields, as applyTheme() sets them up.
class OneLineFieldsTest : public GrowingTest
{
protected:
    QWidget window;
    QLineEdit* field = new QLineEdit(&window);

    void SetUp() override
    {
        GrowingTest::SetUp();
        show(window, {400, 120});
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        field->setFocus();
    }
    void paste(const QString& text)
    {
        QGuiApplication::clipboard()->setText(text);
        press(Qt::Key_V, Qt::ControlModifier);
    }
};

TEST_F(OneLineFieldsTest, PastedLinesGoOnInOne)
{
    const std::pair<const char*, const char*> texts[] = {{"Early\nspring", "Early spring"},
                                                         {"Early\r\n  spring", "Early spring"},
                                                         {"a\n\n\nb", "a b"},
                                                         {"Early spring", "Early spring"},
                                                         {"two  blanks", "two  blanks"}};
    for (const auto& [pasted, held] : texts) {
        field->clear();
        paste(pasted);
        EXPECT_EQ(field->text().toStdString(), held);
        EXPECT_TRUE(field->isModified());
    }
}

TEST_F(OneLineFieldsTest, TypingGoesOnWhereItWasPasted)
{
    type("[]");
    press(Qt::Key_Left);
    paste("a\nb");
    type("!");
    EXPECT_EQ(field->text(), "[a b!]");
}

TEST_F(OneLineFieldsTest, OtherSignsOfALineBreakCountToo)
{
    field->clear();
    paste(QString("a") + QChar(0x2028) + "b" + QChar(0x2029) + "c");
    EXPECT_EQ(field->text(), "a b c");
}

TEST_F(OneLineFieldsTest, AFieldOfManyLinesKeepsThem)
{
    QPlainTextEdit lines(&window);
    lines.show();
    lines.setFocus();
    paste("a\nb");
    EXPECT_EQ(lines.toPlainText(), "a\nb");
}

} // namespace
} // namespace plumule::ui
