#pragma once

#include "core/base/date.h"

#include <string>

namespace plumule {

// "2026-03-12 07:05", as errors carry a moment.
[[nodiscard]] std::string textOf(Moment moment);

} // namespace plumule
