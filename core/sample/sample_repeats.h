#pragma once

#include "core/sample/sample_stock.h"

namespace plumule {

class Database;

// Repeating sowings, none of whose days were answered.
void storeSampleRepeats(Database& database, SampleTables& tables, const SampleStock& stock);

} // namespace plumule
