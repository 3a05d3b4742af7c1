#pragma once

#include "tests/core/stats/reference_cases.h"

#include <string>
#include <vector>

// The rank tests of a case, for every handler that meets them.
namespace plumule::stats::reference {

// "/kruskal" of a one-way case.
void coverKruskal(CaseCheck& check, const Grouped& groups);
// "/dunn" of a one-way case: mean ranks and pairs, raw, Holm's and Bonferroni's p.
void coverDunn(CaseCheck& check, const Grouped& groups);
// A Wilcoxon rank sum at the pointer; U counts for y.
void coverRankSum(CaseCheck& check, const std::string& pointer, const std::vector<double>& y,
                  const std::vector<double>& x);
// A Wilcoxon signed rank of the differences at the pointer.
void coverSignedRank(CaseCheck& check, const std::string& pointer,
                     const std::vector<double>& differences);

} // namespace plumule::stats::reference
