#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace plumule {

// Why a text is no count.
enum class NoCount
{
    NotANumber, // or beyond 64 bits
    TooFine     // it has a part of a count
};

// A count of 10^-decimals as a decimal number, without zeros at its end: (1500, 3) is "1.5".
[[nodiscard]] std::string decimalText(std::int64_t count, int decimals);

// Exactly back: an optional minus, digits, and a point with digits. Nothing is rounded.
[[nodiscard]] tl::expected<std::int64_t, NoCount> countFromDecimal(std::string_view text,
                                                                   int decimals);

} // namespace plumule
