#pragma once

#include "core/base/result.h"
#include "core/trial/trial_plan.h"

namespace plumule {

// A shelf's places that may be drawn, in walking order.
struct FreeShelf
{
    ShelfId shelf;
    std::vector<Place> places;
};

// Missing, Invalid or TooFew, naming the field: fewer than two treatments (TooFewMedia), one
// twice, fewer than one tray of each (TraysEach) or more than 500 trays in all; in blocks
// trays that are not a multiple of the blocks; in a Latin square trays of each other than the count
// of treatments; a control that is not compared; whatever checkTrial() finds.
[[nodiscard]] Done checkDraft(const TrialDraft& draft);

// The layout has every treatment as often as the plan says, and no place twice. Missing
// LayoutMissing where there is none, Invalid where it is another plan's, Conflict PlaceTwice.
[[nodiscard]] Done checkLayout(const TrialDraft& draft);

// Places drawn by lot: std::mt19937_64 from the plan's number, brought into range by rejection
// (stats::SteadyDraw) and shuffled after Fisher and Yates (Durstenfeld 1964), so that the same
// number, treatments and free places give the same layout on every machine. A Latin square is the
// cyclic one with its rows, columns and treatments each put in random order.
// Blocks go to as many different shelves as have room, in walking order; within a shelf its first
// free places are taken. Conflict TooFewPlaces (too few are free; the detail is how many),
// BlockPlaces (no shelf has room for a whole block), SquarePlaces (no square of
// free places). Otherwise as checkDraft(), but that a trial may be drawn before it has a name.
[[nodiscard]] Result<std::vector<PlannedTray>> drawLayout(const TrialDraft& draft,
                                                          const std::vector<FreeShelf>& free);

// Puts one planned tray elsewhere, or changes two about where the place is another's; both are
// marked as moved. NotFound where there is no such tray in the layout.
[[nodiscard]] Done moveByHand(std::vector<PlannedTray>& trays, std::size_t tray, PlaceId place);

} // namespace plumule
