#pragma once

#include <vector>

namespace plumule {

// One numbered step of the journal's schema. Never edited once released.
struct Migration
{
    int version = 0;      // the schema it leads to
    const char* sql = ""; // statements, run in one transaction
};

// All steps, ascending by version from 1.
[[nodiscard]] const std::vector<Migration>& migrations();

} // namespace plumule
