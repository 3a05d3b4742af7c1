#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace plumule::ui {

// A text that stands for a key, marked by QT_TRANSLATE_NOOP.
struct KeyText
{
    const char* key;
    const char* text;
};

// The key's text, to be translated in its context; nullptr where it has none.
template <std::size_t Count>
[[nodiscard]] const char* textOf(const std::array<KeyText, Count>& texts, std::string_view key)
{
    const auto found = std::find_if(texts.begin(), texts.end(),
                                    [key](const KeyText& each) { return each.key == key; });
    return found == texts.end() ? nullptr : found->text;
}

} // namespace plumule::ui
