#include "tests/ui/support/growing.h"
#include "tests/ui/support/look_check.h"
#include "ui/harvest/weigh_question.h"

#include <QElapsedTimer>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class WeighQuestionTest : public GrowingTest
{
protected:
    QWidget window;
    WeighQuestion question{&window};
    QSignalSpy answered{&question, &WeighQuestion::answered};

    void ask()
    {
        question.ask("3250 g is ten times as much as expected.", "Was it 325.0 g?",
                     {{"Yes, 325.0 g", Qt::Key_Return, "⏎"},
                      {"No, 3250 g is right", Qt::Key_N, "N"},
                      {"Weigh again", Qt::Key_Escape, "Esc"}});
        show(window, {700, 300});
        question.resize(680, 260);
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        question.setFocus();
    }
    void askAndWait()
    {
        ask();
        ASSERT_TRUE(soon([this] { return question.takesKeys(); }));
    }
    [[nodiscard]] int answer() { return answered.isEmpty() ? -1 : answered[0][0].toInt(); }
};

TEST_F(WeighQuestionTest, SaysWhatItAsksAndNothingOnceItIsClosed)
{
    EXPECT_FALSE(question.isOpen());
    EXPECT_EQ(question.title(), "");
    ask();
    EXPECT_TRUE(question.isOpen());
    EXPECT_EQ(question.title(), "3250 g is ten times as much as expected.");
    EXPECT_EQ(question.words(), "Was it 325.0 g?");
    EXPECT_EQ(question.accessibleName(), question.title());
    EXPECT_EQ(question.accessibleDescription(), question.words());
    question.close();
    EXPECT_EQ(question.title(), "");
    EXPECT_FALSE(question.isVisible());
    EXPECT_EQ(answered.count(), 0);
}

TEST_F(WeighQuestionTest, TakesNoKeyAtFirst)
{
    ask();
    for (const Qt::Key key : {Qt::Key_Return, Qt::Key_N, Qt::Key_Escape}) {
        QTest::keyClick(&question, key);
    }
    EXPECT_EQ(answered.count(), 0);
    EXPECT_TRUE(question.isOpen());
}

TEST_F(WeighQuestionTest, EnterOfEitherPadAnswersTheFirst)
{
    for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Enter}) {
        answered.clear();
        askAndWait();
        QTest::keyClick(&question, key);
        EXPECT_EQ(answer(), 0);
        EXPECT_FALSE(question.isOpen());
    }
}

TEST_F(WeighQuestionTest, ALetterAnswersOnceNoOtherFollows)
{
    askAndWait();
    QTest::keyClick(&question, Qt::Key_N);
    EXPECT_EQ(answered.count(), 0) << "a scanner's code may begin with it";
    EXPECT_TRUE(soon([this] { return answered.count() == 1; }));
    EXPECT_EQ(answer(), 1);
}

TEST_F(WeighQuestionTest, AScannersLettersAnswerNothing)
{
    askAndWait();
    QElapsedTimer burst;
    burst.start();
    for (const Qt::Key key : {Qt::Key_B, Qt::Key_N, Qt::Key_0, Qt::Key_N, Qt::Key_Return}) {
        QTest::keyClick(&question, key);
    }
    ASSERT_LT(burst.elapsed(), 400) << "typed as a scanner does";
    settleDown();
    EXPECT_EQ(answered.count(), 0);
    EXPECT_TRUE(question.isOpen());
}

TEST_F(WeighQuestionTest, OtherKeysGoNowhere)
{
    askAndWait();
    QTest::keyClick(&question, Qt::Key_F2);
    QTest::keyClick(&question, Qt::Key_5);
    settleDown();
    EXPECT_EQ(answered.count(), 0);
    EXPECT_TRUE(question.hasFocus());
}

TEST_F(WeighQuestionTest, TabWalksItsAnswersAndSpacePressesTheOneInFocus)
{
    askAndWait();
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    EXPECT_EQ(nameOfFocus(), "answer1");
    press(Qt::Key_Space);
    EXPECT_TRUE(soon([this] { return answered.count() == 1; }));
    EXPECT_EQ(answer(), 1);
}

TEST_F(WeighQuestionTest, APressAnswersAtOnce)
{
    ask();
    click(find<QPushButton>(question, "answer2"));
    EXPECT_EQ(answer(), 2);
    EXPECT_FALSE(question.isOpen());
}

TEST_F(WeighQuestionTest, AskedAnewItHasTheNewAnswersAlone)
{
    ask();
    question.ask("Recorded already.", {}, {{"Weigh again", Qt::Key_Escape, "Esc"}});
    settleDown();
    EXPECT_EQ(question.findChildren<QPushButton*>("answer0").size(), 1);
    EXPECT_EQ(question.findChild<QPushButton*>("answer1"), nullptr);
    EXPECT_FALSE(find<QLabel>(question, "questionWords")->isVisible());
}

TEST_F(WeighQuestionTest, NamesWithMarksAreReadAsTheyAre)
{
    question.ask("<b>X</b> was weighed", "on <i>mix</i>", {{"Again", Qt::Key_Escape, "Esc"}});
    show(window, {700, 300});
    EXPECT_EQ(question.title(), "<b>X</b> was weighed");
    EXPECT_EQ(textsWithMarks(window).join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
