#pragma once

#include "core/base/date.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace plumule {

// One entry of a calendar file. Without a minute it is of the whole day; else it begins then, by
// the clock of wherever the calendar is read (a floating time, as the room's are civil).
struct CalendarEvent
{
    std::string uid; // the same whenever the same thing is written again
    Date on;
    std::optional<int> minute;
    std::string summary;
    std::string description; // may be empty
};

inline constexpr int kCalendarMinutes = 15; // that an entry with a time lasts

// The events as RFC 5545 has a calendar: lines end with CR LF and are folded at 75 octets, never
// within a character; backslash, semicolon, comma and line break are escaped, other control
// characters left out. They leave the day free (TRANSP). `name` stands in X-WR-CALNAME; the stamp
// is in milliseconds of UTC.
[[nodiscard]] std::string calendarFile(const std::vector<CalendarEvent>& events,
                                       const std::string& name, std::int64_t stampUtcMs);

} // namespace plumule
