#pragma once

#include "core/base/result.h"
#include "core/trial/trial.h"

#include <vector>

namespace plumule {

// Missing name; Invalid margin (0 or less). The code may be empty: it is given when stored.
[[nodiscard]] Done checkTrial(const Trial& trial);

// "T" and the number after the highest one in use, in whatever letter case: T1, T2 …
[[nodiscard]] std::string nextTrialCode(const std::vector<std::string>& used);

} // namespace plumule
