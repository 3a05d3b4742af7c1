#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace plumule {

// A to Z small, anything else as it is: text of any script keeps its bytes.
[[nodiscard]] constexpr char lowered(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

[[nodiscard]] inline std::string lowered(std::string_view text)
{
    std::string small(text);
    for (char& letter : small) {
        letter = lowered(letter);
    }
    return small;
}

// Whatever the case of A to Z.
[[nodiscard]] inline bool isAlike(std::string_view a, std::string_view b)
{
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return lowered(x) == lowered(y); });
}

} // namespace plumule
