#pragma once

#include "core/review/season/payback.h"

#include <QStringList>

namespace plumule::ui {

// "Steel mesh pays back against coir mix at use 16 (95% interval 12 to 24).", one for each.
[[nodiscard]] QStringList paybackWords(const std::vector<Payback>& paybacks);

} // namespace plumule::ui
