#pragma once

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace plumule {

// The compiler's name of a value of an enum class; empty where it is none of its enumerators.
template <auto Value>
constexpr std::string_view enumeratorName()
{
    // GCC and Clang write "... Value = plumule::TrayReason::Seed; ..." of an enumerator, and
    // "(plumule::TrayReason)99" of what is none.
    std::string_view text = __PRETTY_FUNCTION__;
    text.remove_prefix(text.find("Value = ") + std::string_view("Value = ").size());
    text = text.substr(0, text.find_first_of(";]"));
    if (text.starts_with('(')) {
        return {};
    }
    const auto scope = text.rfind("::", text.rfind("::") - 1);
    return scope == std::string_view::npos ? text : text.substr(scope + 2);
}

// Every enumerator of an enum class that counts from 0 without a gap, with its name
// ("TrayReason::Seed").
template <class Enum>
std::vector<std::pair<Enum, std::string>> enumeratorsOf()
{
    constexpr int kMost = 128;
    std::vector<std::pair<Enum, std::string>> all;
    [&]<int... Codes>(std::integer_sequence<int, Codes...>)
    {
        const std::array<std::string_view, kMost> names{
            enumeratorName<static_cast<Enum>(Codes)>()...};
        for (int code = 0; code < kMost && !names[static_cast<std::size_t>(code)].empty(); ++code) {
            all.emplace_back(static_cast<Enum>(code), names[static_cast<std::size_t>(code)]);
        }
    }
    (std::make_integer_sequence<int, kMost>());
    return all;
}

} // namespace plumule
