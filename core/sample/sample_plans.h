#pragma once

#include "core/sample/sample_stock.h"

namespace plumule {

class Database;

// The plans of trials: a sown one's layout is that of its trays, of the others places are drawn
// among those that are free. After the trays.
void storeSamplePlans(Database& database, SampleTables& tables, const SampleStock& stock);

} // namespace plumule
