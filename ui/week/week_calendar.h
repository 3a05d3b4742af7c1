#pragma once

#include "core/week/calendar_file.h"
#include "core/week/week.h"

#include <QString>

namespace plumule::ui {

// The week's tasks as entries of a calendar: what is done at the racks at the time of its round,
// washing and ordering on their day. An entry keeps its name from one file to the next, so that a
// calendar takes the newer one for the older.
[[nodiscard]] std::vector<CalendarEvent> calendarOf(const Week& week, const Room& room);

// As saveFile(). The stamp is the clock's UTC.
[[nodiscard]] Done writeWeekCalendar(const Week& week, const Room& room, std::int64_t stampUtcMs,
                                     const QString& path);

} // namespace plumule::ui
