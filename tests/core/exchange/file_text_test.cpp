#include "core/exchange/file_text.h"

#include "core/exchange/exchange_reason.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

using namespace std::string_literals;

const std::string kText = "name,price\nKüche,5 €\n\xF0\x9F\x8C\xB1,1\n"; // the last is U+1F331

std::string utf16(const std::u16string& text, bool isBig)
{
    std::string bytes;
    for (const char16_t unit : text) {
        const char high = static_cast<char>(unit >> 8);
        const char low = static_cast<char>(unit & 0xFF);
        bytes += isBig ? high : low;
        bytes += isBig ? low : high;
    }
    return bytes;
}

const std::u16string kWide = u"name,price\nK\u00FCche,5 \u20AC\n\U0001F331,1\n";

TEST(FileText, ReadsEveryEncodingAsTheSameText)
{
    const std::pair<std::string, TextEncoding> files[] = {
        {kText, TextEncoding::Utf8},
        {"\xEF\xBB\xBF" + kText, TextEncoding::Utf8},
        {utf16(kWide, false), TextEncoding::Utf16Little},
        {"\xFF\xFE" + utf16(kWide, false), TextEncoding::Utf16Little},
        {utf16(kWide, true), TextEncoding::Utf16Big},
        {"\xFE\xFF" + utf16(kWide, true), TextEncoding::Utf16Big},
    };
    for (const auto& [bytes, encoding] : files) {
        EXPECT_EQ(encodingOf(bytes), encoding);
        EXPECT_EQ(utf8From(bytes, encoding).value(), kText) << toText(encoding);
    }
}

TEST(FileText, ReadsLatin1WithTheLettersOfWindows)
{
    const std::string bytes = "K\xFC"
                              "che;5 \x80\n";
    EXPECT_EQ(encodingOf(bytes), TextEncoding::Latin1);
    EXPECT_EQ(utf8From(bytes, TextEncoding::Latin1).value(), "Küche;5 €\n");
}

TEST(FileText, SaysInWhichLineAnEncodingDoesNotFit)
{
    const auto cut = utf8From(utf16(kWide, false) + "x", TextEncoding::Utf16Little);
    ASSERT_FALSE(cut);
    EXPECT_TRUE(cut.error().is(ExchangeReason::NotEncoded));
    EXPECT_EQ(cut.error().row->number, 4);
    EXPECT_FALSE(utf8From("a\0\0\xD8"s, TextEncoding::Utf16Little)) << "half a pair";
    const auto unassigned = utf8From("a\nb\x81", TextEncoding::Latin1);
    ASSERT_FALSE(unassigned);
    EXPECT_EQ(unassigned.error().row->number, 2);
}

TEST(FileText, AnswersToAnyBytes)
{
    std::mt19937 random(3);
    for (int i = 0; i < 2'000; ++i) {
        std::string bytes;
        for (std::size_t length = random() % 40; length > 0; --length) {
            bytes += static_cast<char>(random() % (i % 2 == 0 ? 256 : 4));
        }
        for (const TextEncoding encoding :
             {TextEncoding::Utf8, TextEncoding::Utf16Little, TextEncoding::Utf16Big,
              TextEncoding::Latin1, encodingOf(bytes)}) {
            (void)utf8From(bytes, encoding);
            TextEncoding again{};
            EXPECT_TRUE(fromText(toText(encoding), again));
            EXPECT_EQ(again, encoding);
        }
    }
}

} // namespace
} // namespace plumule
