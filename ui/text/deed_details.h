#pragma once

#include "core/journal/ledger/intention.h"
#include "ui/text/text.h"

#include <QString>

namespace plumule::ui {

// Whom it was done to: many trays are stored by their count, and what is none of the grower's own
// words, by its key.
[[nodiscard]] QString whomOf(Intention intention, const QString& subject);

// Of an entry that says what it came to; empty where it doesn't.
[[nodiscard]] QString detailedSentence(Intention intention, const HistoryEntry& entry,
                                       const UnitText& units);

} // namespace plumule::ui
