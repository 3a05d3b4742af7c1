#pragma once

#include "core/tray/tray.h"

#include <vector>

namespace plumule {

// The ids as a JSON list: one bound text for any number of them, read by json_each(), so that a
// statement stays the same and is kept.
[[nodiscard]] std::string idList(const std::vector<TrayId>& trays);

// The ids of the records, in their order.
[[nodiscard]] std::vector<TrayId> idsOf(const std::vector<TrayRecord>& records);

} // namespace plumule
