#pragma once

#include "core/tray/tray.h"

#include <vector>

namespace plumule {

// The ids of the records, in their order.
[[nodiscard]] std::vector<TrayId> idsOf(const std::vector<TrayRecord>& records);

} // namespace plumule
