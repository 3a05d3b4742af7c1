#include "core/base/number_text.h"

#include "core/base/enum_text.h"
#include "core/base/id.h"
#include "core/base/text_reason.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>
#include <unordered_set>

namespace plumule {
namespace {

struct Reading
{
    const char* text;
    double value;
};

TEST(NumberText, ReadsPointAndCommaAsTheDecimalMark)
{
    for (const auto& [text, value] :
         {Reading{"1.234", 1.234}, Reading{"1,5", 1.5}, Reading{"0", 0}, Reading{"-2,5", -2.5},
          Reading{"+331.5", 331.5}, Reading{" 12 ", 12}, Reading{".5", 0.5}, Reading{"5.", 5},
          Reading{"0331,5", 331.5}, Reading{"1000000", 1e6}}) {
        const auto read = decimalFromText(text);
        ASSERT_TRUE(read) << text;
        EXPECT_DOUBLE_EQ(*read, value) << text;
    }
}

TEST(NumberText, RefusesWhateverCouldBeMisread)
{
    for (const char* text :
         {"",    " ",   ".",    "-",   "+",   "1.234,5", "1,234,567", "1.2.3", "1 234", "1e3",
          "12g", "g12", "0x10", "inf", "nan", "--1",     "+-1",       "1-",    "1'000", "٣"}) {
        const auto read = decimalFromText(text);
        ASSERT_FALSE(read) << text;
        EXPECT_EQ(read.error(), fail(ErrorKind::Invalid, TextReason::NotANumber, text).value());
    }
}

TEST(NumberText, DoesNotGuessWhetherACommaPartsThousandsOrDecimals)
{
    for (const char* text : {"1,234", "12,345", " 123,456 ", "-1,234", "+1,000"}) {
        const auto read = decimalFromText(text);
        ASSERT_FALSE(read) << text;
        EXPECT_EQ(read.error(),
                  fail(ErrorKind::Ambiguous, TextReason::ThousandsOrDecimals, text).value());
    }
    // No thousands are parted so: the comma stands before decimals.
    for (const auto& [text, value] :
         {Reading{"0,234", 0.234}, Reading{"01,234", 1.234}, Reading{"1234,567", 1234.567},
          Reading{"1,2345", 1.2345}, Reading{",234", 0.234}, Reading{"1,23", 1.23}}) {
        EXPECT_EQ(decimalFromText(text).value(), value) << text;
    }
}

TEST(NumberText, ReadsThousandsWhereTheDecimalMarkIsKnown)
{
    for (const auto& [text, value] :
         {Reading{"1,234", 1234}, Reading{"1,234.5", 1234.5}, Reading{"12,345,678", 12345678},
          Reading{"331.5", 331.5}, Reading{"1.234", 1.234}, Reading{"-1,000", -1000}}) {
        EXPECT_EQ(decimalFromText(text, DecimalMark::Point).value(), value) << text;
    }
    for (const auto& [text, value] :
         {Reading{"1.234", 1234}, Reading{"1.234,5", 1234.5}, Reading{"12.345.678", 12345678},
          Reading{"331,5", 331.5}, Reading{"1,234", 1.234}}) {
        EXPECT_EQ(decimalFromText(text, DecimalMark::Comma).value(), value) << text;
    }
    for (const char* text : {"1,5", "1,23,4", "1,2345", "1.2.3", "0,234", ",234", "1,,234", "1,"}) {
        EXPECT_FALSE(decimalFromText(text, DecimalMark::Point)) << text;
    }
}

TEST(NumberText, ReadsNeitherMarkBeforeThreeDigitsWhereItIsUnclear)
{
    for (const char* text : {"1,234", "1.234"}) {
        EXPECT_EQ(decimalFromText(text, DecimalMark::Unclear).error().kind, ErrorKind::Ambiguous)
            << text;
    }
    EXPECT_EQ(decimalFromText("331,5", DecimalMark::Unclear).value(), 331.5);
    EXPECT_EQ(decimalFromText("331.5", DecimalMark::Unclear).value(), 331.5);
}

TEST(NumberText, AColumnTellsItsDecimalMarkByAnyNumberThatHasOneReading)
{
    const auto markOf = [](std::vector<std::string_view> cells) {
        return decimalMarkOf(cells, DecimalMark::Unclear);
    };
    EXPECT_EQ(markOf({"1,234", "38.5"}), DecimalMark::Point);
    EXPECT_EQ(markOf({"1,234", "0.125"}), DecimalMark::Point);
    EXPECT_EQ(markOf({"1,234,567"}), DecimalMark::Point);
    EXPECT_EQ(markOf({"1,234.5"}), DecimalMark::Point);
    EXPECT_EQ(markOf({"1.234", "38,5"}), DecimalMark::Comma);
    EXPECT_EQ(markOf({"1.234,5", "12"}), DecimalMark::Comma);
    EXPECT_EQ(markOf({"1,234", "12", "", "none"}), DecimalMark::Unclear);
    EXPECT_EQ(decimalMarkOf({"1,234", "12"}, DecimalMark::Ours), DecimalMark::Ours);
    EXPECT_EQ(markOf({"38,5", "38.5"}), DecimalMark::Unclear) << "they speak against one another";
}

TEST(NumberText, ReadsWholeNumbers)
{
    EXPECT_EQ(wholeFromText("42").value(), 42);
    EXPECT_EQ(wholeFromText(" -7 ").value(), -7);
    EXPECT_EQ(wholeFromText("+7").value(), 7);
    for (const char* text :
         {"", "4.2", "4,2", "four", "4 2", "99999999999999999999", "-", "+", "+-7"}) {
        EXPECT_FALSE(wholeFromText(text)) << text;
    }
}

TEST(NumberText, TakesBlanksOffTheEndsOnly)
{
    EXPECT_EQ(trimmed("  a b \t\r\n"), "a b");
    EXPECT_EQ(trimmed(" \t"), "");
    EXPECT_EQ(trimmed(""), "");
}

enum class Fruit
{
    Apple,
    Pear
};
const char* toText(Fruit fruit)
{
    return fruit == Fruit::Apple ? "apple" : "pear";
}

TEST(EnumText, LeavesTheValueAloneWhereNoneMatches)
{
    Fruit fruit = Fruit::Pear;
    EXPECT_FALSE(matchText("Apple", std::array{Fruit::Apple, Fruit::Pear}, fruit));
    EXPECT_EQ(fruit, Fruit::Pear);
    EXPECT_TRUE(matchText("apple", std::array{Fruit::Apple, Fruit::Pear}, fruit));
    EXPECT_EQ(fruit, Fruit::Apple);
}

struct ATag;
struct BTag;
static_assert(!std::is_convertible_v<Id<ATag>, Id<BTag>>, "the key of one concept is no other's");
static_assert(!std::is_convertible_v<std::int64_t, Id<ATag>>, "a bare number is no key");

TEST(Id, ZeroIsNotStored)
{
    EXPECT_FALSE(Id<ATag>{}.isStored());
    EXPECT_TRUE(Id<ATag>{7}.isStored());
    const std::unordered_set<Id<ATag>> ids{{1}, {2}, {1}};
    EXPECT_EQ(ids.size(), 2U);
}

// Seed 5: a number written with a point, with or without its thousands parted, is read back to its
// last digit.
TEST(NumberText, ReadsBackWhatIsWrittenWithAPoint)
{
    std::mt19937 draw(5);
    for (int round = 0; round < 2000; ++round) {
        const long long whole = static_cast<long long>(draw() % 3'000'000) - 1'500'000;
        const std::string decimals = std::to_string(100 + draw() % 900);
        const std::string plain = std::to_string(whole) + "." + decimals;
        EXPECT_DOUBLE_EQ(decimalFromText(plain).value(), std::stod(plain)) << plain;
        EXPECT_EQ(wholeFromText(std::to_string(whole)), whole);
        std::string parted = std::to_string(whole);
        const std::size_t first = whole < 0 ? 1 : 0;
        for (std::size_t at = parted.size(); at > first + 3;) {
            at -= 3;
            parted.insert(at, ",");
        }
        EXPECT_DOUBLE_EQ(decimalFromText(parted + "." + decimals, DecimalMark::Point).value(),
                         std::stod(plain))
            << parted;
    }
}

// Seed 6: whatever else is typed is refused with itself, or is a finite number.
TEST(NumberText, ReadsOrRefusesAnyText)
{
    std::mt19937 draw(6);
    static const std::string kPieces[] = {"0", "9", "1234", ".", ",",   "-",
                                          "+", " ", "e",    "x", "nan", "∞"};
    for (int round = 0; round < 5000; ++round) {
        std::string text;
        for (auto i = draw() % 6; i > 0; --i) {
            text += kPieces[draw() % std::size(kPieces)];
        }
        for (const DecimalMark mark :
             {DecimalMark::Ours, DecimalMark::Point, DecimalMark::Comma, DecimalMark::Unclear}) {
            const auto number = decimalFromText(text, mark);
            if (number) {
                EXPECT_TRUE(std::isfinite(*number)) << text;
                EXPECT_EQ(text.find_first_of("ex"), std::string::npos) << text;
            } else {
                EXPECT_EQ(number.error().values, std::vector<std::string>{text});
            }
        }
    }
}

} // namespace
} // namespace plumule
