#include "core/journal/climate/climate_entries.h"

#include "core/base/number_text.h"
#include "core/climate/climate_repository.h"
#include "core/climate/tray_days.h"
#include "core/journal/ledger/ledger.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace plumule {
namespace {

// The logger as it is stored, or as it would be.
Result<ClimateLogger> loggerAt(Database& database, const ClimateLogger& at)
{
    ClimateLogger logger = at;
    logger.id = {};
    logger.name = std::string(trimmed(at.name));
    if (logger.shelf) {
        logger.rack.reset();
    }
    if (logger.name.empty()) {
        return fail(ErrorKind::Missing, ClimateReason::NameMissing);
    }
    RoomRepository rooms(database);
    if ((logger.shelf && !rooms.find(*logger.shelf)) ||
        (logger.rack && !rooms.find(*logger.rack))) {
        return fail(ErrorKind::NotFound, ClimateReason::PlaceUnknown);
    }
    logger.lightUnit.reset();
    return ClimateRepository(database).find(logger).value_or(logger);
}

bool hasLight(const LoggerReadings& readings)
{
    return std::any_of(readings.hours.begin(), readings.hours.end(),
                       [](const ClimateHour& hour) { return hour.of(Measure::Light).has_value(); });
}

// The logger's light unit once these readings are in.
Done takeLightUnit(ClimateLogger& logger, const LoggerReadings& readings, LightUnit unit)
{
    if (!hasLight(readings)) {
        return {};
    }
    if (logger.lightUnit && *logger.lightUnit != unit) {
        return fail(ErrorKind::Conflict, ClimateReason::LightUnlike, logger.name);
    }
    logger.lightUnit = unit;
    return {};
}

HourMerge mergeInto(Database& database, const ClimateLogger& logger, const LoggerReadings& readings)
{
    std::vector<ClimateHour> stored;
    if (logger.id.isStored() && readings.first) {
        stored = ClimateRepository(database).hours({logger}, readings.first->date,
                                                   readings.last->date)[logger.id];
    }
    return mergeHours(stored, readings.hours);
}

LoggerOutcome store(Database& database, ClimateLogger& logger, HourMerge& merge)
{
    ClimateRepository climate(database);
    logger.id.isStored() ? climate.update(logger) : climate.insert(logger);
    for (ClimateHour& hour : merge.added) {
        climate.insert(logger.id, hour);
    }
    for (const ClimateHour& hour : merge.changed) {
        climate.update(logger.id, hour);
    }
    return {static_cast<int>(merge.added.size()), static_cast<int>(merge.changed.size()),
            merge.unlike};
}

std::optional<Moment> lightBegan(const std::vector<TrayStage>& stages)
{
    for (const TrayStage& stage : stages) {
        if (stage.stage == Stage::Light) {
            return stage.started();
        }
    }
    return std::nullopt;
}

std::vector<TrayDay> daysOfTray(const TrayRecord& record, const std::vector<Stay>& stays,
                                const RoomLayout& layout, Date today)
{
    const Date until = std::max(record.tray.sownOn, record.tray.endedOn.value_or(today));
    return trayDays(record.tray, until, stays, layout.places, lightBegan(record.stages));
}

std::vector<std::string> namesNear(const RoomClimate& climate, const RoomLayout& layout,
                                   std::optional<ShelfId> shelf)
{
    std::vector<std::string> names;
    for (const ClimateLogger* logger : nearestLoggers(climate, layout, shelf)) {
        names.push_back(logger->name);
    }
    return names;
}

std::string joined(const std::vector<std::string>& names)
{
    std::string text;
    for (const std::string& name : names) {
        text += (text.empty() ? "" : ", ") + name;
    }
    return text;
}

// The days of all its shelves; shelves of which the same is told are one track.
std::vector<ClimateTrack> tracksOf(const RoomClimate& climate, const RoomLayout& layout,
                                   const std::set<std::optional<ShelfId>>& shelves, Date from,
                                   Date to)
{
    std::vector<ClimateTrack> tracks;
    for (const auto& shelf : shelves) {
        ClimateTrack track{joined(namesNear(climate, layout, shelf)), {}};
        for (Date on = from; on <= to; on = on + 1) {
            track.days.push_back(climateAt(climate, layout, shelf, on));
        }
        const bool isTold = std::any_of(tracks.begin(), tracks.end(), [&](const ClimateTrack& one) {
            return one.days == track.days;
        });
        if (!isTold && isAnyKnown(track.days)) {
            tracks.push_back(std::move(track));
        }
    }
    return tracks;
}

std::set<std::optional<ShelfId>> shelvesOf(const std::vector<TrayRecord>& records,
                                           const RoomLayout& layout)
{
    std::set<std::optional<ShelfId>> shelves;
    for (const TrayRecord& record : records) {
        const auto place = std::find_if(layout.places.begin(), layout.places.end(),
                                        [&](const Place& one) { return record.place == one.id; });
        shelves.insert(place == layout.places.end() ? std::nullopt : std::optional(place->shelf));
    }
    return shelves;
}

} // namespace

bool isAnyKnown(const std::vector<ClimateDay>& days)
{
    return std::any_of(days.begin(), days.end(), [](const ClimateDay& day) {
        return day.temperature || day.humidity || day.dli || day.lux;
    });
}

bool TrayClimate::isEmpty() const
{
    return !isAnyKnown(days);
}

Result<std::vector<ClimateLogger>> ClimateEntries::loggers()
{
    return m_ledger.ask([](Database& database) { return ClimateRepository(database).loggers(); });
}

Result<HourMerge> ClimateEntries::foresee(const LoggerReadings& readings,
                                          const LoggerColumns& columns, const ClimateLogger& at)
{
    return m_ledger.ask([&](Database& database) -> Result<HourMerge> {
        auto logger = loggerAt(database, at);
        if (!logger) {
            return passOn(logger);
        }
        if (const Done fits = takeLightUnit(*logger, readings, columns.lightUnit); !fits) {
            return passOn(fits);
        }
        return mergeInto(database, *logger, readings);
    });
}

Result<LoggerOutcome> ClimateEntries::bringIn(const LoggerReadings& readings,
                                              const LoggerColumns& columns, const ClimateLogger& at,
                                              FaultyLines faulty, const std::string& fileName)
{
    if (readings.faulty > 0 && faulty == FaultyLines::Refuse) {
        return fail(ErrorKind::Conflict, ClimateReason::LinesLeftOut, readings.faulty);
    }
    return m_ledger.record(
        Intention::BringInReadings, [&](Database& database, Deed& deed) -> Result<LoggerOutcome> {
            auto logger = loggerAt(database, at);
            if (!logger) {
                return passOn(logger);
            }
            if (const Done fits = takeLightUnit(*logger, readings, columns.lightUnit); !fits) {
                return passOn(fits);
            }
            HourMerge merge = mergeInto(database, *logger, readings);
            if (merge.isEmpty()) {
                return fail(ErrorKind::NothingThere, ClimateReason::NothingNew);
            }
            deed.whom = fileName;
            deed.with = {logger->name, std::to_string(merge.added.size() + merge.changed.size())};
            return store(database, *logger, merge);
        });
}

Result<std::vector<LoggerDays>> ClimateEntries::days(Date from, Date to)
{
    return m_ledger.ask([&](Database& database) {
        const RoomClimate climate = ClimateRepository(database).climate(from, to);
        std::vector<LoggerDays> all;
        for (const ClimateLogger& logger : climate.loggers) {
            LoggerDays days{logger, {}};
            if (const auto found = climate.days.find(logger.id); found != climate.days.end()) {
                for (const auto& [on, day] : found->second) {
                    days.days.push_back(day);
                }
            }
            all.push_back(std::move(days));
        }
        return all;
    });
}

Result<TrayClimate> ClimateEntries::ofTray(TrayId tray)
{
    return m_ledger.ask([&](Database& database) -> Result<TrayClimate> {
        const TrayRepository trays(database);
        const auto record = trays.record(tray);
        if (!record) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        const RoomLayout layout = RoomRepository(database).layout();
        const std::vector<TrayDay> days =
            daysOfTray(*record, trays.stays(tray), layout, m_ledger.clock().today());
        const RoomClimate climate =
            ClimateRepository(database).climate(days.front().on, days.back().on);
        return TrayClimate{record->tray, climateOf(climate, layout, days),
                           growthClimate(climate, layout, days),
                           namesNear(climate, layout, days.back().shelf)};
    });
}

Result<TrialClimate> ClimateEntries::ofTrial(TrialId trial)
{
    return m_ledger.ask([&](Database& database) -> Result<TrialClimate> {
        TrayFilter filter;
        filter.trial = trial;
        const std::vector<TrayRecord> records = TrayRepository(database).records(filter);
        if (records.empty()) {
            return TrialClimate{};
        }
        TrialClimate result{records.front().tray.sownOn, {}};
        Date until = result.sownOn;
        for (const TrayRecord& record : records) {
            result.sownOn = std::min(result.sownOn, record.tray.sownOn);
            until = std::max(until, record.tray.endedOn.value_or(m_ledger.clock().today()));
        }
        until = std::min(until, result.sownOn + kMostTrayDays);
        const RoomLayout layout = RoomRepository(database).layout();
        result.tracks = tracksOf(ClimateRepository(database).climate(result.sownOn, until), layout,
                                 shelvesOf(records, layout), result.sownOn, until);
        return result;
    });
}

Result<std::map<ShelfId, double>> ClimateEntries::lampLight()
{
    return m_ledger.ask([](Database& database) {
        std::map<ShelfId, double> light;
        for (const ShelfPpfd& ppfd : ClimateRepository(database).ppfds()) {
            light[ppfd.shelf] = static_cast<double>(ppfd.milli) / kMilli;
        }
        return light;
    });
}

Done ClimateEntries::setLampLight(const std::map<ShelfId, std::optional<double>>& ppfds)
{
    const bool isBeyond = std::any_of(ppfds.begin(), ppfds.end(), [](const auto& one) {
        return one.second && !(*one.second >= 0 && *one.second <= kMostPpfd);
    });
    if (isBeyond) {
        return fail(ErrorKind::Invalid, ClimateReason::PpfdBeyond,
                    static_cast<std::int64_t>(kMostPpfd));
    }
    return m_ledger.record(
        Intention::MeasureLampLight, [&](Database& database, Deed& deed) -> Done {
            RoomRepository rooms(database);
            std::vector<std::string> names;
            for (const auto& [shelf, ppfd] : ppfds) {
                const auto found = rooms.find(shelf);
                const auto rack = found ? rooms.find(found->rack) : std::nullopt;
                if (!rack) {
                    return fail(ErrorKind::NotFound, ClimateReason::PlaceUnknown);
                }
                names.push_back(rack->name + found->name);
                ClimateRepository(database).setPpfd(
                    shelf, ppfd ? std::optional(std::llround(*ppfd * kMilli)) : std::nullopt);
            }
            deed.whom = joined(names);
            return {};
        });
}

} // namespace plumule
