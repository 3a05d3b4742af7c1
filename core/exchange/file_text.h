#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace plumule {

// How a table's file writes its letters. A mark at the file's start is part of none.
enum class TextEncoding
{
    Utf8,
    Utf16Little,
    Utf16Big,
    Latin1 // with Windows' letters at 0x80 to 0x9F, as the WHATWG Encoding Standard reads it
};
// utf-8, utf-16le, utf-16be, latin-1
[[nodiscard]] const char* toText(TextEncoding encoding);
bool fromText(std::string_view text, TextEncoding& encoding);

// What the whole file speaks for: its mark; else UTF-8 where every byte fits it; else UTF-16 where
// it holds nulls, more of them in one half of its pairs; else Latin-1.
[[nodiscard]] TextEncoding encodingOf(std::string_view bytes);

// The bytes as UTF-8 without a mark; UTF-8 itself is not copied, and not looked at. Invalid
// NotEncoded, with the line and the encoding's name, for half a pair of UTF-16; of Latin-1 for one
// of the five bytes without a letter.
[[nodiscard]] Result<std::string> utf8From(std::string bytes, TextEncoding encoding);

} // namespace plumule
