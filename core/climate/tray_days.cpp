#include "core/climate/tray_days.h"

#include <algorithm>

namespace plumule {
namespace {

std::optional<ShelfId> shelfOfPlace(const std::vector<Place>& places, PlaceId place)
{
    const auto found = std::find_if(places.begin(), places.end(),
                                    [place](const Place& one) { return one.id == place; });
    return found == places.end() ? std::nullopt : std::optional(found->shelf);
}

const Stay* stayOn(const std::vector<Stay>& stays, Date on)
{
    const Stay* last = nullptr;
    for (const Stay& stay : stays) {
        const bool isThen = stay.fromOn <= on && (!stay.toOn || on <= *stay.toOn);
        if (isThen && (last == nullptr || std::pair(last->fromOn, last->fromMinute) <
                                              std::pair(stay.fromOn, stay.fromMinute))) {
            last = &stay;
        }
    }
    return last;
}

} // namespace

std::vector<TrayDay> trayDays(const Tray& tray, Date until, const std::vector<Stay>& stays,
                              const std::vector<Place>& places, std::optional<Moment> lightFrom)
{
    std::vector<TrayDay> days;
    const Date last = std::min(until, tray.sownOn + kMostTrayDays);
    for (Date on = tray.sownOn; on <= last; on = on + 1) {
        const Stay* stay = stayOn(stays, on);
        TrayDay day;
        day.on = on;
        day.shelf = stay != nullptr ? shelfOfPlace(places, stay->place) : std::nullopt;
        day.isInLight = lightFrom && lightFrom->date < on && on < until;
        days.push_back(day);
    }
    return days;
}

GrowthClimate growthClimate(const RoomClimate& climate, const RoomLayout& layout,
                            const std::vector<TrayDay>& days)
{
    const auto inLight =
        std::count_if(days.begin(), days.end(), [](const TrayDay& day) { return day.isInLight; });
    return growthClimate(climateOf(climate, layout, days), static_cast<int>(inLight));
}

} // namespace plumule
