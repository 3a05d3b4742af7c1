#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// Which mark stands before the decimals, as far as it is known where the number comes from.
enum class DecimalMark
{
    Ours,   // the point, as Plumule writes; a comma too where it can be nothing else
    Point,  // commas part thousands
    Comma,  // points part thousands
    Unclear // either; what could be a thousand's mark too is not read
};

// Reads a plain decimal number: optional sign, digits, at most one decimal mark, digits; thousands
// parted only where the mark of the source is known (Point, Comma). No exponent, no other text but
// surrounding blanks. Ambiguous where a mark may part thousands or decimals ("1,234"), Invalid
// otherwise, with the text as the error's value.
[[nodiscard]] Result<double> decimalFromText(std::string_view text,
                                             DecimalMark mark = DecimalMark::Ours);

// The decimal mark that the numbers of one column give away ("38,5" or "1.234,5": the comma).
// `otherwise` where none of them does, Unclear where they speak against one another.
[[nodiscard]] DecimalMark decimalMarkOf(const std::vector<std::string_view>& column,
                                        DecimalMark otherwise);

// Reads an optionally signed whole number.
[[nodiscard]] Result<long long> wholeFromText(std::string_view text);

// The text without blanks at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text);

} // namespace plumule
