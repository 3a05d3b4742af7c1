#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace plumule {

// Reads a plain decimal number: optional sign, digits, at most one decimal mark (point or comma),
// digits. No groups, no exponent, no other text but surrounding blanks. Invalid otherwise, with
// the text as the error's value.
[[nodiscard]] Result<double> decimalFromText(std::string_view text);

// Reads an optionally signed whole number.
[[nodiscard]] Result<long long> wholeFromText(std::string_view text);

// The text without blanks at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text);

} // namespace plumule
