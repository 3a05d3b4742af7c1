#include "core/exchange/file_text.h"

#include "core/base/enum_text.h"
#include "core/base/utf8.h"
#include "core/exchange/row_fault.h"

#include <array>
#include <optional>

namespace plumule {
namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";
constexpr std::string_view kLittleMark = "\xFF\xFE";
constexpr std::string_view kBigMark = "\xFE\xFF";

// The letters at 0x80 to 0x9F of windows-1252; 0: none. Source: the index of the WHATWG Encoding
// Standard.
constexpr std::array<char32_t, 32> kWindowsLetters = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

void append(std::string& text, char32_t letter)
{
    const auto put = [&text](char32_t byte) { text += static_cast<char>(byte); };
    if (letter < 0x80) {
        put(letter);
    } else if (letter < 0x800) {
        put(0xC0 | (letter >> 6));
        put(0x80 | (letter & 0x3F));
    } else if (letter < 0x10000) {
        put(0xE0 | (letter >> 12));
        put(0x80 | ((letter >> 6) & 0x3F));
        put(0x80 | (letter & 0x3F));
    } else {
        put(0xF0 | (letter >> 18));
        put(0x80 | ((letter >> 12) & 0x3F));
        put(0x80 | ((letter >> 6) & 0x3F));
        put(0x80 | (letter & 0x3F));
    }
}

tl::unexpected<Error> notEncoded(const std::string& textBefore, TextEncoding encoding)
{
    int line = 1;
    for (const char c : textBefore) {
        line += c == '\n' ? 1 : 0;
    }
    return faultAt("", line, ErrorKind::Invalid, ExchangeReason::NotEncoded,
                   std::string(toText(encoding)));
}

Result<std::string> fromLatin1(const std::string& bytes)
{
    std::string text;
    text.reserve(bytes.size() + bytes.size() / 16);
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        const bool isWindows = byte >= 0x80 && byte < 0xA0;
        const char32_t letter = isWindows ? kWindowsLetters[byte - 0x80U] : byte;
        if (isWindows && letter == 0) {
            return notEncoded(text, TextEncoding::Latin1);
        }
        append(text, letter);
    }
    return text;
}

char32_t unitAt(std::string_view bytes, std::size_t at, TextEncoding encoding)
{
    const auto first = static_cast<unsigned char>(bytes[at]);
    const auto second = static_cast<unsigned char>(bytes[at + 1]);
    return encoding == TextEncoding::Utf16Little ? char32_t{second} << 8 | first
                                                 : char32_t{first} << 8 | second;
}

Result<std::string> fromUtf16(std::string_view bytes, TextEncoding encoding)
{
    std::string text;
    text.reserve(bytes.size() / 2 + bytes.size() / 16);
    std::size_t at = 0;
    while (at + 1 < bytes.size()) {
        char32_t letter = unitAt(bytes, at, encoding);
        at += 2;
        if (letter >= 0xD800 && letter < 0xDC00 && at + 1 < bytes.size()) {
            const char32_t low = unitAt(bytes, at, encoding);
            if (low >= 0xDC00 && low < 0xE000) {
                letter = 0x10000 + ((letter - 0xD800) << 10) + (low - 0xDC00);
                at += 2;
            }
        }
        if (letter >= 0xD800 && letter < 0xE000) {
            return notEncoded(text, encoding);
        }
        append(text, letter);
    }
    return at == bytes.size() ? Result<std::string>(std::move(text)) : notEncoded(text, encoding);
}

} // namespace

const char* toText(TextEncoding encoding)
{
    switch (encoding) {
    case TextEncoding::Utf8:
        return "utf-8";
    case TextEncoding::Utf16Little:
        return "utf-16le";
    case TextEncoding::Utf16Big:
        return "utf-16be";
    case TextEncoding::Latin1:
        return "latin-1";
    }
    return "";
}

bool fromText(std::string_view text, TextEncoding& encoding)
{
    static constexpr std::array kEncodings = {TextEncoding::Utf8, TextEncoding::Utf16Little,
                                              TextEncoding::Utf16Big, TextEncoding::Latin1};
    return matchText(text, kEncodings, encoding);
}

TextEncoding encodingOf(std::string_view bytes)
{
    if (bytes.starts_with(kUtf8Mark)) {
        return TextEncoding::Utf8;
    }
    if (bytes.starts_with(kLittleMark) || bytes.starts_with(kBigMark)) {
        return bytes.starts_with(kBigMark) ? TextEncoding::Utf16Big : TextEncoding::Utf16Little;
    }
    if (!firstNotUtf8(bytes)) {
        return TextEncoding::Utf8;
    }
    std::array<std::size_t, 2> nulls{};
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        nulls[at % 2] += bytes[at] == '\0' ? 1 : 0;
    }
    if (nulls[0] == nulls[1]) {
        return nulls[0] == 0 ? TextEncoding::Latin1 : TextEncoding::Utf8;
    }
    return nulls[1] > nulls[0] ? TextEncoding::Utf16Little : TextEncoding::Utf16Big;
}

Result<std::string> utf8From(std::string bytes, TextEncoding encoding)
{
    const std::string_view view = bytes;
    switch (encoding) {
    case TextEncoding::Utf8:
        if (view.starts_with(kUtf8Mark)) {
            bytes.erase(0, kUtf8Mark.size());
        }
        return bytes;
    case TextEncoding::Utf16Little:
        return fromUtf16(view.substr(view.starts_with(kLittleMark) ? 2 : 0), encoding);
    case TextEncoding::Utf16Big:
        return fromUtf16(view.substr(view.starts_with(kBigMark) ? 2 : 0), encoding);
    case TextEncoding::Latin1:
        return fromLatin1(bytes);
    }
    return bytes;
}

} // namespace plumule
