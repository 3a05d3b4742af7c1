#include "ui/climate/climate_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

class ClimateTr
{
    Q_DECLARE_TR_FUNCTIONS(Climate)
};

} // namespace

QString sourceWords(const TrayClimate& climate)
{
    QStringList names;
    for (const std::string& name : climate.loggers) {
        names << QString::fromStdString(name);
    }
    QStringList words;
    if (!names.isEmpty()) {
        words << ClimateTr::tr("Told by the nearest logger that knows a day: %1.")
                     .arg(names.join(", "));
    }
    const auto has = [&](auto predicate) {
        return std::any_of(climate.days.begin(), climate.days.end(), predicate);
    };
    if (has([](const ClimateDay& day) { return day.isLightOfLamp; })) {
        words << ClimateTr::tr("Light is what was measured under the shelf's lamps, times the "
                               "hours that they burn.");
    } else if (has([](const ClimateDay& day) { return day.lux.has_value(); })) {
        words << ClimateTr::tr("Light was written down in lux, which are not converted: how many "
                               "photons they stand for depends on the lamp.");
    }
    return words.join(' ');
}

QString missingWords(const std::vector<ClimateDay>& days)
{
    const auto missing = std::count_if(days.begin(), days.end(),
                                       [](const ClimateDay& day) { return !day.temperature; });
    return missing == 0 ? QString()
                        : ClimateTr::tr("Of %n day(s) the temperature is not known.", nullptr,
                                        static_cast<int>(missing));
}

QString ruleWords()
{
    return ClimateTr::tr("A day's mean needs %1 of its 24 hours, its light %2.")
        .arg(kHoursForMean)
        .arg(kHoursForSum);
}

QString placeName(const ClimateLogger& logger, const RoomLayout& layout)
{
    const auto rackName = [&](RackId id) {
        for (const Rack& rack : layout.racks) {
            if (rack.id == id) {
                return QString::fromStdString(rack.name);
            }
        }
        return QString();
    };
    for (const Shelf& shelf : layout.shelves) {
        if (logger.shelf == shelf.id) {
            return ClimateTr::tr("shelf %1")
                .arg(rackName(shelf.rack) + QString::fromStdString(shelf.name));
        }
    }
    return logger.rack ? ClimateTr::tr("rack %1").arg(rackName(*logger.rack))
                       : ClimateTr::tr("the whole room");
}

QString clockName(LoggerClock clock)
{
    switch (clock) {
    case LoggerClock::Room:
        return ClimateTr::tr("the room's clock, summer time too");
    case LoggerClock::Utc:
        return ClimateTr::tr("universal time (UTC)");
    case LoggerClock::StandardTime:
        return ClimateTr::tr("winter time all year");
    }
    return {};
}

QString clockWords(LoggerClock clock)
{
    if (clock == LoggerClock::Room) {
        return ClimateTr::tr("Times are taken as they stand, as of the room's clock: in spring an "
                             "hour is missing, in autumn two make one. A time that says its own "
                             "offset from UTC is turned by that.");
    }
    return ClimateTr::tr("Times are turned into those of the room's clock by the zone that this "
                         "computer is set to: in spring an hour is missing, in autumn two make "
                         "one.");
}

QString nameOf(DayOrder order)
{
    switch (order) {
    case DayOrder::YearMonthDay:
        return ClimateTr::tr("year, month, day");
    case DayOrder::DayMonthYear:
        return ClimateTr::tr("day, month, year");
    case DayOrder::MonthDayYear:
        return ClimateTr::tr("month, day, year");
    }
    return {};
}

QString dayAndTimeText(Moment at)
{
    return QStringLiteral("%1, %2").arg(longDateText(at.date), clockText(at.minute));
}

QStringList readingWords(const LoggerReadings& readings)
{
    if (!readings.first) {
        return {ClimateTr::tr("No line of the file can be read.")};
    }
    QStringList words{ClimateTr::tr("%n reading(s), %1 to %2 on the room's clock.", nullptr,
                                    static_cast<int>(readings.readings))
                          .arg(dayAndTimeText(*readings.first), dayAndTimeText(*readings.last))};
    if (readings.repeated > 0) {
        words << ClimateTr::tr("Said again by another line, and counted once: %n line(s).", nullptr,
                               static_cast<int>(readings.repeated));
    }
    if (readings.faulty > 0) {
        words << ClimateTr::tr("Can't be read: %n line(s).", nullptr,
                               static_cast<int>(readings.faulty));
    }
    return words;
}

QStringList mergeWords(const HourMerge& merge)
{
    QStringList words{
        ClimateTr::tr("New: %n hour(s).", nullptr, static_cast<int>(merge.added.size()))};
    if (merge.same > 0) {
        words << ClimateTr::tr("In the journal already: %n hour(s).", nullptr, merge.same);
    }
    if (!merge.changed.empty()) {
        words << ClimateTr::tr("Made fuller in the journal: %n hour(s).", nullptr,
                               static_cast<int>(merge.changed.size()));
    }
    if (merge.unlike > 0) {
        words << ClimateTr::tr("Told otherwise in the journal, and left as it is there: %n "
                               "hour(s). Is it the same logger?",
                               nullptr, merge.unlike);
    }
    return words;
}

} // namespace plumule::ui
