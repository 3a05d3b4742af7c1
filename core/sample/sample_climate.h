#pragma once

#include "core/sample/sample_stock.h"

namespace plumule {

// What the loggers wrote down: for each row of the table the day's hours up to now, coolest at five
// in the morning and warmest twelve hours later, lamps on from six for as long as the first
// shelf's.
void storeSampleClimate(Database& database, SampleTables& tables, const SampleStock& stock);

} // namespace plumule
