#pragma once

#include "core/review/model/comparison_columns.h"
#include "core/stats/model/model_design.h"

namespace plumule {

// Where each part stands; what does not vary is not in it.
using ModelPlan = std::map<ModelPart, TermPlace>;

[[nodiscard]] const char* columnOf(ModelPart part);
[[nodiscard]] int levelsOf(const ComparisonColumns& columns, ModelPart part); // 0: a covariate

// The fullest model the trays allow, and why parts that vary are not in it.
struct PlannedModel
{
    ModelPlan plan;
    std::map<ModelPart, WhyLeftOut> leftOut;
};
[[nodiscard]] PlannedModel planModel(const ComparisonColumns& columns);

[[nodiscard]] stats::ModelDescription describe(const ModelPlan& plan);

} // namespace plumule
