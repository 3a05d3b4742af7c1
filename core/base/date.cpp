#include "core/base/date.h"

#include "core/base/text_reason.h"

#include <cassert>
#include <charconv>
#include <chrono>
#include <fmt/format.h>
#include <optional>

namespace plumule {
namespace {

std::optional<int> digits(std::string_view text)
{
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool plain = !text.empty() && text.front() >= '0' && text.front() <= '9';
    if (!plain || error != std::errc{} || end != text.data() + text.size()) {
        return std::nullopt;
    }
    return value;
}

// Years of more than four figures stay so; those of more than the calendar has end there.
std::chrono::year_month_day civil(Date date)
{
    constexpr std::int32_t kFarthest = 11'000'000; // days, the year 32 000
    return std::chrono::sys_days{std::chrono::days{std::clamp(date.days, -kFarthest, kFarthest)}};
}

// Writes the figures of the number so that they end before that place.
void putDigits(std::string& text, std::size_t end, unsigned number)
{
    for (; number > 0; number /= 10) {
        text[--end] = static_cast<char>('0' + number % 10);
    }
}

} // namespace

Date date(int year, unsigned month, unsigned day)
{
    const std::chrono::year_month_day civilDay{std::chrono::year{year}, std::chrono::month{month},
                                               std::chrono::day{day}};
    assert(civilDay.ok());
    return {static_cast<std::int32_t>(std::chrono::sys_days{civilDay}.time_since_epoch().count())};
}

Result<Date> dateFromIso(std::string_view text)
{
    const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
    const auto year = shaped ? digits(text.substr(0, 4)) : std::nullopt;
    const auto month = shaped ? digits(text.substr(5, 2)) : std::nullopt;
    const auto day = shaped ? digits(text.substr(8, 2)) : std::nullopt;
    if (!year || !month || !day) {
        return fail(ErrorKind::Invalid, TextReason::NotADate, std::string(text));
    }
    const std::chrono::year_month_day civilDay{std::chrono::year{*year},
                                               std::chrono::month{static_cast<unsigned>(*month)},
                                               std::chrono::day{static_cast<unsigned>(*day)}};
    if (!civilDay.ok()) {
        return fail(ErrorKind::Invalid, TextReason::NotADate, std::string(text));
    }
    return date(*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day));
}

std::string toIso(Date date)
{
    const auto civilDay = civil(date);
    const int year = static_cast<int>(civilDay.year());
    const auto month = static_cast<unsigned>(civilDay.month());
    const auto day = static_cast<unsigned>(civilDay.day());
    if (year < 0 || year > 9999) {
        return fmt::format("{:04}-{:02}-{:02}", year, month, day);
    }
    std::string text = "0000-00-00";
    putDigits(text, 4, static_cast<unsigned>(year));
    putDigits(text, 7, month);
    putDigits(text, 10, day);
    return text;
}

Result<int> minuteFromText(std::string_view text)
{
    const bool shaped = text.size() == 5 && text[2] == ':';
    const auto hour = shaped ? digits(text.substr(0, 2)) : std::nullopt;
    const auto minute = shaped ? digits(text.substr(3, 2)) : std::nullopt;
    if (!hour || !minute || *hour > 23 || *minute > 59) {
        return fail(ErrorKind::Invalid, TextReason::NotATime, std::string(text));
    }
    return *hour * 60 + *minute;
}

std::string toClockText(int minute)
{
    return fmt::format("{:02}:{:02}", minute / 60, minute % 60);
}

int monthOf(Date day)
{
    const std::chrono::year_month_day civil{std::chrono::sys_days{std::chrono::days{day.days}}};
    return static_cast<int>(civil.year()) * 12 + static_cast<int>(unsigned{civil.month()}) - 1;
}

} // namespace plumule
