#include "core/log/event_log.h"

#include "core/base/date.h"

#include <array>
#include <fmt/format.h>
#include <fstream>

namespace plumule {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t kMostBytes = std::uintmax_t{128} * 1024; // of each of the two files

const char* wordOf(LogEvent event)
{
    switch (event) {
    case LogEvent::Opened:
        return "opened";
    case LogEvent::OpenedToRead:
        return "opened-to-read";
    case LogEvent::NotOpened:
        return "not-opened";
    case LogEvent::Refused:
        return "refused";
    case LogEvent::EndedUnexpectedly:
        return "ended-unexpectedly";
    }
    return "";
}

// In the order of ErrorKind.
constexpr std::array kKinds = {
    "missing",       "invalid",        "ambiguous",     "not-found",     "duplicate",
    "conflict",      "in-use",         "changed-since", "nothing-there", "too-few",
    "not-estimable", "no-convergence", "not-a-journal", "newer-version", "damaged",
    "not-writable",  "already-open",   "read-only",     "disk-full",     "file-gone",
    "unreadable",    "cancelled",
};
static_assert(kKinds.size() == static_cast<std::size_t>(ErrorKind::Cancelled) + 1);

// A name may hold a line's end: then it is not one.
std::string inOneLine(std::string text)
{
    for (char& c : text) {
        if (static_cast<unsigned char>(c) < 0x20) {
            c = '?';
        }
    }
    return text;
}

std::string timeText(std::int64_t utcMilliseconds)
{
    constexpr std::int64_t kSecondsPerDay = 86'400;
    const std::int64_t seconds = utcMilliseconds / 1000;
    const Date day{static_cast<int>(seconds / kSecondsPerDay)};
    const auto within = static_cast<int>(seconds % kSecondsPerDay);
    return fmt::format("{}T{:02}:{:02}:{:02}Z", toIso(day), within / 3600, within / 60 % 60,
                       within % 60);
}

} // namespace

EventLog::EventLog(fs::path folder)
    : m_folder(std::move(folder))
{
    std::error_code ignored;
    fs::create_directories(m_folder, ignored);
}

void EventLog::makeRoom() const
{
    std::error_code failed;
    if (fs::file_size(file(), failed) > kMostBytes && !failed) {
        fs::rename(file(), m_folder / "events.old.log", failed);
    }
}

void EventLog::write(LogEvent event, std::int64_t utcMilliseconds, const fs::path& journal,
                     const std::string& what, const std::optional<Error>& why) const
{
    makeRoom();
    std::string line = fmt::format("{} {} \"{}\"", timeText(utcMilliseconds), wordOf(event),
                                   inOneLine(journal.filename().string()));
    if (!what.empty()) {
        line += ' ' + inOneLine(what);
    }
    if (why) {
        line += fmt::format(" {} {}-{}", kKinds[static_cast<std::size_t>(why->kind)],
                            why->reason.family(), why->reason.code());
    }
    std::ofstream(file(), std::ios::app) << line + '\n';
}

} // namespace plumule
