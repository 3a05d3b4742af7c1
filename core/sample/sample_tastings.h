#pragma once

#include "core/sample/sample_stock.h"

namespace plumule {

// The demo's tastings, their orders and codes drawn from the number in the table.
void storeSampleTastings(Database& database, SampleTables& tables, const SampleStock& stock);

} // namespace plumule
