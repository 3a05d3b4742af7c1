#pragma once

#include "core/review/answer/season_answer.h"
#include "ui/review/report_parts.h"

namespace plumule::ui {

// What a season's report asks for.
[[nodiscard]] SeasonQuestion reportQuestion(const SeasonFilter& filter);

// From the answer to reportQuestion(). A part that could not be worked out says so in its place.
[[nodiscard]] Report seasonReport(const SeasonAnswer& answer);

} // namespace plumule::ui
