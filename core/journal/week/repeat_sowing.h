#pragma once

#include "core/base/result.h"
#include "core/tray/tray.h"
#include "core/week/repeat.h"

namespace plumule {

class Database;

// What is sown for one day of a repeating sowing, as WeekEntries::sow() tells.
[[nodiscard]] Result<SowingDraft> draftFor(Database& database, const Repeat& repeat, Moment now);

} // namespace plumule
