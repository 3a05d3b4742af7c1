#pragma once

#include "core/base/date.h"

#include <optional>
#include <string_view>
#include <vector>

namespace plumule {

// In which order a file writes a day, where it does not begin with the year.
enum class DayOrder
{
    YearMonthDay,
    DayMonthYear,
    MonthDayYear
};

// By which clock a file's times were written.
enum class LoggerClock
{
    Room, // as the room's clock showed: the hour that spring leaps over is missing, the one that
          // autumn repeats is one hour of both
    Utc,
    StandardTime // the zone's winter time all year
};

// Turns universal time into the room's.
class TimeZone
{
public:
    virtual ~TimeZone() = default;
    // The room's civil minute at so many minutes since 1970-01-01 00:00 UTC.
    [[nodiscard]] virtual Moment localOf(std::int64_t utcMinute) const = 0;
    // Minutes that the zone's standard time is ahead of UTC in that year.
    [[nodiscard]] virtual int standardOffset(int year) const = 0;
};

// The zone that the machine is set to.
class SystemZone : public TimeZone
{
public:
    [[nodiscard]] Moment localOf(std::int64_t utcMinute) const override;
    [[nodiscard]] int standardOffset(int year) const override;
};

// A time as it is written; with the minutes that it says it is ahead of UTC ("Z", "+01:00").
struct WrittenTime
{
    Moment at;
    std::optional<int> offset;
    bool operator==(const WrittenTime&) const = default;
};

// Reads "2026-03-12 06:50", "12.03.2026 06:50:30", "3/12/26 6:50 PM", "2026-03-12T06:50:00Z": a day
// in the order given, or with the year first; a clock time, of which seconds are cut off; an offset
// if there is one. None for anything else, and for days that do not exist.
[[nodiscard]] std::optional<WrittenTime> writtenTime(std::string_view text, DayOrder order);

// The order that the days of a column give away by a number above 12. Unclear where none does, or
// where they speak against one another.
struct OrderFound
{
    std::optional<DayOrder> order;
    std::string_view unclear; // a day that may be read in two ways, where none is found
};
[[nodiscard]] OrderFound dateOrderOf(const std::vector<std::string_view>& column);

// The time on the room's clock. An offset that the text itself says goes before `clock`.
[[nodiscard]] Moment roomTime(const WrittenTime& time, LoggerClock clock, const TimeZone& zone);

} // namespace plumule
