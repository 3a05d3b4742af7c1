#pragma once

#include "core/review/answer/season_answer.h"

#include <QStringList>

namespace plumule::ui {

// "Steel mesh pays back against coir mix at use 16 (95% interval 12 to 24).", one for each.
[[nodiscard]] QStringList paybackWords(const std::vector<Payback>& paybacks);
// "Steel mesh has no curve. There is no price of washing."
[[nodiscard]] QStringList paybackWords(const std::vector<CurveLack>& lacks);
// Both, for a season's answer.
[[nodiscard]] QStringList paybackWords(const SeasonAnswer& answer);

} // namespace plumule::ui
