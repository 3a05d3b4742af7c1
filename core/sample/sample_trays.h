#pragma once

#include "core/base/progress.h"
#include "core/sample/sample_stock.h"

namespace plumule {

// The trays with all that is written down about them but their waterings.
void storeSampleTrays(Database& database, SampleTables& tables, const SampleStock& stock);

// Every watering that a round before the present one asked for, but for the misses listed; and
// those of the present round on the first shelf that it comes to.
void storeSampleWaterings(Database& database, SampleTables& tables, const SampleStock& stock,
                          const Progress& progress);

} // namespace plumule
