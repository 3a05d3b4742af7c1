#include "core/exchange/decimal_text.h"

#include <gtest/gtest.h>
#include <limits>

namespace plumule {
namespace {

TEST(DecimalText, WritesCountsExactly)
{
    EXPECT_EQ(decimalText(1500, 3), "1.5");
    EXPECT_EQ(decimalText(1, 3), "0.001");
    EXPECT_EQ(decimalText(-1, 3), "-0.001");
    EXPECT_EQ(decimalText(0, 3), "0");
    EXPECT_EQ(decimalText(-120'000, 3), "-120");
    EXPECT_EQ(decimalText(12'345, 4), "1.2345");
    EXPECT_EQ(decimalText(7, 0), "7");
}

TEST(DecimalText, ReadsThemBackExactly)
{
    for (const std::int64_t count :
         {std::int64_t{0}, std::int64_t{1}, std::int64_t{-1}, std::int64_t{999'999'999'999'999},
          std::int64_t{-1'234'567}, std::numeric_limits<std::int64_t>::max(),
          std::numeric_limits<std::int64_t>::min()}) {
        EXPECT_EQ(countFromDecimal(decimalText(count, 3), 3), count);
        EXPECT_EQ(countFromDecimal(decimalText(count, 4), 4), count);
    }
    EXPECT_EQ(countFromDecimal("1.500", 3), 1500);
    EXPECT_EQ(countFromDecimal("1.5000", 3), 1500);
}

TEST(DecimalText, RoundsNothing)
{
    EXPECT_EQ(countFromDecimal("0.0005", 3).error(), NoCount::TooFine);
    EXPECT_EQ(countFromDecimal("12.34567", 4).error(), NoCount::TooFine);
}

TEST(DecimalText, RefusesWhatIsNoNumber)
{
    for (const char* text : {"", "-", ".", "1.", ".5", "1,5", "1e3", " 1", "+1", "0x1", "--1",
                             "99999999999999999999", "nan"}) {
        EXPECT_EQ(countFromDecimal(text, 3).error(), NoCount::NotANumber) << text;
    }
}

} // namespace
} // namespace plumule
