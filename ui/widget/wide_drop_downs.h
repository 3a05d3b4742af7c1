#pragma once

class QApplication;

namespace plumule::ui {

// From now on the open list of a drop-down is as wide as its longest row, however narrow the box.
void showWholeRows(QApplication& application);

} // namespace plumule::ui
