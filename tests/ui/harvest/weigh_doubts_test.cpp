#include "tests/ui/harvest/weigh_fixture.h"

namespace plumule::ui {
namespace {

TEST_F(WeighTest, AWeightFarOffIsAskedAboutInPlaceAndRecordedAtTheSecondEnter)
{
    growDueTrays(5);
    open();
    weighThree();
    EXPECT_TRUE(words().startsWith("Expected "));
    EXPECT_TRUE(words().contains("from 3 trays"));
    enter("33.1");
    EXPECT_TRUE(words().contains("Far from the expected"));
    EXPECT_TRUE(words().contains("Enter again records it all the same"));
    EXPECT_TRUE(cutsOf("BR004").empty());
    EXPECT_EQ(nameOfFocus(), "gross");
    press(Qt::Key_Return);
    ASSERT_EQ(cutsOf("BR004").size(), 1U);
    EXPECT_EQ(cutsOf("BR004").front().net, grams(33.1));
    EXPECT_EQ(textIn("code"), "BR005");
}

TEST_F(WeighTest, EscLeavesTheDoubtfulWeightToBeCorrected)
{
    growDueTrays(5);
    open();
    weighThree();
    enter("33.1");
    press(Qt::Key_Escape);
    EXPECT_TRUE(words().startsWith("Expected "));
    EXPECT_EQ(textIn("gross"), "33.1");
    EXPECT_EQ(nameOfFocus(), "gross");
    press(Qt::Key_Return);
    EXPECT_TRUE(words().contains("Far from the expected")); // asked anew
    EXPECT_TRUE(cutsOf("BR004").empty());
}

TEST_F(WeighTest, WhatWasAcceptedIsNotAcceptedForAnotherWeight)
{
    growDueTrays(5);
    open();
    weighThree();
    enter("33.1");
    enter("1"); // 33.11
    EXPECT_TRUE(words().contains("Far from the expected"));
    EXPECT_TRUE(cutsOf("BR004").empty());
    find<QLineEdit>(*page, "gross")->selectAll();
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
    EXPECT_TRUE(words().contains("had not come to rest"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    find<QLineEdit>(*page, "gross")->selectAll();
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
    EXPECT_TRUE(words().contains("No tare, though the last bowl had one"));
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
    ASSERT_EQ(cutsOf("BR004").size(), 1U) << words().toStdString();
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
    EXPECT_TRUE(words().contains("weighed already"));
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

TEST_F(WeighTest, ATrayThatWasNotInLightIsAskedAbout)
{
    sow(broccoli(1, kTwoDaysAgo));
    open();
    enter("BR001");
    enter("300");
    EXPECT_TRUE(words().contains("has not been in light yet"));
    EXPECT_TRUE(cutsOf("BR001").empty());
    press(Qt::Key_Return);
    EXPECT_EQ(cutsOf("BR001").size(), 1U);
}

} // namespace
} // namespace plumule::ui
