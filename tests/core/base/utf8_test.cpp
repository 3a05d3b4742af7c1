#include "core/base/utf8.h"

#include <gtest/gtest.h>
#include <random>
#include <string>

namespace plumule {
namespace {

// RFC 3629, section 3, written anew from its table of code points.
std::string encoded(unsigned code)
{
    const auto tail = [&](unsigned shift) {
        return static_cast<char>(0x80U | ((code >> shift) & 0x3FU));
    };
    if (code < 0x80) {
        return {static_cast<char>(code)};
    }
    if (code < 0x800) {
        return {static_cast<char>(0xC0U | (code >> 6U)), tail(0)};
    }
    if (code < 0x10000) {
        return {static_cast<char>(0xE0U | (code >> 12U)), tail(6), tail(0)};
    }
    return {static_cast<char>(0xF0U | (code >> 18U)), tail(12), tail(6), tail(0)};
}

bool isCharacter(unsigned code)
{
    return code != 0 && code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
}

TEST(Utf8, TakesEveryCharacterAndNoOther)
{
    for (unsigned code = 0; code <= 0x1FFFFF; ++code) {
        ASSERT_EQ(!firstNotUtf8(encoded(code)).has_value(), isCharacter(code)) << code;
    }
}

TEST(Utf8, TakesNoCharacterCutShort)
{
    for (const unsigned code : {0xE9U, 0x20ACU, 0x1F331U}) {
        const std::string whole = encoded(code);
        for (std::size_t kept = 1; kept < whole.size(); ++kept) {
            EXPECT_EQ(firstNotUtf8("ab" + whole.substr(0, kept)), 2U) << code;
            EXPECT_EQ(firstNotUtf8(whole.substr(0, kept) + "cd"), 0U) << code;
            EXPECT_EQ(firstNotUtf8(whole.substr(kept)), 0U) << "a tail alone";
        }
    }
}

// RFC 3629, section 10: an overlong form is another way to write a character that a check forbids.
TEST(Utf8, TakesNoOverlongForm)
{
    for (const std::string overlong :
         {"\xC0\xAF", "\xC1\xBF", "\xE0\x80\xAF", "\xE0\x9F\xBF", "\xF0\x80\x80\xAF",
          "\xF0\x8F\xBF\xBF", "\xF8\x88\x80\x80\x80", "\xFC\x84\x80\x80\x80\x80", "\xFE", "\xFF"}) {
        EXPECT_EQ(firstNotUtf8("seed" + overlong), 4U);
    }
    EXPECT_EQ(firstNotUtf8(std::string("\xC0\x80", 2)), 0U) << "null, overlong";
}

TEST(Utf8, SaysWhereItEnds)
{
    EXPECT_FALSE(firstNotUtf8(""));
    EXPECT_FALSE(firstNotUtf8("Grünkohl, 12 °C – 🌱"));
    EXPECT_EQ(firstNotUtf8(std::string("ab\0cd", 5)), 2U);
    EXPECT_EQ(firstNotUtf8("Gr\xFCnkohl"), 2U) << "Latin 1";
    EXPECT_EQ(firstNotUtf8("\xEF\xBB\xBFok"), std::nullopt)
        << "a mark of byte order is a character";
    EXPECT_EQ(firstNotUtf8("\xFF\xFEo\0k\0"), 0U) << "UTF-16";
}

// Seed 3629: in front of the byte that is told all is well, and from it on it is not.
TEST(Utf8, TellsTheFirstOfAnyBytes)
{
    std::mt19937 draw(3629);
    for (int round = 0; round < 5000; ++round) {
        std::string bytes;
        for (auto i = draw() % 12; i > 0; --i) {
            bytes += draw() % 3 == 0 ? encoded(static_cast<unsigned>(1 + draw() % 0xD7FF))
                                     : std::string(1, static_cast<char>(draw() % 256));
        }
        const auto stray = firstNotUtf8(bytes);
        const std::size_t end = stray.value_or(bytes.size());
        EXPECT_FALSE(firstNotUtf8(bytes.substr(0, end)));
        EXPECT_TRUE(!stray || firstNotUtf8(bytes.substr(end)) == 0U);
    }
}

} // namespace
} // namespace plumule
