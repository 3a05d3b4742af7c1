#pragma once

#include "core/journal/journal.h"

class QString;

namespace plumule::ui {

class MessageBar;

// What every page says after an act, and the way back. The bar's button is of the act that it
// speaks of, whatever was done since. Journal and bar must outlive what the bar shows.

// Says what was done last in history's words; nothing where there is nothing to take back.
void tellLast(Journal& journal, MessageBar& messages);
// Says it in words of the page's own.
void tellDone(Journal& journal, MessageBar& messages, const QString& done);
// Takes back one act, the newest where `act` is not stored, and offers to do it again; says why
// where that is refused.
void takeBack(Journal& journal, MessageBar& messages, HistoryId act = {});
// Does again what was taken back last.
void doAgain(Journal& journal, MessageBar& messages);

} // namespace plumule::ui
