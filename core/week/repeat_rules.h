#pragma once

#include "core/base/result.h"
#include "core/week/repeat.h"

#include <map>
#include <set>
#include <vector>

namespace plumule {

inline constexpr int kMostDaysBetween = 365;
inline constexpr int kEveryWeekday = 127;
// A day that was let pass is proposed this long after it, and no longer than until the next one.
inline constexpr int kDaysLate = 7;

// 0 for Monday to 6 for Sunday.
[[nodiscard]] int weekdayOf(Date day);
// What a weekday counts in Repeat::weekdays.
[[nodiscard]] constexpr int weekdayBit(int weekday)
{
    return 1 << weekday;
}

// Missing: neither weekdays nor a number of days, or both. Invalid: no tray or more than can be
// sown at once, more than kMostDaysBetween days, an end before the start.
[[nodiscard]] Done checkRepeat(const Repeat& repeat);

// Whether its rhythm falls on that day.
[[nodiscard]] bool isDayOf(const Repeat& repeat, Date day);

// The days of it that were answered.
[[nodiscard]] const std::set<Date>& answersTo(const std::map<RepeatId, std::set<Date>>& answered,
                                              RepeatId repeat);

// The days that are to be answered as of `today`, up to `last`: those to come, and the last one
// that was let pass. In order.
[[nodiscard]] std::vector<Date> openDays(const Repeat& repeat, const std::set<Date>& answered,
                                         Date today, Date last);

} // namespace plumule
