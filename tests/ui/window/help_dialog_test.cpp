#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/theme.h"
#include "ui/window/help_dialog.h"

#include <QLabel>

namespace plumule::ui {
namespace {

class HelpDialogTest : public UiTest
{
protected:
    // Words that have less height than they need at the width they were given.
    static QStringList cutWords(const QWidget& dialog)
    {
        QStringList cut;
        for (const QLabel* each : dialog.findChildren<QLabel*>()) {
            if (each->isVisible() && each->height() < each->heightForWidth(each->width())) {
                cut << each->text();
            }
        }
        return cut;
    }
};

TEST_F(HelpDialogTest, ShowsItsWordsWholeAtEveryTypeSize)
{
    for (const double scale : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, Ground::Light, scale);
        HelpDialog dialog(ask);
        dialog.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&dialog));
        dialog.resize(860, 520);
        settleDown();
        EXPECT_EQ(cutWords(dialog).join('|').toStdString(), "") << "at " << scale;
    }
    applyTheme(*qApp, Ground::Light);
}

} // namespace
} // namespace plumule::ui
