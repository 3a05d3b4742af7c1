#pragma once

#include <QString>

namespace plumule::ui {

// Words of the grower's where Qt would take some of their letters for marks of its own.

// For a hint under the pointer: "<b>" stays "<b>".
[[nodiscard]] QString plainHint(const QString& text);
// For an entry of a menu or a button: "mesh & mix" stays so, and underlines no letter.
[[nodiscard]] QString plainEntry(const QString& text);
// A path in a label that wraps: it may go on in the next line after each sign that parts it.
[[nodiscard]] QString wrappingPath(const QString& path);

} // namespace plumule::ui
