#include "ui/week/week_calendar.h"

#include "ui/week/week_text.h"
#include "ui/widget/saved_file.h"

#include <QCryptographicHash>
#include <QIODevice>

namespace plumule::ui {
namespace {

// Tells two rooms' entries apart in one calendar.
std::string roomKey(const Room& room)
{
    return QCryptographicHash::hash(QByteArray::fromStdString(room.name), QCryptographicHash::Sha1)
        .toHex()
        .left(12)
        .toStdString();
}

bool isAtRack(WeekTask task)
{
    return task != WeekTask::Wash && task != WeekTask::Order;
}

} // namespace

std::vector<CalendarEvent> calendarOf(const Week& week, const Room& room)
{
    const std::string key = roomKey(room);
    std::vector<CalendarEvent> events;
    for (const WeekDay& day : week.days) {
        for (const WeekEntry& entry : day.entries) {
            CalendarEvent event;
            event.uid = toIso(day.on) + "-" + toText(entry.slot) + "-" + toText(entry.task) + "-" +
                        std::to_string(static_cast<int>(entry.supply)) + "-" +
                        std::to_string(entry.subject) + "@" + key + ".plumule";
            event.on = day.on;
            if (isAtRack(entry.task)) {
                event.minute = room.minuteOf(entry.slot);
            }
            event.summary = entryText(entry).toStdString();
            event.description = behindText(entry).toStdString();
            events.push_back(std::move(event));
        }
    }
    return events;
}

Done writeWeekCalendar(const Week& week, const Room& room, std::int64_t stampUtcMs,
                       const QString& path)
{
    const std::string text = calendarFile(calendarOf(week, room), room.name, stampUtcMs);
    return saveFile(path, [&text](QIODevice& device) {
        return device.write(text.data(), static_cast<qint64>(text.size())) ==
               static_cast<qint64>(text.size());
    });
}

} // namespace plumule::ui
