#pragma once

namespace plumule::ui {

class RackView;

// The racks for those who have the screen read out: a list of places, each with its words.

// From now on every RackView is read out so.
void readRacksOut();
// Says that the cursor is at another place.
void tellCursor(RackView& view);

} // namespace plumule::ui
