#include "core/exchange/cell_guard.h"

#include "core/exchange/csv.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

std::string unguarded(std::string cell)
{
    unguard(cell);
    return cell;
}

TEST(CellGuard, PutsAnApostropheBeforeWhatASpreadsheetWouldRun)
{
    EXPECT_EQ(guarded("=1+1"), "'=1+1");
    EXPECT_EQ(guarded("+cmd"), "'+cmd");
    EXPECT_EQ(guarded("-cmd"), "'-cmd");
    EXPECT_EQ(guarded("@SUM(A1)"), "'@SUM(A1)");
    EXPECT_EQ(guarded("\tx"), "'\tx");
    EXPECT_EQ(guarded("\rx"), "'\rx");
    EXPECT_EQ(guarded("-"), "'-");
    EXPECT_EQ(guarded("-inf"), "'-inf");
}

TEST(CellGuard, LeavesNumbersAndPlainTextsAlone)
{
    for (const char* plain :
         {"", "-5", "+5.25", "-.5", "-1e-9", "a=b", "'Nantes", "'", "''", "1-2"}) {
        EXPECT_EQ(guarded(plain), plain);
        EXPECT_EQ(unguarded(plain), plain);
    }
}

TEST(CellGuard, KeepsTextsThatBeginWithTheGuardItself)
{
    EXPECT_EQ(guarded("'=1"), "''=1");
    EXPECT_EQ(unguarded("''=1"), "'=1");
    EXPECT_EQ(unguarded("'=1"), "=1");
    EXPECT_EQ(unguarded("'-5"), "'-5") << "a number is never guarded";
}

TEST(CellGuard, IsUndoneExactlyWhateverTheText)
{
    std::mt19937 random(11);
    const std::string letters = "=+-@\t\r'5.e\"\n, x";
    for (int i = 0; i < 20'000; ++i) {
        std::string text;
        for (std::size_t length = random() % 7; length > 0; --length) {
            text += letters[random() % letters.size()];
        }
        EXPECT_EQ(unguarded(guarded(text)), text);
        const auto table = csvFrom("a,b\n" + csvLine({text, "end"}));
        ASSERT_TRUE(table) << text;
        EXPECT_EQ(table->rows.at(0).at(0), text);
    }
}

} // namespace
} // namespace plumule
