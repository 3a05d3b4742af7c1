#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace plumule {

// Sets `value` to the one of `values` whose toText() is `text`; false, and `value` untouched, when
// there is none.
template <class Enum, std::size_t count>
bool matchText(std::string_view text, const std::array<Enum, count>& values, Enum& value)
{
    for (const Enum candidate : values) {
        if (text == toText(candidate)) {
            value = candidate;
            return true;
        }
    }
    return false;
}

} // namespace plumule
