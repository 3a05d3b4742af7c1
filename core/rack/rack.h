#pragma once

#include "core/rack/free_places.h"
#include "core/trial/trial_plan.h"
#include "core/variety/variety.h"
#include "core/watering/round.h"

#include <map>

namespace plumule {

// A tray as the racks show it.
struct StandingTray
{
    TrayId tray;
    std::string code;
    std::string variety;
    Medium medium;
    std::optional<std::string> trial; // its code
    StagePlan plan;
    std::optional<Stage> stage; // none: nothing is known of its stages
    int day = 1;                // of growth; the day of sowing is 1
    std::optional<Date> cutOn;  // none: no stages known, or it was cut and grows on
    bool isThirsty = false;     // a watering was missed
    bool isReady = false;       // to be looked at, and moved on
    bool isDue = false;         // to be cut

    // 0 on the day of the cut, less once it is late.
    [[nodiscard]] std::optional<int> daysToCut(Date today) const
    {
        return cutOn ? std::optional(*cutOn - today) : std::nullopt;
    }
};

// What shines on a shelf.
struct ShelfLight
{
    std::optional<double> watts; // of the lamps over the whole shelf
    std::optional<double> hours; // a day
    std::optional<double> ppfd;  // measured, µmol/m²/s

    // Daily light integral, mol/m² a day; none where hours or flux are not known.
    [[nodiscard]] std::optional<double> dli() const;
    bool operator==(const ShelfLight&) const = default;
};

struct StandingPlace
{
    Spot spot;
    std::optional<StandingTray> tray;
    std::optional<std::string> heldFor; // by a planned sowing: whose
    Date heldFrom;
};

struct StandingShelf
{
    Shelf shelf;
    ShelfLight light;
    std::vector<StandingPlace> places; // by number
};

struct StandingRack
{
    Rack rack;
    std::vector<StandingShelf> shelves; // in walking order

    [[nodiscard]] int places() const;
    [[nodiscard]] int taken() const;
};

// Everything that stands in the room now.
struct RoomRacks
{
    Date today;
    std::vector<StandingRack> racks;
    std::vector<StandingTray> offRacks; // growing, but standing nowhere; by code
    std::vector<FreeEvening> evenings;
    std::vector<DamagedTray> damaged; // what it does without

    [[nodiscard]] int places() const;
    [[nodiscard]] int taken() const;
    // All places in walking order. As long as the racks live.
    [[nodiscard]] std::vector<const StandingPlace*> walk() const;
    // Null where it is not there.
    [[nodiscard]] const StandingPlace* placeOf(TrayId tray) const;
    [[nodiscard]] const StandingShelf* shelfOf(PlaceId place) const;
    [[nodiscard]] const StandingTray* find(TrayId tray) const;
};

// Everything it is worked out from.
struct RackFacts
{
    RoomLayout layout;
    std::vector<TrayRecord> growing; // with the places where they stand now
    Round round;                     // the one that is walked now
    std::map<ShelfId, double> ppfds; // µmol/m²/s
    std::vector<PlannedSowing> planned;
    Date today;
};

[[nodiscard]] RoomRacks racksFrom(const RackFacts& facts);

// What a trial that is planned and not sown takes; none once it is sown, or where its variety has
// no stages.
[[nodiscard]] std::optional<PlannedSowing>
plannedSowingOf(const TrialDraft& draft, const Protocol& protocol, const Room& room);

} // namespace plumule
