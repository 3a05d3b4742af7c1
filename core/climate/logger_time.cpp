#include "core/climate/logger_time.h"

#include "core/base/number_text.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <ctime>

namespace plumule {
namespace {

constexpr int kMinutesPerHour = 60;
constexpr int kSecondsPerMinute = 60;
constexpr int kMonths = 12;
constexpr int kMostOffset = 14 * kMinutesPerHour; // no zone is further from UTC

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

// Takes what it reads off the front of a text.
class TimeReader
{
public:
    explicit TimeReader(std::string_view text)
        : m_text(text)
    {}

    [[nodiscard]] bool atEnd() const { return m_text.empty(); }

    // One to four digits; none, and nothing taken, where there are none or more.
    std::optional<int> number()
    {
        int value = 0;
        std::size_t length = 0;
        for (; length < m_text.size() && isDigit(m_text[length]); ++length) {
            if (length == 4) {
                return std::nullopt;
            }
            value = value * 10 + (m_text[length] - '0');
        }
        if (length == 0) {
            return std::nullopt;
        }
        m_text.remove_prefix(length);
        m_length = length;
        return value;
    }
    // How many digits the last number had.
    [[nodiscard]] std::size_t length() const { return m_length; }

    std::optional<char> oneOf(std::string_view marks)
    {
        if (atEnd() || marks.find(m_text.front()) == std::string_view::npos) {
            return std::nullopt;
        }
        const char taken = m_text.front();
        m_text.remove_prefix(1);
        return taken;
    }
    void skipAll(std::string_view marks)
    {
        while (oneOf(marks)) {
        }
    }
    void skipDigits()
    {
        while (!atEnd() && isDigit(m_text.front())) {
            m_text.remove_prefix(1);
        }
    }

private:
    std::string_view m_text;
    std::size_t m_length = 0;
};

struct WrittenDay
{
    std::array<int, 3> numbers = {};
    bool hasYearFirst = false;
};

std::optional<WrittenDay> writtenDay(TimeReader& reader)
{
    WrittenDay day;
    std::optional<char> mark;
    for (std::size_t i = 0; i < day.numbers.size(); ++i) {
        const auto number = reader.number();
        if (!number || (i < 2 && reader.length() > 2 && !(i == 0 && reader.length() == 4)) ||
            reader.length() == 3) {
            return std::nullopt;
        }
        day.numbers[i] = *number;
        day.hasYearFirst = day.hasYearFirst || (i == 0 && reader.length() == 4);
        if (i == 2) {
            const bool isShort = !day.hasYearFirst && reader.length() <= 2;
            day.numbers[i] += isShort ? 2000 : 0;
            break;
        }
        const auto next = reader.oneOf("-/.");
        if (!next || (mark && *next != *mark)) {
            return std::nullopt;
        }
        mark = next;
    }
    return day;
}

std::optional<Date> dayOf(const WrittenDay& day, DayOrder order)
{
    const auto& [a, b, c] = day.numbers;
    const bool isYearFirst = day.hasYearFirst || order == DayOrder::YearMonthDay;
    const int year = isYearFirst ? a : c;
    const int month = isYearFirst || order == DayOrder::DayMonthYear ? b : a;
    const int number = isYearFirst ? c : order == DayOrder::DayMonthYear ? a : b;
    // A year of two digits does not come first.
    if (isYearFirst && !day.hasYearFirst) {
        return std::nullopt;
    }
    const std::chrono::year_month_day civil{std::chrono::year{year},
                                            std::chrono::month{static_cast<unsigned>(month)},
                                            std::chrono::day{static_cast<unsigned>(number)}};
    if (!civil.ok()) {
        return std::nullopt;
    }
    return date(year, static_cast<unsigned>(month), static_cast<unsigned>(number));
}

// 12 AM is midnight, 12 PM noon.
std::optional<int> hourOfHalf(int hour, char half)
{
    if (hour < 1 || hour > 12) {
        return std::nullopt;
    }
    const bool isAfternoon = half == 'P' || half == 'p';
    return hour % 12 + (isAfternoon ? 12 : 0);
}

std::optional<int> minuteOfDay(TimeReader& reader)
{
    auto hour = reader.number();
    if (!hour || reader.length() > 2 || !reader.oneOf(":")) {
        return std::nullopt;
    }
    const auto minute = reader.number();
    if (!minute || reader.length() != 2) {
        return std::nullopt;
    }
    if (reader.oneOf(":")) {
        const auto second = reader.number();
        if (!second || reader.length() != 2 || *second > kSecondsPerMinute) {
            return std::nullopt;
        }
        if (reader.oneOf(".,")) {
            reader.skipDigits();
        }
    }
    reader.skipAll(" ");
    if (const auto half = reader.oneOf("AaPp")) {
        hour = reader.oneOf("Mm") ? hourOfHalf(*hour, *half) : std::nullopt;
    }
    if (!hour || *hour > 23 || *minute >= kMinutesPerHour) {
        return std::nullopt;
    }
    return *hour * kMinutesPerHour + *minute;
}

// "Z", "+01:00", "-0530"; `isSound` is cleared for anything else.
std::optional<int> offsetIn(TimeReader& reader, bool& isSound)
{
    reader.skipAll(" ");
    if (reader.atEnd()) {
        return std::nullopt;
    }
    if (reader.oneOf("Zz")) {
        isSound = reader.atEnd();
        return 0;
    }
    const auto sign = reader.oneOf("+-");
    const auto first = reader.number();
    const std::size_t length = reader.length();
    isSound = sign && first && (length == 2 || length == 4);
    if (!isSound) {
        return std::nullopt;
    }
    int minutes =
        length == 4 ? *first / 100 * kMinutesPerHour + *first % 100 : *first * kMinutesPerHour;
    if (length == 2 && reader.oneOf(":")) {
        minutes += reader.number().value_or(kMostOffset);
    }
    isSound = reader.atEnd() && minutes <= kMostOffset;
    return sign == '-' ? -minutes : minutes;
}

std::tm localTime(std::int64_t utcMinute)
{
    const std::time_t seconds = utcMinute * kSecondsPerMinute;
    std::tm local = {};
    ::localtime_r(&seconds, &local);
    return local;
}

} // namespace

Moment SystemZone::localOf(std::int64_t utcMinute) const
{
    const std::tm local = localTime(utcMinute);
    return {date(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1),
                 static_cast<unsigned>(local.tm_mday)),
            local.tm_hour * kMinutesPerHour + local.tm_min};
}

// Summer time is ahead of standard time, and one of the two holds in January, the other in July.
int SystemZone::standardOffset(int year) const
{
    const auto offsetIn = [&](unsigned month) {
        const std::int64_t noon = std::int64_t{date(year, month, 1).days} * kMinutesPerDay + 720;
        return static_cast<int>(localTime(noon).tm_gmtoff / kSecondsPerMinute);
    };
    return std::min(offsetIn(1), offsetIn(7));
}

std::optional<WrittenTime> writtenTime(std::string_view text, DayOrder order)
{
    TimeReader reader(trimmed(text));
    const auto written = writtenDay(reader);
    const auto day = written ? dayOf(*written, order) : std::nullopt;
    if (!day) {
        return std::nullopt;
    }
    reader.skipAll(", ");
    (void)reader.oneOf("Tt");
    const auto minute = minuteOfDay(reader);
    if (!minute) {
        return std::nullopt;
    }
    bool isSound = true;
    const auto offset = offsetIn(reader, isSound);
    return isSound ? std::optional(WrittenTime{{*day, *minute}, offset}) : std::nullopt;
}

OrderFound dateOrderOf(const std::vector<std::string_view>& column)
{
    OrderFound found;
    bool isDayFirst = false;
    bool isMonthFirst = false;
    bool hasYearFirst = false;
    for (const std::string_view cell : column) {
        TimeReader reader(trimmed(cell));
        const auto day = writtenDay(reader);
        if (!day) {
            continue;
        }
        hasYearFirst = hasYearFirst || day->hasYearFirst;
        if (!day->hasYearFirst) {
            isDayFirst = isDayFirst || day->numbers[0] > kMonths;
            isMonthFirst = isMonthFirst || day->numbers[1] > kMonths;
            found.unclear = found.unclear.empty() ? trimmed(cell) : found.unclear;
        }
    }
    if (isDayFirst != isMonthFirst) {
        found.order = isDayFirst ? DayOrder::DayMonthYear : DayOrder::MonthDayYear;
    } else if (hasYearFirst && found.unclear.empty()) {
        found.order = DayOrder::YearMonthDay;
    }
    return found;
}

Moment roomTime(const WrittenTime& time, LoggerClock clock, const TimeZone& zone)
{
    std::optional<int> offset = time.offset;
    if (!offset && clock == LoggerClock::Utc) {
        offset = 0;
    }
    if (!offset && clock == LoggerClock::StandardTime) {
        constexpr int kMonthsPerYear = 12;
        offset = zone.standardOffset(monthOf(time.at.date) / kMonthsPerYear);
    }
    if (!offset) {
        return time.at;
    }
    return zone.localOf(std::int64_t{time.at.date.days} * kMinutesPerDay + time.at.minute -
                        *offset);
}

} // namespace plumule
