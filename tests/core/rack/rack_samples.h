#pragma once

#include "core/rack/rack.h"
#include "tests/core/watering/round_samples.h"

namespace plumule {

// Rack A with shelves of three and two places, rack B with one of two: places 1 to 7 in walking
// order.
inline RoomLayout threeShelves()
{
    RoomLayout layout;
    layout.racks = {{{1}, "A", 0}, {{2}, "B", 1}};
    layout.shelves = {{{11}, {1}, "1", 0, 40'000, 16 * 60},
                      {{12}, {1}, "2", 1, {}, {}},
                      {{21}, {2}, "1", 0, {}, 14 * 60}};
    layout.places = {{{1}, {11}, 1}, {{2}, {11}, 2}, {{3}, {11}, 3}, {{4}, {12}, 1},
                     {{5}, {12}, 2}, {{6}, {21}, 1}, {{7}, {21}, 2}};
    return layout;
}

} // namespace plumule
