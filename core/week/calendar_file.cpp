#include "core/week/calendar_file.h"

#include <fmt/format.h>

namespace plumule {
namespace {

constexpr std::size_t kOctetsInALine = 75;
constexpr std::int64_t kMsInAMinute = 60'000;

bool goesOn(char octet)
{
    return (static_cast<unsigned char>(octet) & 0xC0U) == 0x80U; // within a character of UTF-8
}

// One content line, folded: what goes on begins with a blank, which counts.
void addLine(std::string& file, const std::string& line)
{
    std::size_t from = 0;
    std::size_t room = kOctetsInALine;
    while (line.size() - from > room) {
        std::size_t end = from + room;
        while (end > from + 1 && goesOn(line[end])) {
            --end;
        }
        file += line.substr(from, end - from) + "\r\n ";
        from = end;
        room = kOctetsInALine - 1;
    }
    file += line.substr(from) + "\r\n";
}

std::string escaped(const std::string& text)
{
    std::string result;
    for (const char letter : text) {
        const auto octet = static_cast<unsigned char>(letter);
        if (letter == '\n') {
            result += "\\n";
        } else if (letter == '\\' || letter == ';' || letter == ',') {
            result += std::string("\\") + letter;
        } else if (octet >= 0x20 && octet != 0x7F) {
            result += letter;
        }
    }
    return result;
}

// "20261201".
std::string basicDay(Date day)
{
    std::string text;
    for (const char letter : toIso(day)) {
        text += letter == '-' ? "" : std::string(1, letter);
    }
    return text;
}

// "20261201T070000".
std::string basicMoment(Moment at)
{
    return fmt::format("{}T{:02}{:02}00", basicDay(at.date), at.minute / 60, at.minute % 60);
}

std::string stampOf(std::int64_t utcMs)
{
    const Moment at = Moment{Date{}, 0} + utcMs / kMsInAMinute;
    return fmt::format("{}T{:02}{:02}{:02}Z", basicDay(at.date), at.minute / 60, at.minute % 60,
                       utcMs % kMsInAMinute / 1000);
}

void addEvent(std::string& file, const CalendarEvent& event, const std::string& stamp)
{
    addLine(file, "BEGIN:VEVENT");
    addLine(file, "UID:" + escaped(event.uid));
    addLine(file, "DTSTAMP:" + stamp);
    if (event.minute) {
        const Moment begins{event.on, *event.minute};
        addLine(file, "DTSTART:" + basicMoment(begins));
        addLine(file, "DTEND:" + basicMoment(begins + kCalendarMinutes));
    } else {
        addLine(file, "DTSTART;VALUE=DATE:" + basicDay(event.on));
        addLine(file, "DTEND;VALUE=DATE:" + basicDay(event.on + 1));
    }
    addLine(file, "SUMMARY:" + escaped(event.summary));
    if (!event.description.empty()) {
        addLine(file, "DESCRIPTION:" + escaped(event.description));
    }
    addLine(file, "TRANSP:TRANSPARENT");
    addLine(file, "END:VEVENT");
}

} // namespace

std::string calendarFile(const std::vector<CalendarEvent>& events, const std::string& name,
                         std::int64_t stampUtcMs)
{
    std::string file;
    addLine(file, "BEGIN:VCALENDAR");
    addLine(file, "VERSION:2.0");
    addLine(file, "PRODID:-//Plumule//Plumule//EN");
    addLine(file, "CALSCALE:GREGORIAN");
    addLine(file, "X-WR-CALNAME:" + escaped(name));
    for (const CalendarEvent& event : events) {
        addEvent(file, event, stampOf(stampUtcMs));
    }
    addLine(file, "END:VCALENDAR");
    return file;
}

} // namespace plumule
