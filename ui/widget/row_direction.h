#pragma once

#include <QBoxLayout>

namespace plumule::ui {

// Beside each other; in large type, where there is no room for that, below one another.
[[nodiscard]] QBoxLayout::Direction rowDirection();

} // namespace plumule::ui
