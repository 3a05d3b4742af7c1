#include "app/system_clock.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/storage/scratch.h"
#include "tests/soak/soak_room.h"
#include "tests/soak/soak_times.h"

#include <clocale>
#include <cstdlib>
#include <fmt/format.h>
#include <locale>

namespace plumule {
namespace {

// A clock of one zone at a moment of our choice.
class ZoneClock : public Clock
{
public:
    explicit ZoneClock(std::time_t seconds)
        : m_seconds(seconds)
    {}
    void set(std::time_t seconds) { m_seconds = seconds; }
    [[nodiscard]] Moment now() const override { return app::momentAt(m_seconds); }
    [[nodiscard]] std::int64_t utcMilliseconds() const override
    {
        return std::int64_t{m_seconds} * 1000;
    }

private:
    std::time_t m_seconds;
};

struct ZoneNight
{
    const char* zone;
    std::time_t around; // UTC seconds of something odd
    const char* what;
    int hoursApart; // the room's clock in the hour after less that in the hour before, less one
};

// From the zones' published rules, by `date -u -d`.
constexpr ZoneNight kNights[] = {
    {"Europe/Berlin", 1774746000, "2026-03-29 01:00 UTC: two o'clock becomes three", 1},
    {"Europe/Berlin", 1792890000, "2026-10-25 01:00 UTC: three o'clock becomes two", -1},
    {"America/New_York", 1772953200, "2026-03-08 07:00 UTC: two o'clock becomes three", 1},
    {"Pacific/Apia", 1325239200, "2011-12-30 10:00 UTC: a day is left out", 24},
    {"Pacific/Kiritimati", 1772445600, "2026-03-02 10:00 UTC: midnight at UTC+14", 0},
    {"Pacific/Pago_Pago", 1772449200, "2026-03-02 11:00 UTC: midnight at UTC-11", 0},
};

void useZone(const char* zone)
{
    ::setenv("TZ", zone, 1);
    ::tzset();
}

class SoakClock : public testing::Test
{
protected:
    ~SoakClock() override
    {
        ::unsetenv("TZ");
        ::tzset();
        std::locale::global(std::locale::classic());
        std::setlocale(LC_ALL, "C");
    }

    ScratchFolder folder;
    std::filesystem::path path = folder / "room.plumule";
};

std::int64_t minutesOf(Moment moment)
{
    return std::int64_t{moment.date.days} * kMinutesPerDay + moment.minute;
}

// A tray's diary and waterings through the night, now and then. What is refused must be for a
// reason; what is done must be there.
void writeThroughTheNight(Journal& journal, ZoneClock& clock, std::time_t around)
{
    SowingDraft draft;
    draft.variety = journal.varieties().all().value().front().id;
    draft.medium = journal.media().all().value().front().id;
    clock.set(around - 30 * 3600);
    draft.at = clock.now();
    const auto sown = journal.trays().sow(draft);
    ASSERT_TRUE(sown) << told(sown.error());
    std::size_t notes = 0;
    const int every = soakTimes(30, 10); // minutes
    for (int minute = -12 * 60; minute <= 36 * 60; minute += every) {
        clock.set(around + minute * 60);
        const auto written = journal.trays().writeNote(sown->front(), "looked", clock.now());
        ASSERT_TRUE(written) << told(written.error());
        ++notes;
        const auto round = journal.watering().roundNow();
        ASSERT_TRUE(round) << told(round.error());
        for (const RoundTray& tray : round->trays) {
            if (tray.isAsked && !tray.isDone()) {
                const auto ticked = journal.watering().tick(tray.tray, round->date, round->slot);
                EXPECT_TRUE(ticked) << told(ticked.error());
            }
        }
    }
    ASSERT_TRUE(journal.undo());
    ASSERT_TRUE(journal.redo());
    EXPECT_EQ(journal.trays().sheet(sown->front())->notes.size(), notes);
    EXPECT_TRUE(journal.faults()->empty());
}

TEST_F(SoakClock, OddNightsOfZonesStopNothing)
{
    int nights = 0;
    for (const ZoneNight& night : kNights) {
        SCOPED_TRACE(night.what);
        useZone(night.zone);
        const Moment before = app::momentAt(night.around - 1800);
        const Moment after = app::momentAt(night.around + 1800);
        EXPECT_EQ(minutesOf(after) - minutesOf(before), 60 + 60 * night.hoursApart);
        ZoneClock clock(night.around);
        const auto file = folder / (std::to_string(nights++) + ".plumule");
        RoomPlan plan;
        plan.room.name = "Zone";
        auto journal = Journal::create(file, plan, clock);
        ASSERT_TRUE(journal) << told(journal.error());
        writeThroughTheNight(**journal, clock, night.around);
    }
    sayFigures(fmt::format("{} odd nights of zones", nights));
}

TEST_F(SoakClock, AClockThatIsSetBackStopsNothingAndUndoGoesBackInOrder)
{
    SoakRoom room(path, {date(2026, 3, 2), 6 * 60});
    room.runDays(12);
    ASSERT_FALSE(HasFailure());
    Journal& journal = room.journal();
    const auto trays = journal.trays().list({}).value();
    const Moment real = room.clock().now();
    room.clock().set(real + -40 * kMinutesPerDay);
    ASSERT_TRUE(journal.watering().roundNow());
    // Before its sowing: a note of that time is refused or stands, and then goes first.
    const auto note =
        journal.trays().writeNote(trays.front().record.tray.id, "back", room.clock().now());
    const auto sowing = [&] {
        SowingDraft draft;
        draft.variety = journal.varieties().all().value().front().id;
        draft.medium = journal.media().all().value().front().id;
        draft.at = room.clock().now();
        return journal.trays().sow(draft);
    };
    ASSERT_TRUE(sowing());
    ASSERT_EQ(journal.undo()->intention, "tray.sow");
    if (note) {
        ASSERT_EQ(journal.undo()->intention, "tray.write_note");
    }
    room.clock().set(real);
    room.reopen();
    room.runDays(3);
    room.compare();
    sayFigures("clock set back by 40 days and on again: " + room.figures());
}

TEST_F(SoakClock, ALeapDayAndTheLastYearsAreDaysLikeOthers)
{
    for (const Date begin : {date(2028, 2, 20), date(2100, 2, 20), date(2099, 12, 20)}) {
        SoakRoom room(folder / (toIso(begin) + ".plumule"), {begin, 6 * 60});
        room.runDays(20);
        room.compare();
        sayFigures(room.figures());
    }
}

// No journal holds a day after 2100: what would is refused, and the room goes on to be read.
TEST_F(SoakClock, AfterTheLastDayIsRefusedForAReason)
{
    SoakRoom room(path, {date(2100, 12, 20), 6 * 60});
    room.runDays(4);
    const auto before = room.journal().latestEntries(1).value().front().id;
    room.clock().set({date(2101, 1, 2), 7 * 60});
    const auto trays = room.journal().trays().list({}).value();
    const auto note =
        room.journal().trays().writeNote(trays.front().record.tray.id, "late", room.clock().now());
    ASSERT_FALSE(note);
    EXPECT_EQ(note.error().kind, ErrorKind::Invalid) << told(note.error());
    EXPECT_EQ(room.journal().latestEntries(1).value().front().id, before);
    EXPECT_TRUE(room.journal().watering().roundNow());
    EXPECT_TRUE(room.journal().faults()->empty());
}

// The decimal comma and grouping of German, and the letters i and I of Turkish that are none of
// each other's, for all that C++ writes by its global locale.
class GermanNumbers : public std::numpunct<char>
{
protected:
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};
class TurkishLetters : public std::ctype<char>
{
protected:
    char do_toupper(char c) const override
    {
        return c == 'i' ? c : std::ctype<char>::do_toupper(c);
    }
    char do_tolower(char c) const override
    {
        return c == 'I' ? c : std::ctype<char>::do_tolower(c);
    }
    const char* do_toupper(char* from, const char* to) const override
    {
        for (; from != to; ++from) {
            *from = do_toupper(*from);
        }
        return to;
    }
    const char* do_tolower(char* from, const char* to) const override
    {
        for (; from != to; ++from) {
            *from = do_tolower(*from);
        }
        return to;
    }
};

// The system's own, made for this test where it is not installed and can be made.
bool isUsed(const char* name, const char* source, const std::filesystem::path& folder)
{
    const std::string locale = std::string(name) + ".UTF-8";
    if (std::setlocale(LC_ALL, locale.c_str()) != nullptr) {
        return true;
    }
    if (soakTimes(0, 1) == 0) {
        return false; // it takes a while
    }
    const std::string make = fmt::format("localedef -i {} -f UTF-8 '{}/{}' >/dev/null 2>&1", source,
                                         folder.string(), locale);
    if (std::system(make.c_str()) != 0) {
        return false;
    }
    ::setenv("LOCPATH", folder.c_str(), 1);
    const bool isMade = std::setlocale(LC_ALL, locale.c_str()) != nullptr;
    ::unsetenv("LOCPATH");
    return isMade;
}

TEST_F(SoakClock, OtherLocalesChangeNothing)
{
    for (const char* name : {"de_DE", "tr_TR"}) {
        SCOPED_TRACE(name);
        const bool isSystems = isUsed(name, name, folder.path());
        std::locale::global(std::locale(std::locale(std::locale::classic(), new GermanNumbers),
                                        new TurkishLetters));
        if (isSystems) {
            // A global locale without a name left C's alone, or set it back.
            isUsed(name, name, folder.path());
        }
        SoakRoom room(folder / (std::string(name) + ".plumule"), {date(2026, 3, 2), 6 * 60});
        room.runDays(10);
        room.compare();
        EXPECT_TRUE(room.journal().trays().find("ta001"));
        EXPECT_TRUE(room.journal().trays().find("TA001"));
        const auto copy = folder / (std::string(name) + " copy.plumule");
        EXPECT_TRUE(room.journal().backUpTo(copy, {}));
        sayFigures(std::string(name) +
                   (isSystems ? " (the system's locale and C++'s): "
                              : " (C++'s facets; not installed): ") +
                   room.figures());
        std::locale::global(std::locale::classic());
        std::setlocale(LC_ALL, "C");
    }
}

TEST_F(SoakClock, YearsOfARoomAreAsTheyAreTallied)
{
    SoakRoom room(path, {date(2027, 1, 4), 6 * 60});
    room.runDays(soakTimes(90, 731));
    room.compare();
    sayFigures(room.figures());
}

} // namespace
} // namespace plumule
