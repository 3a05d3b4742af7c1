#include "core/climate/climate_days.h"

#include "core/climate/climate_sums.h"

#include <algorithm>

namespace plumule {
namespace {

// Gathers the hours of one day.
class DaySums
{
public:
    void add(const ClimateHour& hour)
    {
        ++m_hours;
        for (const Measure measure : kMeasures) {
            if (const auto& readings = hour.of(measure)) {
                m_measures[static_cast<std::size_t>(measure)].add(*readings);
            }
        }
        const auto& temperature = hour.of(Measure::Temperature);
        const auto& humidity = hour.of(Measure::Humidity);
        if (temperature && humidity) {
            m_vpd += vapourPressureDeficit(static_cast<double>(temperature->mean) / kMilli,
                                           static_cast<double>(humidity->mean) / kMilli);
            ++m_vpdHours;
        }
    }

    [[nodiscard]] ClimateDay day(Date on, std::optional<LightUnit> unit) const
    {
        ClimateDay day;
        day.on = on;
        day.hours = m_hours;
        day.temperature = meanOf(Measure::Temperature);
        day.humidity = meanOf(Measure::Humidity);
        if (m_vpdHours >= kHoursForMean) {
            day.vpd = m_vpd / m_vpdHours;
        }
        const Sum& light = m_measures[static_cast<std::size_t>(Measure::Light)];
        if (unit == LightUnit::Ppfd && light.hours >= kHoursForSum) {
            day.dli = dailyLight(light.means / kMilli, 1);
        }
        if (unit == LightUnit::Lux && light.hours >= kHoursForMean) {
            day.lux = light.means / light.hours / kMilli;
        }
        return day;
    }

private:
    struct Sum
    {
        int hours = 0;
        double means = 0;
        std::int64_t low = 0;
        std::int64_t high = 0;

        void add(const HourReadings& hour)
        {
            low = hours == 0 ? hour.low : std::min(low, hour.low);
            high = hours == 0 ? hour.high : std::max(high, hour.high);
            means += static_cast<double>(hour.mean);
            ++hours;
        }
    };

    [[nodiscard]] std::optional<DayMean> meanOf(Measure measure) const
    {
        const Sum& sum = m_measures[static_cast<std::size_t>(measure)];
        if (sum.hours < kHoursForMean) {
            return std::nullopt;
        }
        return DayMean{sum.means / sum.hours / kMilli, static_cast<double>(sum.low) / kMilli,
                       static_cast<double>(sum.high) / kMilli};
    }

    int m_hours = 0;
    std::array<Sum, kMeasures.size()> m_measures;
    double m_vpd = 0;
    int m_vpdHours = 0;
};

// How near a logger is: 0 on the shelf, 1 on its rack, 2 in the room; none where it hangs at
// another shelf or rack.
std::optional<int> distanceOf(const ClimateLogger& logger, std::optional<ShelfId> shelf,
                              std::optional<RackId> rack)
{
    if (logger.shelf) {
        return shelf == logger.shelf ? std::optional(0) : std::nullopt;
    }
    if (logger.rack) {
        return rack == logger.rack ? std::optional(1) : std::nullopt;
    }
    return 2;
}

std::optional<RackId> rackOf(const RoomLayout& layout, std::optional<ShelfId> shelf)
{
    for (const Shelf& one : layout.shelves) {
        if (one.id == shelf) {
            return one.rack;
        }
    }
    return std::nullopt;
}

const ClimateDay* dayOfLogger(const RoomClimate& climate, ClimateLoggerId logger, Date on)
{
    const auto days = climate.days.find(logger);
    if (days == climate.days.end()) {
        return nullptr;
    }
    const auto day = days->second.find(on);
    return day == days->second.end() ? nullptr : &day->second;
}

template <class T>
void fill(std::optional<T>& known, const std::optional<T>& from)
{
    if (!known) {
        known = from;
    }
}

void addLampLight(ClimateDay& day, const RoomClimate& climate, const RoomLayout& layout,
                  ShelfId shelf)
{
    const auto lamp = climate.lampPpfd.find(shelf);
    for (const Shelf& one : layout.shelves) {
        if (lamp != climate.lampPpfd.end() && one.id == shelf && one.lightMinutes) {
            day.dli = dailyLight(lamp->second, *one.lightMinutes / 60.0);
            day.isLightOfLamp = true;
        }
    }
}

// `near`: the shelf's nearestLoggers().
ClimateDay dayNear(const std::vector<const ClimateLogger*>& near, const RoomClimate& climate,
                   const RoomLayout& layout, std::optional<ShelfId> shelf, Date on)
{
    ClimateDay result;
    result.on = on;
    for (const ClimateLogger* logger : near) {
        const ClimateDay* day = dayOfLogger(climate, logger->id, on);
        if (day == nullptr) {
            continue;
        }
        result.hours = std::max(result.hours, day->hours);
        fill(result.temperature, day->temperature);
        fill(result.humidity, day->humidity);
        fill(result.vpd, day->vpd);
        if (logger->shelf || logger->rack) {
            fill(result.dli, day->dli);
            fill(result.lux, day->lux);
        }
    }
    if (!result.dli && shelf) {
        addLampLight(result, climate, layout, *shelf);
    }
    return result;
}

// The mean of what is known, where that is enough of `of` days.
class KnownMean
{
public:
    void add(const std::optional<double>& value)
    {
        if (value) {
            m_sum += *value;
            ++m_days;
        }
    }
    [[nodiscard]] std::optional<double> over(std::size_t days) const
    {
        return m_days > 0 && m_days >= kShareOfDays * static_cast<double>(days)
                   ? std::optional(m_sum / m_days)
                   : std::nullopt;
    }

private:
    double m_sum = 0;
    int m_days = 0;
};

} // namespace

std::vector<ClimateDay> daysOf(const std::vector<ClimateHour>& hours, std::optional<LightUnit> unit)
{
    std::vector<ClimateDay> days;
    for (auto hour = hours.begin(); hour != hours.end();) {
        const Date on = hour->on;
        DaySums sums;
        for (; hour != hours.end() && hour->on == on; ++hour) {
            sums.add(*hour);
        }
        days.push_back(sums.day(on, unit));
    }
    return days;
}

std::vector<const ClimateLogger*>
nearestLoggers(const RoomClimate& climate, const RoomLayout& layout, std::optional<ShelfId> shelf)
{
    const auto rack = rackOf(layout, shelf);
    std::vector<const ClimateLogger*> near;
    for (const ClimateLogger& logger : climate.loggers) {
        if (distanceOf(logger, shelf, rack)) {
            near.push_back(&logger);
        }
    }
    std::stable_sort(near.begin(), near.end(), [&](const auto* a, const auto* b) {
        return std::pair(distanceOf(*a, shelf, rack), a->name) <
               std::pair(distanceOf(*b, shelf, rack), b->name);
    });
    return near;
}

ClimateDay climateAt(const RoomClimate& climate, const RoomLayout& layout,
                     std::optional<ShelfId> shelf, Date on)
{
    return dayNear(nearestLoggers(climate, layout, shelf), climate, layout, shelf, on);
}

std::vector<ClimateDay> climateOf(const RoomClimate& climate, const RoomLayout& layout,
                                  const std::vector<TrayDay>& days)
{
    std::vector<ClimateDay> result;
    result.reserve(days.size());
    // A tray stands for many days on one shelf.
    std::optional<ShelfId> shelf;
    auto near = nearestLoggers(climate, layout, shelf);
    for (const TrayDay& day : days) {
        if (day.shelf != shelf) {
            shelf = day.shelf;
            near = nearestLoggers(climate, layout, shelf);
        }
        result.push_back(dayNear(near, climate, layout, day.shelf, day.on));
        if (!day.isInLight) {
            result.back().dli.reset();
            result.back().lux.reset();
            result.back().isLightOfLamp = false;
        }
    }
    return result;
}

GrowthClimate growthClimate(const std::vector<ClimateDay>& days, int daysInLight)
{
    KnownMean temperature;
    KnownMean vpd;
    KnownMean dli;
    for (const ClimateDay& day : days) {
        temperature.add(day.temperature ? std::optional(day.temperature->mean) : std::nullopt);
        vpd.add(day.vpd);
        dli.add(day.dli);
    }
    return {temperature.over(days.size()), vpd.over(days.size()),
            dli.over(static_cast<std::size_t>(std::max(0, daysInLight)))};
}

} // namespace plumule
