#pragma once

#include "core/base/result.h"
#include "core/trial/trial_plan.h"

namespace plumule {

inline constexpr int kMostTraysInATrial = 500;

// What checkDraft() finds in the plan alone, whatever its trial is called.
[[nodiscard]] Done checkDesign(const TrialDraft& draft);

} // namespace plumule
