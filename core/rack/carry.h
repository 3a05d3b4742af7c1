#pragma once

#include "core/rack/rack.h"
#include "core/tray/tray_move.h"

namespace plumule {

// Where one carried tray comes from and would land.
struct CarriedTray
{
    TrayId tray;
    std::optional<PlaceId> from;    // none: it stands off the racks
    std::optional<PlaceId> to;      // none: it would find no place
    std::optional<TrayId> inTheWay; // that stands there, and is not carried itself
    bool operator==(const CarriedTray&) const = default;
};

// A move before it is done.
struct Carry
{
    std::vector<CarriedTray> trays; // in walking order; those off the racks last
    bool operator==(const Carry&) const = default;

    // Whether all have a place to land on, and one of them another than now.
    [[nodiscard]] bool leadsSomewhere() const;
    [[nodiscard]] bool isAnyInTheWay() const;
};

// The trays with the first of them at that place and the others as far from it, in walking order,
// as they stand from each other now; those off the racks on the places after. Where the last would
// stand beyond the last place all stand that much nearer. Trays that are not there are left out.
[[nodiscard]] Carry carryTo(const RoomRacks& room, const std::vector<TrayId>& trays, PlaceId at);

// The trays to where they land.
[[nodiscard]] std::vector<TrayMove> putDown(const Carry& carry);
// Likewise, and what is in the way goes where the carried trays came from, in walking order; off
// the racks where they stood nowhere.
[[nodiscard]] std::vector<TrayMove> swapped(const Carry& carry);

// What it would mean for a tray of a trial to stand there: its shelf is its block, so that another
// shelf mixes light and air with what is compared (common practice, no source). The codes of the
// trials whose trays change their shelf, each once.
[[nodiscard]] std::vector<std::string> trialsDisturbed(const RoomRacks& room, const Carry& carry);

} // namespace plumule
