#include "core/week/calendar_file.h"

#include <libical/ical.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>

namespace plumule {
namespace {

struct FreeComponent
{
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Calendar = std::unique_ptr<icalcomponent, FreeComponent>;

// The file as libical reads it: a parser of another house.
Calendar read(const std::string& file)
{
    return Calendar(icalparser_parse_string(file.c_str()));
}

std::vector<icalcomponent*> eventsIn(const Calendar& calendar)
{
    std::vector<icalcomponent*> events;
    for (auto* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
         event != nullptr;
         event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
        events.push_back(event);
    }
    return events;
}

std::vector<std::string> linesOf(const std::string& file)
{
    std::vector<std::string> lines;
    for (std::size_t from = 0; from < file.size();) {
        const std::size_t end = file.find("\r\n", from);
        if (end == std::string::npos) {
            ADD_FAILURE() << "a line that does not end with CR LF";
            break;
        }
        lines.push_back(file.substr(from, end - from));
        from = end + 2;
    }
    return lines;
}

// 2026-11-28 10:15:30 UTC.
const std::int64_t kStamp =
    (std::int64_t{date(2026, 11, 28).days} * kMinutesPerDay + 10 * 60 + 15) * 60'000 + 30'000;

std::string fileOf(const std::vector<CalendarEvent>& events)
{
    return calendarFile(events, "A room, with a comma", kStamp);
}

TEST(CalendarFile, ADayAndARoundAreReadBackByLibical)
{
    CalendarEvent wash{"a@room", date(2026, 12, 31), std::nullopt, "Wash 3 Steel mesh", ""};
    CalendarEvent cut{"b@room", date(2026, 12, 1), 7 * 60 + 5, "Cut 4 Radish, rose", "RD001"};
    const Calendar calendar = read(fileOf({wash, cut}));
    ASSERT_NE(calendar, nullptr);
    EXPECT_EQ(icalcomponent_isa(calendar.get()), ICAL_VCALENDAR_COMPONENT);
    EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0);
    EXPECT_TRUE(icalrestriction_check(calendar.get()))
        << "a property that RFC 5545 wants is missing";
    const auto events = eventsIn(calendar);
    ASSERT_EQ(events.size(), 2U);
    const icaltimetype day = icalcomponent_get_dtstart(events[0]);
    EXPECT_TRUE(icaltime_is_date(day));
    EXPECT_STREQ(icaltime_as_ical_string(day), "20261231");
    EXPECT_STREQ(icaltime_as_ical_string(icalcomponent_get_dtend(events[0])), "20270101");
    const icaltimetype round = icalcomponent_get_dtstart(events[1]);
    EXPECT_FALSE(icaltime_is_date(round));
    EXPECT_FALSE(icaltime_is_utc(round)) << "the room's civil time";
    EXPECT_STREQ(icaltime_as_ical_string(round), "20261201T070500");
    EXPECT_STREQ(icaltime_as_ical_string(icalcomponent_get_dtend(events[1])), "20261201T072000");
    EXPECT_STREQ(icalcomponent_get_uid(events[1]), "b@room");
    EXPECT_STREQ(icalcomponent_get_summary(events[1]), "Cut 4 Radish, rose");
    EXPECT_STREQ(icalcomponent_get_description(events[1]), "RD001");
    EXPECT_STREQ(icaltime_as_ical_string(icalcomponent_get_dtstamp(events[1])), "20261128T101530Z");
}

TEST(CalendarFile, TextsComeBackAsTheyWere)
{
    const std::vector<std::string> texts = {"Radish; rose, \"big\" \\ small",
                                            "two\nlines",
                                            "Keimblätter öffnen: 80 mm ✓",
                                            "A:B=C",
                                            "\\n is no line break",
                                            std::string(300, 'x'),
                                            "Spinat – früh " + std::string(80, 'y')};
    for (const std::string& text : texts) {
        CalendarEvent event{"a@room", date(2026, 12, 1), std::nullopt, text, text};
        const Calendar calendar = read(fileOf({event}));
        ASSERT_NE(calendar, nullptr) << text;
        EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0) << text;
        const auto events = eventsIn(calendar);
        ASSERT_EQ(events.size(), 1U) << text;
        EXPECT_EQ(icalcomponent_get_summary(events[0]), text);
        EXPECT_EQ(icalcomponent_get_description(events[0]), text);
    }
}

TEST(CalendarFile, ControlCharactersAreLeftOut)
{
    CalendarEvent event{"a@room", date(2026, 12, 1), std::nullopt,
                        "a\rb\x01"
                        "c\td\x7F",
                        ""};
    const Calendar calendar = read(fileOf({event}));
    ASSERT_EQ(eventsIn(calendar).size(), 1U);
    EXPECT_STREQ(icalcomponent_get_summary(eventsIn(calendar)[0]), "abcd");
}

TEST(CalendarFile, NoLineIsLongerThan75OctetsNorFoldedWithinACharacter)
{
    for (int length = 60; length < 90; ++length) {
        std::string text(static_cast<std::size_t>(length), 'a');
        for (int i = 0; i < 60; ++i) {
            text += "ö✓";
        }
        CalendarEvent event{"a@room", date(2026, 12, 1), std::nullopt, text, ""};
        const std::string file = fileOf({event});
        for (const std::string& line : linesOf(file)) {
            EXPECT_LE(line.size(), 75U);
            const bool goesOn = line.starts_with(' ');
            const auto first = static_cast<unsigned char>(line[goesOn ? 1 : 0]);
            EXPECT_NE(first & 0xC0U, 0x80U) << "folded within a character";
        }
        const Calendar calendar = read(file);
        EXPECT_EQ(icalcomponent_get_summary(eventsIn(calendar).at(0)), text);
    }
}

TEST(CalendarFile, AWeekWithoutTasksIsACalendarAllTheSame)
{
    const Calendar calendar = read(fileOf({}));
    ASSERT_NE(calendar, nullptr);
    EXPECT_TRUE(eventsIn(calendar).empty());
    EXPECT_EQ(linesOf(fileOf({})).front(), "BEGIN:VCALENDAR");
    EXPECT_EQ(linesOf(fileOf({})).back(), "END:VCALENDAR");
}

} // namespace
} // namespace plumule
