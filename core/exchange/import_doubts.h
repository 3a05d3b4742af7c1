#pragma once

#include "core/exchange/tray_import.h"

namespace plumule {

// What looks wrong in a row that could be imported, and against what: a slipped decimal point and a
// wrong year read as well as any other number. Rows without net or seed are not judged by weight.
// The journal's own past is not asked: a table is often the first thing in it.
//
// WeightOfOthers: five times lighter or heavier than the median per gram of seed of the file's
// other trays of that variety, where there are three or more (by net alone where a seed is
// missing). WeightOfSeed: else under 0.2 or over 60 g per gram of seed. LongGrowth: cut more than
// 60 days after sowing. The three bounds are wider than any crop that is cut as a microgreen, from
// memory.
[[nodiscard]] std::vector<ImportDoubt> doubtsAbout(const std::vector<ImportedTray>& trays);

} // namespace plumule
