#pragma once

#include "ui/page/page.h"

namespace plumule::ui {

// Asks for the copy's name and file, and writes the journal with its photographs there: a copy to
// work in elsewhere and to bring back.
void takeCopyAlong(Journal& journal, const Services& services, QWidget* parent);

} // namespace plumule::ui
