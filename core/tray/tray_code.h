#pragma once

#include <string>

namespace plumule {

// A longer number is none that was counted up to.
inline constexpr int kMostCodeDigits = 8;

// A variety's prefix and the number, three digits or more.
[[nodiscard]] std::string codeOf(const std::string& prefix, int number);

} // namespace plumule
