#include "core/journal/cost/work_time_entries.h"
#include "tests/ui/harvest/weigh_fixture.h"
#include "tests/ui/support/look_check.h"
#include "ui/widget/widgets.h"

#include <QTableView>

namespace plumule::ui {
namespace {

class WeighActsTest : public WeighTest
{
protected:
    [[nodiscard]] std::size_t acts() { return journal->latestEntries(1000)->size(); }
};

TEST_F(WeighActsTest, AWeightThatIsNotRecordedIsUnsavedUntilItIs)
{
    growDueTrays(2);
    open();
    EXPECT_FALSE(page->hasUnsaved());
    enter("BR001");
    EXPECT_FALSE(page->hasUnsaved());
    type("325");
    EXPECT_TRUE(page->hasUnsaved());
    press(Qt::Key_Return);
    EXPECT_FALSE(page->hasUnsaved()) << words().toStdString();
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
}

TEST_F(WeighActsTest, ABowlSetDownIsUnsavedToo)
{
    growDueTrays(1);
    open();
    enter("BR001");
    type("200");
    type("+");
    ASSERT_EQ(textIn("gross"), "");
    EXPECT_TRUE(page->hasUnsaved());
}

TEST_F(WeighActsTest, ACorrectionIsUnsavedOnceItIsTypedIn)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("325");
    press(Qt::Key_F2);
    ASSERT_EQ(textIn("gross"), "325.0");
    EXPECT_FALSE(page->hasUnsaved()) << "as it is stored";
    find<QLineEdit>(*page, "gross")->selectAll();
    type("320");
    EXPECT_TRUE(page->hasUnsaved());
    press(Qt::Key_Escape);
    EXPECT_FALSE(page->hasUnsaved());
    EXPECT_EQ(cutsOf("BR001").front().net, grams(325));
}

TEST_F(WeighActsTest, EscapeEmptiesTheWeightAndKeepsTheTray)
{
    growDueTrays(1);
    open();
    enter("BR001");
    type("3.3.1");
    press(Qt::Key_Escape);
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(textIn("code"), "BR001");
    EXPECT_EQ(nameOfFocus(), "gross");
    enter("331");
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

TEST_F(WeighActsTest, F2WithNothingWeighedDoesNothing)
{
    growDueTrays(1);
    open();
    press(Qt::Key_F2);
    EXPECT_EQ(nameOfFocus(), "code");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_FALSE(messages.isRefusal());
}

TEST_F(WeighActsTest, ACorrectionIsOneActAndIsTakenBackAsOne)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("325");
    press(Qt::Key_F2);
    find<QLineEdit>(*page, "gross")->selectAll();
    type("320");
    press(Qt::Key_F4);
    const std::size_t before = acts();
    press(Qt::Key_Return);
    EXPECT_EQ(acts(), before + 1);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(320));
    EXPECT_FALSE(cutsOf("BR001").front().isLast);
    EXPECT_TRUE(messages.text().contains("corrected to 320.0 g")) << messages.text().toStdString();
    click(messages.findChild<QPushButton*>("messageAction"));
    EXPECT_EQ(cutsOf("BR001").front().net, grams(325));
    EXPECT_TRUE(cutsOf("BR001").front().isLast);
}

TEST_F(WeighActsTest, ACorrectionThatChangesNothingIsNoAct)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("325");
    press(Qt::Key_F2);
    const std::size_t before = acts();
    press(Qt::Key_Return);
    EXPECT_EQ(acts(), before);
    EXPECT_FALSE(messages.findChild<QPushButton*>("messageAction")->isVisible())
        << "there is nothing of it to take back";
}

TEST_F(WeighActsTest, F6ChangesBetweenHarvestAndResidueAndBack)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("325");
    press(Qt::Key_F6);
    EXPECT_EQ(find<Segmented>(*page, "mode")->chosen(), 1);
    enter("BR001");
    enter("1480");
    ASSERT_EQ(sheetOf("BR001").residues.size(), 1U)
        << words().toStdString() << asked().toStdString();
    EXPECT_EQ(sheetOf("BR001").residues.front().net, grams(1480));
    EXPECT_EQ(cutsOf("BR001").size(), 1U) << "a residue is no cut";
    press(Qt::Key_F6);
    EXPECT_EQ(find<Segmented>(*page, "mode")->chosen(), 0);
}

TEST_F(WeighActsTest, AnotherTrayNamesTheWeightThatWasNotRecorded)
{
    growDueTrays(2);
    open();
    enter("BR001");
    type("325");
    page->take("BR002");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("325.0 g of BR001")) << messages.text().toStdString();
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_TRUE(cutsOf("BR001").empty());
}

TEST_F(WeighActsTest, TheTareStaysOnTheScaleFromTrayToTrayAndStartToStart)
{
    growDueTrays(3);
    open();
    enter("BR001");
    typeTare("38.5");
    enter("363.5");
    ASSERT_EQ(cutsOf("BR001").size(), 1U) << asked().toStdString();
    EXPECT_EQ(cutsOf("BR001").front().net, grams(325));
    EXPECT_EQ(textIn("tare"), "38.5");
    page.reset();
    open();
    enter("BR002");
    EXPECT_EQ(textIn("tare"), "38.5");
}

TEST_F(WeighActsTest, AReadOnlyJournalSaysSoAndKeepsTheWeight)
{
    growDueTrays(1);
    const std::filesystem::path path = journal->path();
    journal.reset();
    auto opened = Journal::open(path, clock, Access::ReadOnly);
    ASSERT_TRUE(opened);
    journal = std::move(*opened);
    open();
    enter("BR001");
    enter("325");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(textIn("gross"), "325");
    EXPECT_EQ(textIn("code"), "BR001");
    EXPECT_TRUE(cutsOf("BR001").empty());
}

TEST_F(WeighActsTest, CodesThatAreNoneAreSaidAsTheyAreTyped)
{
    growDueTrays(1);
    open();
    for (const QString& code :
         {QString("<b>BR001</b>"), QString(500, 'B'), QString("%1 %2"), QString("BR001\u202E")}) {
        find<QLineEdit>(*page, "code")->setText(code);
        find<QLineEdit>(*page, "code")->setFocus();
        press(Qt::Key_Return);
        EXPECT_TRUE(words().contains(textIn("code").trimmed())) << words().toStdString();
        EXPECT_EQ(nameOfFocus(), "code");
    }
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
    EXPECT_TRUE(cutsOf("BR001").empty());
}

TEST_F(WeighActsTest, ATimerIsStartedAndStoppedByOneKeyAndCountsWhatWasCut)
{
    growDueTrays(3);
    open();
    press(Qt::Key_F8);
    ASSERT_TRUE(journal->workTimes().running().value());
    enter("BR001");
    enter("325");
    clock.set(clock.now() + 9);
    enter("310");
    enter("315");
    press(Qt::Key_F8);
    EXPECT_FALSE(journal->workTimes().running().value());
    EXPECT_EQ(journal->workTimes().measured().value(),
              (std::vector<MeasuredTask>{{LabourKind::Harvesting, 1, 540, 3}}));
}

TEST_F(WeighActsTest, EveryControlIsNamedAndReachedByTab)
{
    growDueTrays(3);
    open();
    enter("BR001");
    enter("325");
    EXPECT_EQ(unnamedControls(*page).join('\n').toStdString(), "");
    EXPECT_EQ(unreachedByTab(*page).join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
