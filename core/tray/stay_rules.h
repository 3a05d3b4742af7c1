#pragma once

#include "core/base/result.h"
#include "core/tray/tray.h"

#include <optional>

namespace plumule {

// Whether a tray that stands there may be ended at that moment. EndBeforeStay where it came to its
// place later.
[[nodiscard]] Done checkEnd(const std::optional<Stay>& open, Moment at);

} // namespace plumule
