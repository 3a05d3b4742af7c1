#include <QCoreApplication>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// The tests' application is given its plurals as the program is.
QString counted(const char* text, int count)
{
    return QCoreApplication::translate("Test", text, nullptr, count);
}

TEST(Plurals, AgreeWithTheCount)
{
    EXPECT_EQ(counted("%n tray(s)", 0), "0 trays");
    EXPECT_EQ(counted("%n tray(s)", 1), "1 tray");
    EXPECT_EQ(counted("%n tray(s)", 2), "2 trays");
    EXPECT_EQ(counted("%n tray(s)", 21), "21 trays");
}

TEST(Plurals, TurnYIntoIes)
{
    EXPECT_EQ(counted("%n variet(ies)", 0), "0 varieties");
    EXPECT_EQ(counted("%n variet(ies)", 1), "1 variety");
    EXPECT_EQ(counted("%n variet(ies)", 3), "3 varieties");
}

TEST(Plurals, OfOneSentenceAgreeAllOver)
{
    EXPECT_EQ(counted("%n variet(ies) on %n tray(s)", 1), "1 variety on 1 tray");
    EXPECT_EQ(counted("%n variet(ies) on %n tray(s)", 2), "2 varieties on 2 trays");
}

TEST(Plurals, LeaveATextWithoutACountAsItStands)
{
    EXPECT_EQ(QCoreApplication::translate("Test", "Plan(s) and tray(s)"), "Plan(s) and tray(s)");
    EXPECT_EQ(counted("shelves: %n", 1), "shelves: 1");
}

} // namespace
} // namespace plumule::ui
