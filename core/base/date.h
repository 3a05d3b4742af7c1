#pragma once

#include "core/base/capped.h"
#include "core/base/result.h"

#include <algorithm>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace plumule {

// A civil day of the room; no time zone. Counts days since 1970-01-01.
struct Date
{
    std::int32_t days = 0;

    constexpr auto operator<=>(const Date&) const = default;
    friend constexpr Date operator+(Date date, int days) { return {cappedSum(date.days, days)}; }
    friend constexpr Date operator-(Date date, int days)
    {
        return {cappedDifference(date.days, days)};
    }
    friend constexpr int operator-(Date a, Date b) { return cappedDifference(a.days, b.days); }
};

inline constexpr int kMinutesPerDay = 24 * 60;

// A civil minute of the room.
struct Moment
{
    Date date;
    int minute = 0; // of the day, 0 to 1439

    constexpr auto operator<=>(const Moment&) const = default;
    friend constexpr Moment operator+(Moment moment, std::int64_t minutes)
    {
        const std::int64_t total =
            cappedSum(std::int64_t{moment.date.days} * kMinutesPerDay + moment.minute, minutes);
        std::int64_t day = total / kMinutesPerDay;
        auto minute = static_cast<int>(total % kMinutesPerDay);
        if (minute < 0) {
            minute += kMinutesPerDay;
            --day;
        }
        constexpr std::int64_t kLast = std::numeric_limits<std::int32_t>::max();
        return {{static_cast<std::int32_t>(std::clamp(day, -kLast, kLast))}, minute};
    }
    // Minutes from b to a.
    friend constexpr std::int64_t operator-(Moment a, Moment b)
    {
        return std::int64_t{a.date - b.date} * kMinutesPerDay + (std::int64_t{a.minute} - b.minute);
    }
};

// `month` and `day` must name a day that exists.
[[nodiscard]] Date date(int year, unsigned month, unsigned day);

// Reads YYYY-MM-DD and nothing else; Invalid for any other text or a day that does not exist.
[[nodiscard]] Result<Date> dateFromIso(std::string_view text);
[[nodiscard]] std::string toIso(Date date);

// Reads HH:MM, 24 hours, to minutes of the day.
[[nodiscard]] Result<int> minuteFromText(std::string_view text);
[[nodiscard]] std::string toClockText(int minute);

// The day of sowing is day 1: sown on the 2nd and cut on the 14th is cut on day 13.
constexpr int dayCount(Date sown, Date on)
{
    return cappedSum(on - sown, 1);
}

// A month as one number: 12 to the year, from year 0.
[[nodiscard]] int monthOf(Date day);

} // namespace plumule
