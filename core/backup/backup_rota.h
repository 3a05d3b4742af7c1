#pragma once

#include "core/base/date.h"

#include <vector>

namespace plumule {

inline constexpr int kDailyBackups = 14;
inline constexpr int kWeeklyBackups = 8;
inline constexpr int kMonthlyBackups = 12;

// Of these backups those that stay: the newest of each of the last 14 days that have any, of each
// of the last 8 weeks (from Monday) and of each of the last 12 months. Days without work count for
// nothing, so that a room that stood empty all winter keeps what it had. Newest first.
[[nodiscard]] std::vector<Moment> backupsToKeep(std::vector<Moment> all);

} // namespace plumule
