#pragma once

#include <set>
#include <string>

namespace plumule {

// A to Z for a to z; other letters stay.
[[nodiscard]] std::string upperCase(std::string text);

// Two letters of the name that no variety has; else any that none has. `taken` in upper case.
[[nodiscard]] std::string freePrefix(const std::set<std::string>& taken, const std::string& name);

} // namespace plumule
