#pragma once

#include "core/watering/round.h"

namespace plumule {

class Database;

// What a tick of a round is made of, for those who write one.

// The round with every tray that grew in it, and these trays' part in it.
[[nodiscard]] Round wholeRound(Database& database, RoundKey key, Moment now);
[[nodiscard]] Round roundOfTrays(Database& database, const std::vector<TrayId>& trays, RoundKey key,
                                 Moment now);
// What is ticked in today's rounds was given now; what is written in later, at the round's time.
[[nodiscard]] int minuteOfTick(Database& database, RoundKey round, Moment now);
// Conflict for a round of a day to come.
[[nodiscard]] Done checkNotAhead(RoundKey round, Moment now);
// The tray as that round asks for it, but for where it stands. Conflict where it does not, or it is
// ticked.
[[nodiscard]] Result<RoundTray> openTick(Database& database, TrayId tray, RoundKey round,
                                         Moment now);
Watering storeTick(Database& database, const RoundTray& asked, RoundKey round, int minute);

} // namespace plumule
