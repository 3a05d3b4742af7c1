#pragma once

#include "core/merge/merge_plan.h"

#include <QString>

#include <vector>

namespace plumule::ui {

// How many acts of a kind were done on both sides since, and how many of their rows met.
struct ActsRow
{
    QString kind;
    int here = 0;
    int there = 0;
    int met = 0;
};
// Kinds without any are left out; the last row is of all together.
[[nodiscard]] std::vector<ActsRow> actsOf(const MergePlan& plan);

} // namespace plumule::ui
