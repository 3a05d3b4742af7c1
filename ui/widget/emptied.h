#pragma once

class QLineEdit;

namespace plumule::ui {

// Empties a field whose text is kept by now: unlike QLineEdit::clear(), which its own undo brings
// back, so that Ctrl+Z after an act would fill the field again instead of taking the act back.
void emptyForGood(QLineEdit& field);

} // namespace plumule::ui
