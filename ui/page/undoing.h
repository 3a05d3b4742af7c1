#pragma once

#include "core/journal/journal.h"

class QString;

namespace plumule::ui {

struct Services;

// What every page says after an act, and the way back. The bar's button is of the act that it
// speaks of, whatever was done since. What changed very many rows, a table that was brought in, is
// taken back and done again off the window's thread. Journal and services must outlive what the bar
// shows.

// Says what was done last in history's words; nothing where there is nothing to take back.
void tellLast(Journal& journal, const Services& services);
// Says it in words of the page's own.
void tellDone(Journal& journal, const Services& services, const QString& done);
// Whether taking it back takes long enough to be felt.
[[nodiscard]] bool isLarge(const HistoryEntry& act);
// Takes back one act, else the newest, and offers to do it again; says why where that is refused.
void takeBack(Journal& journal, const Services& services,
              const std::optional<HistoryEntry>& act = std::nullopt);
// Does again what was taken back last.
void doAgain(Journal& journal, const Services& services);

} // namespace plumule::ui
