#pragma once

class QApplication;

namespace plumule::ui {

// From now on a text of several lines that is put into a field of one line goes on in that line: a
// name with a line break in it would be drawn over others.
void keepFieldsOnOneLine(QApplication& application);

} // namespace plumule::ui
