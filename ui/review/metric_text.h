#pragma once

#include "core/review/facts/response.h"

#include <QString>

namespace plumule::ui {

// "Yield g/tray", "Cost per gram": as the buttons and lists have it.
[[nodiscard]] QString metricName(Response response);

} // namespace plumule::ui
