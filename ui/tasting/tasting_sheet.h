#pragma once

#include "core/journal/tasting/tasting_entries.h"
#include "ui/text/text.h"

namespace plumule::ui {

// A page a taster: the codes in serving order with boxes to fill in, and no medium. A4, or Letter
// where the room shows US customary units. False where the file can't be written.
[[nodiscard]] Done writeTasterSheets(const PanelRecord& record, UnitText units,
                                     const QString& pdfPath);

// For whoever plates: which medium goes under which code, taster by taster. Not for tasters, nor
// for whoever types the scores in.
[[nodiscard]] Done writePlatingSheet(const PanelRecord& record,
                                     const std::vector<PlatedServing>& plating, UnitText units,
                                     const QString& pdfPath);

} // namespace plumule::ui
