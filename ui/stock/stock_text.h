#pragma once

#include "core/stock/stock.h"
#include "core/trace/trace.h"
#include "ui/text/text.h"

namespace plumule::ui {

// Wording of what is on the shelf, and of where it went.

[[nodiscard]] QString nameOf(StockKind kind); // "packaging"
// "38.0 L", "14", in the room's units.
[[nodiscard]] QString amountText(StockAmount amount, StockUnit unit, const UnitText& units);
// Whole days; from two months on "60+".
[[nodiscard]] QString daysText(std::optional<double> days);
// "3 things run low", or that nothing does.
[[nodiscard]] QString lowCount(int things);
// One calm line for the round: "Runs low: Pea, tendril (4 days), Jute felt (12 days)."; empty where
// nothing does.
[[nodiscard]] QString lowSentence(const std::vector<LowThing>& low);
// Why a line is marked, for the hint over it.
[[nodiscard]] QString lowReason(Low why);

// "in RD082, A3 · place 2", "emptied 27 Nov", "clean".
[[nodiscard]] QString nowText(const PieceLine& piece);
// "18 Nov, peroxide 3 %, 10 min, Kit".
[[nodiscard]] QString sanitisedText(const std::optional<Sanitising>& sanitised);
[[nodiscard]] QString dueText(const PieceLine& piece, Date today);
// "7 under trays, 2 to sanitise, 1 clean".
[[nodiscard]] QString groupText(const PieceGroup& group);

// "Lot L3, forward", "RD031, back".
[[nodiscard]] QString titleOf(const ForwardTrace& trace);
[[nodiscard]] QString titleOf(const BackTrace& trace);
// What is known of the thing itself, a sentence each.
[[nodiscard]] QStringList factsOf(const ForwardTrace& trace, const UnitText& units);
// "RD050–RD055", or one by one where numbers are left out.
[[nodiscard]] QString codesOf(const TracedSowing& sowing);
// "cut 24 Oct, 6 of 6"; "all growing".
[[nodiscard]] QString cutText(const TracedSowing& sowing);
// What was thrown away and why, what still grows, and whose hand it was; a line each.
struct TraceNote
{
    QString words;
    bool isWarned = false;
};
[[nodiscard]] std::vector<TraceNote> notesOf(const TracedSowing& sowing);
// "29 trays cut, 1 thrown away, 4 growing".
[[nodiscard]] QString sumText(const TraceSums& sums);
// Who holds some of it; empty where no promise does.
[[nodiscard]] QString promisesText(const TraceSums& sums);

// "Canteen, Thu 29 Oct".
[[nodiscard]] QString promiseWords(const TracedPromise& promise);
// "germination 94 %"; empty where it is not known.
[[nodiscard]] QString germinationText(const SeedLot& lot);
// "peroxide 3 %, 10 min".
[[nodiscard]] QString agentText(const SanitisingDraft& how);
// "3 Oct 2026 07:10: peroxide 3 %, 10 min, by Mo".
[[nodiscard]] QString sanitisingLine(const Sanitising& one);

// From a tray back: a heading with what stands below it.
struct TraceStep
{
    QString what; // "Seed"
    QStringList lines;
};
[[nodiscard]] std::vector<TraceStep> stepsOf(const BackTrace& trace, const UnitText& units);

} // namespace plumule::ui
