#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

struct RoomTag;
struct RackTag;
struct ShelfTag;
struct PlaceTag;
using RoomId = Id<RoomTag>;
using RackId = Id<RackTag>;
using ShelfId = Id<ShelfTag>;
using PlaceId = Id<PlaceTag>;

// Which of the day's two rounds.
enum class Slot
{
    Morning,
    Evening
};
[[nodiscard]] const char* toText(Slot slot);
bool fromText(std::string_view text, Slot& slot);

// How amounts are shown. What is stored is SI.
enum class UnitSystem
{
    Metric,
    UsCustomary
};
[[nodiscard]] const char* toText(UnitSystem units);
bool fromText(std::string_view text, UnitSystem& units);

// The grow room and how it is run. A journal has one.
struct Room
{
    RoomId id;
    std::string name;
    UnitSystem units = UnitSystem::Metric;
    std::string currency = "EUR"; // shown beside sums
    int morningMinute = 7 * 60;   // when the morning round is walked
    int eveningMinute = 18 * 60;
    Length trayLength = millimetres(508); // inner, nominal 20 in
    Length trayWidth = millimetres(254);  // inner, nominal 10 in

    bool operator==(const Room&) const = default;

    [[nodiscard]] int minuteOf(Slot slot) const
    {
        return slot == Slot::Morning ? morningMinute : eveningMinute;
    }
    // m² of one tray.
    [[nodiscard]] double trayArea() const
    {
        return inMillimetres(trayLength) * inMillimetres(trayWidth) * 1e-6;
    }
};

// The round that is walked at that minute: the evening's from half-way between the two times.
[[nodiscard]] Slot slotAt(const Room& room, int minute);

struct Rack
{
    RackId id;
    std::string name; // "A"
    int position = 0; // walking order
    bool operator==(const Rack&) const = default;
};

struct Shelf
{
    ShelfId id;
    RackId rack;
    std::string name;                            // "2"
    int position = 0;                            // walking order within the rack
    std::optional<std::int64_t> lightMilliwatts; // of the lamps over the whole shelf
    std::optional<int> lightMinutes;             // a day
    bool operator==(const Shelf&) const = default;
};

struct Place
{
    PlaceId id;
    ShelfId shelf;
    int number = 0; // from 1, walking order
    bool operator==(const Place&) const = default;
};

// A place with the names that lead to it, and its rank in walking order.
struct Spot
{
    PlaceId place;
    RackId rackId;
    ShelfId shelfId;
    std::string rack;
    std::string shelf;
    int number = 0;
    int rank = 0; // 0, 1, 2 … through the whole room
    bool operator==(const Spot&) const = default;
};

// Everything that stands in the room, in walking order.
struct RoomLayout
{
    Room room;
    std::vector<Rack> racks;
    std::vector<Shelf> shelves;
    std::vector<Place> places;

    bool operator==(const RoomLayout&) const = default;

    // All places in walking order: rack, shelf, place.
    [[nodiscard]] std::vector<Spot> spots() const;
    [[nodiscard]] int placesOn(ShelfId shelf) const;
};

// What a new room is made from: racks of equal shelves of equal places.
struct RoomPlan
{
    Room room;
    int racks = 1;
    int shelvesPerRack = 4;
    int placesPerShelf = 4;
};

} // namespace plumule
