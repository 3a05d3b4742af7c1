#pragma once

#include "draw.h"

#include "core/forecast/forecast_facts.h"

namespace plumule::calibration {

// A room that sows every variety on all its media, one sowing after the other. Yields are
// lognormal: a mean of each variety on each medium, the sowing's luck, that of the medium in the
// sowing, and the tray's. A stage outlasts its protocol by a sowing's and a tray's days; the cut
// waits for the next morning.
struct GrownRoom
{
    int varieties = 3;
    int media = 3;
    int sowings = 8; // of each variety, 7 days apart
    int fewestTrays = 2;
    int mostTrays = 4; // of each medium in a sowing
    double trayCv = 0.07;
    double sowingCv = 0.10;
    double mediumSowingCv = 0;
    double unlike = 1.3;      // a variety's spreads are up to that many times the room's, or a part
    double yearCv = 0;        // of the seasonal wave
    double sowingDelay = 0.6; // days, sd, of each stage
    double trayDelay = 0.3;
    double meanDelay = 0.4;
    double lost = 0.05;      // of trays
    double tailsDf = 0;      // over 0: t instead of normal
    bool cutsByPlan = false; // on the day the protocol says, whatever grows
};

// All that happened, up to long after the last sowing; `now` is its end.
[[nodiscard]] ForecastFacts grow(const GrownRoom& room, Draw& draw);

} // namespace plumule::calibration
