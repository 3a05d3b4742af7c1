#pragma once

#include "core/rack/carry.h"
#include "ui/text/text.h"

namespace plumule::ui {

// The wording of racks, the same on the page and on paper.

// What the colour of a tray tells.
enum class ShownBy
{
    Stage,
    Medium,
    Days // to the cut
};

// How soon a tray is to be cut.
enum class CutBand
{
    Now, // today, or late
    Soon,
    ThisWeek,
    Later,
    Unknown
};
[[nodiscard]] CutBand bandOf(const StandingTray& tray, Date today);
[[nodiscard]] QString nameOf(CutBand band);

[[nodiscard]] QString shelfName(const Spot& spot); // "A2"
// "today", "tomorrow", "9 days", "2 days late"; "grows on" after its cut.
[[nodiscard]] QString daysText(const StandingTray& tray, Date today);
// Where there is no room for that: "9 d", "2 d late".
[[nodiscard]] QString shortDaysText(const StandingTray& tray, Date today);
// "40 W", "16 h", "180 µmol/m²/s", "10.4 mol/m² a day"; only what is known.
[[nodiscard]] QStringList lightParts(const ShelfLight& light);
[[nodiscard]] QString dliText(double dli);
// "thirsty, ready", empty where nothing is asked.
[[nodiscard]] QString needsText(const StandingTray& tray);
// One tray, and one place with what stands there, as they are read out.
[[nodiscard]] QString trayWords(const StandingTray& tray, Date today);
[[nodiscard]] QString placeWords(const StandingPlace& place, Date today);
// "A2 · places 2, 3; off the racks".
[[nodiscard]] QString spotsText(const RoomRacks& room,
                                const std::vector<std::optional<PlaceId>>& places);
[[nodiscard]] QString spellText(const FreeSpell& spell, Date lastEvening); // "Sat 5 Dec–Sun 6 Dec"

} // namespace plumule::ui
