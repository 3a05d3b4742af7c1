#pragma once

#include <QString>

#include <string>

namespace plumule::ui {

// What a row of that table is in the grower's words: "stage of a tray". Of a table that is not
// known, its key with blanks.
[[nodiscard]] QString rowName(const std::string& table);

// The column as the form calls it that fills it: "Seed a tray". Where no form fills it, its key in
// words.
[[nodiscard]] QString fieldName(const std::string& table, const std::string& column);

} // namespace plumule::ui
