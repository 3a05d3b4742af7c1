#pragma once

#include "core/room/room.h"

namespace plumule {

// Which round is meant. Rounds follow each other: morning, evening, the next morning.
struct RoundKey
{
    Date date;
    Slot slot = Slot::Morning;

    constexpr auto operator<=>(const RoundKey&) const = default;
};

// What falls due this long after a round's time is already shown in it, so that a tray sown at
// 07:30 is looked at in the 07:00 round.
inline constexpr int kDueSlackMinutes = 3 * 60;

[[nodiscard]] RoundKey roundBefore(RoundKey round);
[[nodiscard]] RoundKey roundAfter(RoundKey round);
// When that round is walked.
[[nodiscard]] Moment timeOf(const Room& room, RoundKey round);
// The round that a moment belongs to: the one that is walked then.
[[nodiscard]] RoundKey roundOf(const Room& room, Moment moment);
// The first round that shows what is due at that moment.
[[nodiscard]] RoundKey roundShowing(const Room& room, Moment due);

} // namespace plumule
