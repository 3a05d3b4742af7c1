#pragma once

class QApplication;

namespace plumule::ui {

// From now on the wheel scrolls what a drop-down or a field of numbers stands in, and never turns
// its value: one that is scrolled past would change without a word.
void keepValuesFromTheWheel(QApplication& application);

} // namespace plumule::ui
