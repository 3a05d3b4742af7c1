#pragma once

#include "core/sample/sample_stock.h"

namespace plumule {

void storeSampleOrders(Database& database, SampleTables& tables, const SampleStock& stock);

} // namespace plumule
