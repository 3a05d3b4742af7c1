#include "tests/ui/harvest/weigh_fixture.h"

#include "core/harvest/harvest_reason.h"
#include "core/storage/storage_reason.h"
#include "core/tray/tray_reason.h"
#include "ui/harvest/weigh_text.h"
#include "ui/widget/widgets.h"

#include <QTableView>

namespace plumule::ui {
namespace {

// The slip that got in: 3250 typed for 325.0, though six trays of that trial were weighed.
TEST_F(WeighTest, ASlippedDecimalPointIsAskedAboutAtTheVeryFirstTray)
{
    growDueTrays(2);
    open();
    enter("BR001");
    EXPECT_TRUE(words().contains("a wide bound around the yields of Li et al. 2023"))
        << words().toStdString();
    typeTare("38.5");
    enter("3250");
    EXPECT_EQ(asked(), "3250.0 g is ten times what BR001 should weigh. Did you mean 325.0 g?");
    EXPECT_TRUE(question()->words().startsWith("325.0 − 38.5 = 286.5 g net, within the expected "))
        << question()->words().toStdString();
    EXPECT_EQ(nameOfFocus(), "question");
    EXPECT_TRUE(cutsOf("BR001").empty()) << "nothing is recorded before the answer";
    EXPECT_FALSE(find<QPushButton>(*page, "record")->isEnabled());
    answer(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(286.5));
    EXPECT_EQ(bowlsOf(cutsOf("BR001").front()).front().gross, grams(325));
    EXPECT_EQ(textIn("code"), "BR002");
    EXPECT_EQ(nameOfFocus(), "gross");
    EXPECT_TRUE(find<QPushButton>(*page, "record")->isEnabled());
}

TEST_F(WeighTest, NoKeepsWhatWasTyped)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("3250");
    ASSERT_FALSE(asked().isEmpty());
    answer(Qt::Key_N);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(3250));
}

TEST_F(WeighTest, AnEnterOnItsWayAnswersNoQuestion)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("3250");
    ASSERT_FALSE(question()->takesKeys());
    for (const int key : {Qt::Key_Return, Qt::Key_Enter, Qt::Key_N, Qt::Key_Escape}) {
        press(key);
    }
    EXPECT_FALSE(asked().isEmpty());
    EXPECT_TRUE(cutsOf("BR001").empty());
    EXPECT_EQ(nameOfFocus(), "question");
}

// Its letters and its Enter come faster than a person types.
TEST_F(WeighTest, AScannerAnswersNoQuestion)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("3250");
    ASSERT_TRUE(soon([&] { return question()->takesKeys(); }));
    keys.scan([] {
        enter("N1");
        enter("XN");
    });
    EXPECT_FALSE(question()->findChild<LoneKey*>()->isWaiting());
    EXPECT_FALSE(asked().isEmpty());
    EXPECT_TRUE(cutsOf("BR001").empty());
}

TEST_F(WeighTest, AWeightFarOffIsAskedAboutInPlaceAndRecordedAtTheSecondEnter)
{
    growDueTrays(5);
    open();
    weighThree();
    EXPECT_TRUE(words().startsWith("Expected "));
    EXPECT_TRUE(words().contains("19 times in 20: from 3 first cuts of Broccoli on "))
        << words().toStdString();
    enter("133.1");
    EXPECT_TRUE(asked().contains("Far from the expected"));
    EXPECT_EQ(question()->words(), "133.1 g net for BR004.");
    EXPECT_TRUE(cutsOf("BR004").empty());
    answer(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR004").size(), 1U);
    EXPECT_EQ(cutsOf("BR004").front().net, grams(133.1));
    EXPECT_EQ(textIn("code"), "BR005");
}

TEST_F(WeighTest, ATenthOfWhatIsExpectedIsASlipToo)
{
    growDueTrays(5);
    open();
    weighThree();
    enter("30.4");
    EXPECT_EQ(asked(), "30.4 g is a tenth of what BR004 should weigh. Did you mean 304.0 g?");
    answer(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR004").size(), 1U);
    EXPECT_EQ(cutsOf("BR004").front().net, grams(304));
}

TEST_F(WeighTest, EscLeavesACleanFieldToWeighAgain)
{
    growDueTrays(5);
    open();
    weighThree();
    enter("133.1");
    answer(Qt::Key_Escape);
    EXPECT_TRUE(words().startsWith("Expected "));
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_EQ(nameOfFocus(), "gross");
    enter("133.1");
    EXPECT_TRUE(asked().contains("Far from the expected")) << "asked anew";
    EXPECT_TRUE(cutsOf("BR004").empty());
}

TEST_F(WeighTest, WhatWasAcceptedIsNotAcceptedForAnotherWeight)
{
    growDueTrays(5);
    open();
    weighThree();
    enter("133.1");
    ASSERT_FALSE(asked().isEmpty());
    find<QLineEdit>(*page, "gross")->setFocus();
    enter("1"); // 133.11
    EXPECT_EQ(question()->words(), "133.1 g net for BR004.");
    EXPECT_TRUE(cutsOf("BR004").empty());
    answer(Qt::Key_Escape);
    enter("306");
    ASSERT_EQ(cutsOf("BR004").size(), 1U);
    EXPECT_EQ(cutsOf("BR004").front().net, grams(306));
}

TEST_F(WeighTest, AScaleThatHasNotComeToRestIsAskedAbout)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("US,GS,+  331.5 g");
    EXPECT_TRUE(asked().contains("had not come to rest"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    answer(Qt::Key_Escape);
    enter("ST,GS,+  331.5 g");
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(331.5));
}

TEST_F(WeighTest, AForgottenTareIsAskedAbout)
{
    growDueTrays(5);
    open();
    enter("BR001");
    typeTare("38.5");
    for (const char* weight : {"338.5", "343.5", "348.5"}) {
        enter(weight);
    }
    ASSERT_EQ(textIn("code"), "BR004");
    typeTare("0");
    enter("306");
    EXPECT_TRUE(asked().contains("No tare, though the last bowl had one"));
    EXPECT_TRUE(cutsOf("BR004").empty());
}

TEST_F(WeighTest, ANetWeightFromTheScaleNeedsNoTare)
{
    growDueTrays(5);
    open();
    enter("BR001");
    typeTare("38.5");
    for (const char* weight : {"338.5", "343.5", "348.5"}) {
        enter(weight);
    }
    type("ST,NT,+  306.0 g");
    EXPECT_EQ(textOf("net"), "306.0 g");
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR004").size(), 1U) << asked().toStdString();
    EXPECT_EQ(cutsOf("BR004").front().net, grams(306));
}

TEST_F(WeighTest, ATrayThatIsWeighedAlreadyIsAskedAbout)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("300");
    page->take("BR001");
    enter("300");
    EXPECT_TRUE(asked().contains("weighed already"));
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

TEST_F(WeighTest, ATrayThatWasNotInLightIsAskedAbout)
{
    sow(broccoli(1, kTwoDaysAgo));
    open();
    enter("BR001");
    enter("300");
    EXPECT_TRUE(asked().contains("has not been in light yet"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    answer(Qt::Key_Return);
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

// Of a weight with two doubts the slip is asked about first: its answer may settle the other.
TEST_F(WeighTest, ASlipIsAskedAboutBeforeTheRest)
{
    growDueTrays(2);
    open();
    enter("BR001");
    enter("US,GS,+  3250 g");
    EXPECT_TRUE(asked().startsWith("3250.0 g is ten times"));
    answer(Qt::Key_N);
    EXPECT_TRUE(asked().contains("had not come to rest"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    answer(Qt::Key_Return);
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

TEST_F(WeighTest, ACorrectionMeetsTheSameQuestions)
{
    growDueTrays(3);
    open();
    enter("BR001");
    enter("300");
    ASSERT_TRUE(soon([&] { return find<QTableView>(*page, "weighed")->model()->rowCount() == 1; }));
    press(Qt::Key_F2);
    enter("3100");
    EXPECT_EQ(asked(), "3100.0 g is ten times what BR001 should weigh. Did you mean 310.0 g?");
    EXPECT_EQ(cutsOf("BR001").front().net, grams(300));
    answer(Qt::Key_Return);
    EXPECT_EQ(cutsOf("BR001").front().net, grams(310));
}

TEST_F(WeighTest, ASlipInAResidueIsAskedAbout)
{
    growDueTrays(1);
    open();
    enter("BR001");
    enter("300");
    press(Qt::Key_F6);
    enter("BR001");
    enter("14800");
    EXPECT_EQ(asked(), "14800.0 g is ten times what BR001 should weigh. Did you mean 1480.0 g?");
    answer(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR001").residues.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").residues.front().net, grams(1480));
}

TEST_F(WeighTest, ACommaThatMayPartThousandsIsAskedForAnew)
{
    growDueTrays(1);
    open();
    enter("BR001");
    enter("1,234");
    EXPECT_EQ(words(), "“1,234” may be 1234 or 1.234. Type one of them.");
    EXPECT_TRUE(cutsOf("BR001").empty());
    EXPECT_EQ(nameOfFocus(), "gross");
}

TEST_F(WeighTest, AScanBehindAWeightIsALabelAndTheWeightIsNamed)
{
    growDueTrays(3);
    open();
    enter("BR001");
    type("285");
    enter("BR003"); // slower than a scanner, so that the window does not catch it
    EXPECT_EQ(textIn("code"), "BR003");
    EXPECT_EQ(textIn("gross"), "");
    EXPECT_TRUE(messages.text().contains("285.0 g of BR001 were not recorded"))
        << messages.text().toStdString();
    EXPECT_TRUE(cutsOf("BR001").empty());
    EXPECT_TRUE(cutsOf("BR003").empty());
}

TEST_F(WeighTest, SaysTheTrueReasonWhyATrayCannotBeWeighed)
{
    growDueTrays(1);
    open();
    const auto said = [&](const Error& error) {
        return cannotWeighText("BR001", error).toStdString();
    };
    EXPECT_EQ(said(fail(ErrorKind::NotFound, TrayReason::CodeUnknown, "BR001").value()),
              "No tray is called BR001. Check the label.");
    EXPECT_TRUE(said(fail(ErrorKind::Conflict, HarvestReason::TrayDiscarded, "BR001").value())
                    .starts_with("BR001 was discarded"));
    for (const ErrorKind kind : {ErrorKind::FileGone, ErrorKind::Damaged}) {
        const Error error = fail(kind, StorageReason::Failed).value();
        EXPECT_EQ(said(error), "BR001 can't be weighed. " + sentence(error).toStdString());
    }
}

TEST_F(WeighTest, TheRangeShowsTheTraysItComesFrom)
{
    growDueTrays(5);
    open();
    EXPECT_FALSE(find<QWidget>(*page, "rangeStrip")->isVisible());
    weighThree();
    type("306");
    auto* strip = find<QWidget>(*page, "rangeStrip");
    EXPECT_TRUE(strip->isVisible());
    EXPECT_TRUE(strip->accessibleDescription().contains("3 weights before"))
        << strip->accessibleDescription().toStdString();
    EXPECT_TRUE(strip->accessibleDescription().contains("on the scale 306.0 g"));
    EXPECT_TRUE(textOf("rangeWords").startsWith("From 3 first cuts of Broccoli on "));
}

TEST_F(WeighTest, TheQuestionIsInSightInTheSmallestWindow)
{
    growDueTrays(2);
    open({692, 470});
    enter("BR001");
    enter("3250");
    ASSERT_FALSE(asked().isEmpty());
    EXPECT_TRUE(soon([&] {
        return question()->visibleRegion().boundingRect() == question()->rect();
    })) << "it is scrolled to";
}

// The room shows ounces, the scale on the bench grams.
TEST_F(WeighTest, AWeightReadInTheOtherUnitIsAskedAboutAsThat)
{
    growDueTrays(2);
    open();
    click(find<Segmented>(*page, "unit")->segment(1));
    enter("BR001");
    enter("325");
    EXPECT_EQ(asked(), "325.00 oz is far from what BR001 should weigh. Did you mean 325.0 g?");
    answer(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR001").size(), 1U);
    EXPECT_NEAR(inGrams(cutsOf("BR001").front().net), 325, 0.001);
}

} // namespace
} // namespace plumule::ui
