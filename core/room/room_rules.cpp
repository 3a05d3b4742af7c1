#include "core/room/room_rules.h"

#include "core/base/enum_text.h"
#include "core/base/letter_case.h"
#include "core/base/number_text.h"
#include "core/room/room_reason.h"

#include <algorithm>
#include <unordered_map>

namespace plumule {

const char* toText(Slot slot)
{
    return slot == Slot::Morning ? "morning" : "evening";
}

bool fromText(std::string_view text, Slot& slot)
{
    return matchText(text, std::array{Slot::Morning, Slot::Evening}, slot);
}

const char* toText(UnitSystem units)
{
    return units == UnitSystem::Metric ? "metric" : "us_customary";
}

bool fromText(std::string_view text, UnitSystem& units)
{
    return matchText(text, std::array{UnitSystem::Metric, UnitSystem::UsCustomary}, units);
}

Slot slotAt(const Room& room, int minute)
{
    const int halfWay = (room.morningMinute + room.eveningMinute) / 2;
    return minute < halfWay ? Slot::Morning : Slot::Evening;
}

std::vector<Spot> RoomLayout::spots() const
{
    std::unordered_map<ShelfId, std::vector<const Place*>> placesOfShelf;
    for (const Place& place : places) {
        placesOfShelf[place.shelf].push_back(&place);
    }
    std::vector<Spot> all;
    all.reserve(places.size());
    for (const Rack& rack : racks) {
        for (const Shelf& shelf : shelves) {
            if (shelf.rack != rack.id) {
                continue;
            }
            auto& standing = placesOfShelf[shelf.id];
            std::sort(standing.begin(), standing.end(),
                      [](const Place* a, const Place* b) { return a->number < b->number; });
            for (const Place* place : standing) {
                all.push_back({place->id, rack.id, shelf.id, rack.name, shelf.name, place->number,
                               static_cast<int>(all.size())});
            }
        }
    }
    return all;
}

int RoomLayout::placesOn(ShelfId shelf) const
{
    return static_cast<int>(std::count_if(
        places.begin(), places.end(), [&](const Place& place) { return place.shelf == shelf; }));
}

Done checkRoom(const Room& room)
{
    if (trimmed(room.name).empty()) {
        return fail(ErrorKind::Missing, RoomReason::NameMissing);
    }
    if (trimmed(room.currency).empty()) {
        return fail(ErrorKind::Missing, RoomReason::CurrencyMissing);
    }
    const bool inDay = room.morningMinute >= 0 && room.eveningMinute < kMinutesPerDay;
    if (!inDay || room.morningMinute >= room.eveningMinute) {
        return fail(ErrorKind::Invalid, RoomReason::RoundTimes);
    }
    if (room.trayLength <= Length{} || room.trayWidth <= Length{}) {
        return fail(ErrorKind::Invalid, RoomReason::TraySize);
    }
    return {};
}

Done checkLight(const Shelf& shelf)
{
    if (shelf.lightMilliwatts.value_or(0) < 0) {
        return fail(ErrorKind::Invalid, RoomReason::LightPower);
    }
    const int minutes = shelf.lightMinutes.value_or(0);
    if (minutes < 0 || minutes > kMinutesPerDay) {
        return fail(ErrorKind::Invalid, RoomReason::LightMinutes);
    }
    return {};
}

Done checkShelfCount(int shelves)
{
    if (shelves < 0 || shelves > kMostShelves) {
        return fail(ErrorKind::Invalid, RoomReason::ShelfCount, kMostShelves);
    }
    return {};
}

Done checkPlaceCount(int places)
{
    if (places < 0 || places > kMostPlaces) {
        return fail(ErrorKind::Invalid, RoomReason::PlaceCount, kMostPlaces);
    }
    return {};
}

bool isSameName(std::string_view a, std::string_view b)
{
    return isAlike(trimmed(a), trimmed(b));
}

std::string rackNameAt(int position)
{
    std::string name;
    for (int rest = position + 1; rest > 0; rest = (rest - 1) / 26) {
        name.insert(name.begin(), static_cast<char>('A' + (rest - 1) % 26));
    }
    return name;
}

} // namespace plumule
