#pragma once

#include "core/journal/week/week_entries.h"
#include "ui/text/text.h"

namespace plumule::ui {

// What the week is said in. Names and short phrases for the columns, sentences for proposals.

[[nodiscard]] QString nameOf(WeekTask task); // "Bring to light"
// "Mon" for 0.
[[nodiscard]] QString weekdayName(int weekday);

// A day's entries, those of its two rounds taken together.
[[nodiscard]] std::vector<WeekEntry> entriesOf(const WeekDay& day);

// "4* + 3": what is proposed bears a star.
[[nodiscard]] QString countText(const WeekEntry& entry);
// What stands behind the count: "Radish, rose, A3".
[[nodiscard]] QString subjectText(const WeekEntry& entry);
// "Cut 4* + 3 Radish, rose, A3".
[[nodiscard]] QString entryText(const WeekEntry& entry);
// The trays' codes, or the trials by whose plans they are sown; may be empty.
[[nodiscard]] QString behindText(const WeekEntry& entry);
// "980 to 1,110 g" without the unit: "980–1110".
[[nodiscard]] QString rangeText(const ExpectedGrams& grams, const UnitText& units);
// "1,040 g".
[[nodiscard]] QString meanText(const ExpectedGrams& grams, const UnitText& units);
// Sums at the foot: "31 moves".
[[nodiscard]] QString totalText(const Week& week, WeekTask task);
// "Sat 28 November – Fri 11 December".
[[nodiscard]] QString spanText(const Week& week);

// "every Tuesday", "Tue and Fri", "every 3 days".
[[nodiscard]] QString rhythmText(const Repeat& repeat);
// "4 Radish, rose on Coir mix".
[[nodiscard]] QString titleOf(const Proposal& proposal);
// "Mon 7 Dec, not Fri 4 Dec".
[[nodiscard]] QString whenText(const Proposal& proposal, Date today);
// Why it was moved, seed, places and the cut.
[[nodiscard]] QString wordsOf(const Proposal& proposal, const UnitText& units);

} // namespace plumule::ui
