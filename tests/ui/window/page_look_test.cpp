#include "tests/ui/support/dialog_check.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/setup/setup_page.h"
#include "ui/tray/trays_page.h"
#include "ui/trial/trials_page.h"
#include "ui/widget/widgets.h"
#include "ui/window/first_start.h"
#include "ui/window/help_dialog.h"

#include <QTabBar>
#include <QTableView>

namespace plumule::ui {
namespace {

// Every page of the window, in a room with a past, as it is shown at one size of type, in one
// palette and one size of window.
class PageLookTest : public WindowTest
{
protected:
    QStringList faults;
    bool m_maySideways = true; // whether a page may be scrolled sideways

    void openAt(QSize size)
    {
        window.reset();
        preferences.set(Preference::WindowPlace, QByteArray());
        openWindow(size);
    }
    void waitForWork()
    {
        EXPECT_TRUE(QTest::qWaitFor([&] { return !window->tasks().isBusy(); }, 20'000));
        settleDown();
        // A layout in scroll areas within one another takes some turns; what is still wrong after
        // them is told by lookFaults().
        (void)QTest::qWaitFor(
            [this] { return (cutTexts(*window) + lostWidgets(*window)).isEmpty(); }, 300);
    }
    // Looks at what is in front, under this name.
    void look(const QString& name)
    {
        waitForWork();
        // What is a table of fields is as wide as its columns: the stages of a variety.
        const bool maySideways = m_maySideways || name == "Varieties";
        for (const QString& fault :
             lookFaults(*window) + (maySideways ? QStringList() : sidewaysWidgets(*window))) {
            faults << name + ": " + fault;
        }
    }
    void showPage(const char* name)
    {
        window->showPage(name);
        settleDown();
    }
    void openTrialThatIs(const QString& state)
    {
        showPage("Trials");
        qobject_cast<TrialsPage*>(window->page("Trials"))->openList();
        auto* table = find<QTableView>(pageOf("Trials"), "trials");
        for (int row = 0; row < table->model()->rowCount(); ++row) {
            if (table->model()->index(row, 5).data().toString() == state) {
                Q_EMIT table->activated(table->model()->index(row, 0));
                settleDown();
                return;
            }
        }
        ADD_FAILURE() << "no trial is " << state.toStdString();
    }
    void lookAtTheRack()
    {
        showPage("Round");
        look("Round");
        press(Qt::Key_Home);
        click(pageOf("Round").findChildren<QPushButton*>(QRegularExpression("^more")).front());
        look("Round with its panel");
        press(Qt::Key_Escape);
    }
    void lookAtTrays()
    {
        showPage("Trays");
        look("Trays");
        press(Qt::Key_Return);
        EXPECT_TRUE(find<QWidget>(*window, "traySheet")->isVisible());
        look("Sheet");
        press(Qt::Key_Escape);
    }
    void lookAtTrials()
    {
        showPage("Trials");
        look("Trials");
        click(find<QPushButton>(pageOf("Trials"), "newTrial"));
        look("New trial");
        press(Qt::Key_Escape);
        openTrialThatIs("growing");
        look("Growing trial");
        openTrialThatIs("harvested");
        look("Ended trial");
        click(find<Segmented>(pageOf("Trials"), "trialPart")->segment(1));
        look("Tasting");
    }
    void lookAtTheRest()
    {
        for (const char* each :
             {"Racks", "Week", "Orders", "Forecast", "Season", "Costs", "Stock", "History"}) {
            showPage(each);
            look(each);
        }
        showPage("Set-up");
        auto* setup = qobject_cast<SetupPage*>(window->page("Set-up"));
        for (const QString& part : setup->partNames()) {
            setup->showPart(part);
            look(part);
        }
    }
    // All of it, at that look.
    void expectWell(const Look& at)
    {
        useSample();
        applyTheme(*qApp, at.ground, at.type);
        openAt(at.size);
        lookAtTheRack();
        lookAtTrays();
        lookAtTrials();
        lookAtTheRest();
        window.reset();
        applyTheme(*qApp, Ground::Light);
        EXPECT_EQ(faults.join('\n').toStdString(), "");
    }
};

TEST_F(PageLookTest, OfUsualTypeInTheSmallestWindow)
{
    expectWell({1.0, Ground::Light, {900, 600}});
}

TEST_F(PageLookTest, OfUsualTypeInTheDark)
{
    expectWell({1.0, Ground::Dark, {1024, 768}});
}

TEST_F(PageLookTest, OfLargeTypeInTheSmallestWindowInTheDark)
{
    expectWell({1.5, Ground::Dark, {900, 600}});
}

TEST_F(PageLookTest, OfLargeType)
{
    expectWell({1.5, Ground::Light, {1024, 768}});
}

TEST_F(PageLookTest, OfTheLargestTypeOnAPortableScreenWithoutGoingSideways)
{
    m_maySideways = false;
    expectWell({2.0, Ground::Dark, {1024, 768}});
}

TEST_F(PageLookTest, OfTheLargestTypeInTheSmallestWindow)
{
    expectWell({2.0, Ground::Light, {900, 600}});
}

// The name of a page and how many wait there, beside each other in the list of pages.
TEST_F(PageLookTest, CountsOfPagesLeaveTheirNamesFreeAtEverySizeOfType)
{
    for (const double type : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, Ground::Dark, type);
        openAt({1024, 768});
        for (const QString& name : window->pageNames()) {
            Q_EMIT window->page(name)->badgeChanged(88);
            settleDown();
            const auto* button = find<QPushButton>(*window, ("nav" + name).toLatin1());
            const auto* badge = find<QLabel>(*window, ("badge" + name).toLatin1());
            QStyleOptionButton option;
            option.initFrom(button);
            const int left = button->style()
                                 ->subElementRect(QStyle::SE_PushButtonContents, &option, button)
                                 .left();
            QFont chosen = button->font();
            chosen.setWeight(QFont::DemiBold);
            EXPECT_LT(left + QFontMetrics(chosen).horizontalAdvance(name), badge->x())
                << name.toStdString() << " at " << type;
        }
    }
    window.reset();
    applyTheme(*qApp, Ground::Light);
}

TEST_F(PageLookTest, OfTheScaleAtEverySizeOfType)
{
    growDueTrays(4);
    for (const Look& each : everyLook()) {
        applyTheme(*qApp, each.ground, each.type);
        openAt(each.size);
        showPage("Weigh-in");
        enter("BR001");
        look(QString::number(each.type));
    }
    window.reset();
    applyTheme(*qApp, Ground::Light);
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

TEST_F(PageLookTest, OfAnEmptyRoom)
{
    for (const double type : {1.0, 2.0}) {
        applyTheme(*qApp, Ground::Light, type);
        openAt({900, 600});
        for (const QString& name : window->pageNames()) {
            window->showPage(name);
            look(QString::number(type) + ' ' + name);
        }
    }
    window.reset();
    applyTheme(*qApp, Ground::Light);
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

TEST_F(PageLookTest, OfTheFirstStart)
{
    const auto found = faultsOfDialog([this] {
        auto* start = new FirstStart(clock, ask);
        start->explain("/media/stick/Cellar.plumule", Error{ErrorKind::Damaged});
        return start;
    });
    EXPECT_EQ(found.join('\n').toStdString(), "");
}

TEST_F(PageLookTest, OfTheHelp)
{
    const auto found = faultsOfDialog([this] { return new HelpDialog(ask); });
    EXPECT_EQ(found.join('\n').toStdString(), "");
}

TEST_F(PageLookTest, TabReachesEveryControlOfEveryPage)
{
    useSample();
    openAt({1440, 900});
    for (const QString& name : window->pageNames()) {
        window->showPage(name);
        waitForWork();
        EXPECT_EQ(unreachedByTab(*window).join('\n').toStdString(), "") << name.toStdString();
    }
}

} // namespace
} // namespace plumule::ui
