#pragma once

#include "core/variety/variety.h"

#include <vector>

namespace plumule {

// The varieties a new journal begins with, none of them stored yet. Each variety's source says
// where its figures come from; "from memory" where nobody read them.
[[nodiscard]] std::vector<Protocol> starterVarieties();

} // namespace plumule
