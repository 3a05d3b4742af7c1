#pragma once

#include "core/storage/rescue.h"

#include <QStringList>

namespace plumule::app {

// What stands in for a lost variety or medium is called so, followed by its number: "Lost".
[[nodiscard]] QString nameOfLost();

// What a rescue came to, a line each: what was saved, then what was not.
[[nodiscard]] QStringList rescueWords(const RescueReport& report);

} // namespace plumule::app
