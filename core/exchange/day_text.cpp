#include "core/exchange/day_text.h"

#include "core/base/text_reason.h"

#include <array>
#include <charconv>
#include <fmt/format.h>

namespace plumule {
namespace {

constexpr int kMonths = 12;
constexpr int kDays = 31;

struct Part
{
    int value = 0;
    std::size_t figures = 0;
};

std::optional<std::array<Part, 3>> partsIn(std::string_view text, char mark)
{
    std::array<Part, 3> parts{};
    const char* at = text.data();
    const char* const end = text.data() + text.size();
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto [stop, error] = std::from_chars(at, end, parts[i].value);
        parts[i].figures = static_cast<std::size_t>(stop - at);
        const bool isLast = i + 1 == parts.size();
        if (error != std::errc{} || *at == '-' ||
            (isLast ? stop != end : stop == end || *stop != mark)) {
            return std::nullopt;
        }
        at = stop + (isLast ? 0 : 1);
    }
    return parts;
}

DateOrder orderOf(int first, int second, char mark)
{
    if (mark == '.' || first > kMonths) {
        return DateOrder::DayMonthYear;
    }
    // The 3rd of March is one day in either order.
    return second > kMonths  ? DateOrder::MonthDayYear
           : first == second ? DateOrder::DayMonthYear
                             : DateOrder::Unclear;
}

} // namespace

std::optional<DayParts> dayPartsIn(std::string_view text)
{
    const std::size_t at = text.find_first_of(".-/");
    const auto parts = at == std::string_view::npos ? std::nullopt : partsIn(text, text[at]);
    if (!parts) {
        return std::nullopt;
    }
    const auto& [first, second, third] = *parts;
    if (first.figures == 4 && second.figures <= 2 && third.figures <= 2) {
        return DayParts{first.value, second.value, third.value, DateOrder::YearMonthDay};
    }
    const bool isDay = first.figures <= 2 && second.figures <= 2 && third.figures == 4 &&
                       first.value <= kDays && second.value <= kDays;
    if (!isDay) {
        return std::nullopt;
    }
    return DayParts{first.value, second.value, third.value,
                    orderOf(first.value, second.value, text[at])};
}

Result<Date> dayFromText(std::string_view text, DateOrder order)
{
    const auto parts = dayPartsIn(text);
    if (!parts) {
        return fail(ErrorKind::Invalid, TextReason::NotADate, std::string(text));
    }
    if (parts->order == DateOrder::YearMonthDay) {
        return dateFromIso(
            fmt::format("{:04}-{:02}-{:02}", parts->first, parts->second, parts->third));
    }
    const bool isDecided = order == DateOrder::DayMonthYear || order == DateOrder::MonthDayYear;
    const DateOrder read = isDecided ? order : parts->order;
    if (read == DateOrder::Unclear) {
        return fail(ErrorKind::Ambiguous, TextReason::NotADate, std::string(text));
    }
    const bool isDayFirst = read == DateOrder::DayMonthYear;
    return dateFromIso(fmt::format("{:04}-{:02}-{:02}", parts->third,
                                   isDayFirst ? parts->second : parts->first,
                                   isDayFirst ? parts->first : parts->second));
}

} // namespace plumule
