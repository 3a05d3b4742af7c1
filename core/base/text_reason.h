#pragma once

#include <string_view>

namespace plumule {

// What a text was meant to be and is not. Its value is the text.
enum class TextReason
{
    NotANumber,
    NotAWholeNumber,
    ThousandsOrDecimals, // 1,234 may be either
    NotADate,            // year, month and day: 2026-03-12
    NotATime,            // 06:50
};

constexpr std::string_view familyOf(TextReason)
{
    return "text";
}

} // namespace plumule
