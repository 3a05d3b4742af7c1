#pragma once

#include "ui/page/page.h"

#include <functional>

namespace plumule::ui {

// Asks for a file and calls `write` with its path; says that it was saved, or why it was not.
void saveAs(QWidget* parent, const Services& services, const QString& title, const QString& preset,
            const QString& filter, std::function<Done(const QString& path)> write);

} // namespace plumule::ui
