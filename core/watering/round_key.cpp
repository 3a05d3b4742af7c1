#include "core/watering/round_key.h"

namespace plumule {

RoundKey roundBefore(RoundKey round)
{
    return round.slot == Slot::Evening ? RoundKey{round.date, Slot::Morning}
                                       : RoundKey{round.date - 1, Slot::Evening};
}

RoundKey roundAfter(RoundKey round)
{
    return round.slot == Slot::Morning ? RoundKey{round.date, Slot::Evening}
                                       : RoundKey{round.date + 1, Slot::Morning};
}

Moment timeOf(const Room& room, RoundKey round)
{
    return {round.date, room.minuteOf(round.slot)};
}

RoundKey roundOf(const Room& room, Moment moment)
{
    return {moment.date, slotAt(room, moment.minute)};
}

RoundKey roundShowing(const Room& room, Moment due)
{
    if (due.minute <= room.morningMinute + kDueSlackMinutes) {
        return {due.date, Slot::Morning};
    }
    if (due.minute <= room.eveningMinute + kDueSlackMinutes) {
        return {due.date, Slot::Evening};
    }
    return {due.date + 1, Slot::Morning};
}

} // namespace plumule
