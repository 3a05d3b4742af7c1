#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace plumule {

// Where the first byte stands that is no UTF-8 (RFC 3629: no overlong form, no half of a surrogate
// pair, nothing beyond U+10FFFF), or that is null; none where all is well.
[[nodiscard]] std::optional<std::size_t> firstNotUtf8(std::string_view text);

} // namespace plumule
