#pragma once

#include "core/stats/verdict/media_answer.h"

#include <nlohmann/json.hpp>

namespace plumule::stats::verdicts {

// verdict_cases.json beside the references, read once; the case of that name.
[[nodiscard]] const nlohmann::json& verdictCase(const std::string& name);

// The input's rows as trays: trial, block, variety, medium by letter or number; grams. Rows of
// `mean_log` are trays of that logarithm.
[[nodiscard]] std::vector<SownTray> traysOf(const nlohmann::json& input);

// "A" is 0, "V1" is 0, as the cases name media and varieties.
[[nodiscard]] std::size_t numberOf(const std::string& name);

[[nodiscard]] std::string nameOf(Verdict verdict);

} // namespace plumule::stats::verdicts
