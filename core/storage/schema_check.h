#pragma once

#include "core/storage/database.h"
#include "core/storage/schema_reason.h"

namespace plumule {

// Compares the journal's schema with the one that its migrations make. A trigger or a view would
// run when a file from elsewhere is only read; a table that is not strict, or a generated column,
// holds what core doesn't expect. Damaged with a SchemaReason for the first difference by name.
[[nodiscard]] Done checkSchema(Database& database);

} // namespace plumule
