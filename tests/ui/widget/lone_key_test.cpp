#include "ui/widget/lone_key.h"

#include <QKeyEvent>
#include <QSignalSpy>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

class LoneKeyTest : public testing::Test
{
protected:
    LoneKey letter;
    QSignalSpy alone{&letter, &LoneKey::stoodAlone};
    qint64 now = 1000;

    void SetUp() override
    {
        letter.clock().setSource([this] { return now; });
    }
    // Milliseconds after the one before.
    void press(int key, qint64 after)
    {
        now += after;
        if (!letter.isInABurst(QKeyEvent(QEvent::KeyPress, key, Qt::NoModifier))) {
            letter.waitFor(key);
        }
    }
};

TEST_F(LoneKeyTest, ALetterActsWhenNoneFollows)
{
    press(Qt::Key_S, 500);
    EXPECT_TRUE(letter.isWaiting());
    EXPECT_EQ(alone.count(), 0);
    ASSERT_TRUE(alone.wait());
    EXPECT_EQ(alone.front().front().toInt(), Qt::Key_S);
    EXPECT_FALSE(letter.isWaiting());
}

TEST_F(LoneKeyTest, OfALabelNoLetterActs)
{
    for (const int key : {Qt::Key_S, Qt::Key_U, Qt::Key_1}) {
        press(key, 39);
    }
    EXPECT_FALSE(letter.isWaiting());
}

TEST_F(LoneKeyTest, TheFirstOfTwoLettersIsDroppedAndASlowSecondActs)
{
    press(Qt::Key_S, 500);
    press(Qt::Key_U, 40);
    ASSERT_TRUE(alone.wait());
    EXPECT_EQ(alone.count(), 1);
    EXPECT_EQ(alone.front().front().toInt(), Qt::Key_U);
}

TEST_F(LoneKeyTest, HearsPlainLettersAndFiguresAlone)
{
    const auto heard = [&](int key, Qt::KeyboardModifiers with, const char* typed,
                           bool isRepeated = false) {
        now += 500;
        return letter.hear(QKeyEvent(QEvent::KeyPress, key, with, typed, isRepeated));
    };
    EXPECT_TRUE(heard(Qt::Key_S, Qt::ShiftModifier, "S"));
    ASSERT_TRUE(alone.wait());
    EXPECT_EQ(alone.front().front().toInt(), Qt::Key_S);
    EXPECT_TRUE(heard(Qt::Key_1, Qt::KeypadModifier, "1"));
    EXPECT_TRUE(letter.isWaiting());
    EXPECT_TRUE(heard(Qt::Key_S, Qt::NoModifier, "s", true));
    EXPECT_FALSE(letter.isWaiting()) << "held down";
    EXPECT_FALSE(heard(Qt::Key_S, Qt::ControlModifier, "\x13"));
    EXPECT_FALSE(heard(Qt::Key_Down, Qt::NoModifier, ""));
}

TEST_F(LoneKeyTest, WhatWasDroppedDoesNotAct)
{
    press(Qt::Key_S, 500);
    letter.drop();
    EXPECT_FALSE(letter.isWaiting());
}

} // namespace
} // namespace plumule::ui
