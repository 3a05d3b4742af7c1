#pragma once

#include "ui/page/page.h"

#include <functional>

namespace plumule::ui {

// Asks for a file and calls `write` with its path; says that it was saved, or where `write` gives
// false that it can't be written.
void saveAs(QWidget* parent, const Services& services, const QString& title, const QString& preset,
            const QString& filter, std::function<bool(const QString& path)> write);

} // namespace plumule::ui
