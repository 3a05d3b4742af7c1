#include "ui/widget/time_field.h"

#include "tests/ui/support/field_window.h"
#include "ui/text/text.h"

#include <QSignalSpy>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(MinuteTyped, ReadsTimesAsPeopleTypeThem)
{
    const std::pair<const char*, std::optional<int>> table[] = {
        {"07:30", 450},      {"7:30", 450},   {"7.30", 450},     {"730", 450},  {"0730", 450},
        {"7", 420},          {"19:15", 1155}, {"7:15 pm", 1155}, {"7pm", 1140}, {"12 am", 0},
        {"12:05 p.m.", 725}, {"0", 0},        {"24:00", {}},     {"7:60", {}},  {"", {}},
        {"13 pm", {}},       {"noon", {}},    {"7:3", {}},       {"-7", {}},    {"7.", {}},
        {"7 m", {}},         {"30m", {}},     {"7 a", 420},      {"12 p", 720}, {"0 am", {}},
        {"12", 720},         {"123", 83},     {"23:59", 1439},   {"2460", {}},  {"7:30:15", {}},
        {"07:30 pm", 1170},  {" 7 30 ", 450}, {"99", {}},
    };
    for (const auto& [text, minute] : table) {
        EXPECT_EQ(minuteTyped(text), minute) << text;
    }
}

// A field of 07:30 and another to leave it for.
class TimeFieldTest : public FieldWindowTest
{
protected:
    TimeField* time = new TimeField("time");

    void SetUp() override
    {
        time->setMinute(7 * 60 + 30);
        show({time});
    }
};

TEST_F(TimeFieldTest, ATimeIsTypedOverAndStepped)
{
    const QSignalSpy given(time, &TimeField::timeGiven);
    type(time, "645");
    EXPECT_EQ(time->minute(), 6 * 60 + 45);
    QTest::keyClick(time, Qt::Key_Return);
    EXPECT_EQ(time->text(), "06:45");
    QTest::keyClick(time, Qt::Key_Up);
    EXPECT_EQ(time->text(), "07:00");
    QTest::keyClick(time, Qt::Key_Down);
    EXPECT_EQ(time->text(), "06:45");
    EXPECT_EQ(given.count(), 3);
    time->setMinute(0);
    QTest::keyClick(time, Qt::Key_Down);
    EXPECT_EQ(time->text(), "23:45");
    type(time, "late");
    QTest::keyClick(time, Qt::Key_Tab);
    EXPECT_TRUE(time->property("wrong").toBool());
    EXPECT_FALSE(time->requireTime());
}

TEST_F(TimeFieldTest, TheSameTimeTypedOtherwiseIsNotGiven)
{
    const QSignalSpy given(time, &TimeField::timeGiven);
    type(time, "7.30");
    QTest::keyClick(time, Qt::Key_Return);
    EXPECT_EQ(time->text(), "07:30");
    EXPECT_EQ(given.count(), 0);
    time->setMinute(8 * 60);
    EXPECT_EQ(given.count(), 0) << "it was put in";
    EXPECT_EQ(time->minute(), 8 * 60);
}

TEST_F(TimeFieldTest, ATimeThatCantBeReadIsMarkedUntilItIsTypedOn)
{
    EXPECT_TRUE(time->requireTime());
    type(time, "7 m");
    EXPECT_FALSE(time->requireTime());
    EXPECT_TRUE(time->property("wrong").toBool());
    EXPECT_FALSE(time->minute());
    const QSignalSpy given(time, &TimeField::timeGiven);
    QTest::keyClick(time, Qt::Key_Up);
    EXPECT_EQ(time->text(), "7 m") << "no step from no time";
    EXPECT_EQ(given.count(), 0);
    type(time, "9");
    EXPECT_FALSE(time->property("wrong").toBool());
    QTest::keyClick(time, Qt::Key_Return);
    EXPECT_EQ(time->text(), "09:00");
    EXPECT_EQ(given.count(), 1);
    EXPECT_TRUE(howToWriteATime().contains(clockText(7 * 60 + 30)));
}

TEST_F(TimeFieldTest, StepsGoRoundMidnight)
{
    time->setFocus();
    time->setMinute(23 * 60 + 50);
    QTest::keyClick(time, Qt::Key_Up);
    EXPECT_EQ(time->text(), "00:05");
    QTest::keyClick(time, Qt::Key_Down);
    EXPECT_EQ(time->text(), "23:50");
}

} // namespace
} // namespace plumule::ui
