#include "core/journal/room/room_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/room/room_reason.h"
#include "core/room/room_repository.h"
#include "core/room/room_rules.h"

#include <algorithm>

namespace plumule {
namespace {

// `siblings` are the racks of the room or the shelves of a rack.
template <class Row>
Done checkName(const std::vector<Row>& siblings, const Row& row, RoomReason missing,
               RoomReason taken)
{
    if (trimmed(row.name).empty()) {
        return fail(ErrorKind::Missing, missing);
    }
    const bool isTaken = std::any_of(siblings.begin(), siblings.end(), [&](const Row& other) {
        return other.id != row.id && isSameName(other.name, row.name);
    });
    if (isTaken) {
        return fail(ErrorKind::Duplicate, taken, row.name);
    }
    return {};
}

std::string shelfWords(RoomRepository& rooms, const Shelf& shelf)
{
    const auto rack = rooms.find(shelf.rack);
    return (rack ? rack->name + " " : std::string()) + shelf.name;
}

Done takePlacesFromEnd(RoomRepository& rooms, const std::vector<Place>& places, std::size_t keep)
{
    for (std::size_t i = places.size(); i > keep; --i) {
        const Place& place = places[i - 1];
        if (rooms.wasUsed(place.id)) {
            return fail(ErrorKind::InUse, RoomReason::PlaceInUse, place.number);
        }
        rooms.remove(place.id);
    }
    return {};
}

Done setPlaces(RoomRepository& rooms, ShelfId shelf, int count)
{
    if (auto checked = checkPlaceCount(count); !checked) {
        return checked;
    }
    const auto places = rooms.places(shelf);
    int number = places.empty() ? 0 : places.back().number;
    for (int i = static_cast<int>(places.size()); i < count; ++i) {
        Place place{{}, shelf, ++number};
        rooms.insert(place);
    }
    return takePlacesFromEnd(rooms, places, static_cast<std::size_t>(count));
}

Done changeShelf(RoomRepository& rooms, const ShelfDraft& draft)
{
    if (!rooms.find(draft.shelf.id)) {
        return fail(ErrorKind::NotFound, RoomReason::ShelfUnknown);
    }
    if (!rooms.find(draft.shelf.rack)) {
        return fail(ErrorKind::NotFound, RoomReason::RackUnknown);
    }
    Shelf changed = draft.shelf;
    changed.name = trimmed(draft.shelf.name);
    return checkName(rooms.shelves(changed.rack), changed, RoomReason::ShelfNameMissing,
                     RoomReason::ShelfNameTaken)
        .and_then([&] { return checkLight(changed); })
        .and_then([&]() -> Done {
            rooms.update(changed);
            return setPlaces(rooms, changed.id, draft.places);
        });
}

} // namespace

Result<RoomLayout> RoomEntries::layout()
{
    return m_ledger.ask([](Database& database) { return RoomRepository(database).layout(); });
}

Result<Room> RoomEntries::changeRoom(const Room& room, const std::vector<ShelfDraft>& shelves)
{
    return m_ledger.record(Intention::ChangeRoom,
                           [&](Database& database, Deed& deed) -> Result<Room> {
                               if (auto checked = checkRoom(room); !checked) {
                                   return passOn(checked);
                               }
                               RoomRepository rooms(database);
                               Room changed = room;
                               changed.id = rooms.room().id;
                               changed.name = trimmed(room.name);
                               changed.currency = trimmed(room.currency);
                               deed.whom = changed.name;
                               rooms.update(changed);
                               for (const ShelfDraft& each : shelves) {
                                   if (auto done = changeShelf(rooms, each); !done) {
                                       return passOn(done);
                                   }
                               }
                               return changed;
                           });
}

Result<Rack> RoomEntries::addRack(const std::string& name, int shelves, int placesPerShelf)
{
    return m_ledger.record(Intention::AddRack, [&](Database& database, Deed& deed) -> Result<Rack> {
        RoomRepository rooms(database);
        Rack rack;
        rack.name = trimmed(name);
        deed.whom = rack.name;
        const Done checked =
            checkName(rooms.racks(), rack, RoomReason::RackNameMissing, RoomReason::RackNameTaken)
                .and_then([&] { return checkShelfCount(shelves); })
                .and_then([&] { return checkPlaceCount(placesPerShelf); });
        if (!checked) {
            return passOn(checked);
        }
        return rooms.addRack(rack.name, shelves, placesPerShelf);
    });
}

Result<Rack> RoomEntries::changeRack(const Rack& rack)
{
    return m_ledger.record(
        Intention::ChangeRack, [&](Database& database, Deed& deed) -> Result<Rack> {
            RoomRepository rooms(database);
            if (!rooms.find(rack.id)) {
                return fail(ErrorKind::NotFound, RoomReason::RackUnknown);
            }
            Rack changed = rack;
            changed.name = trimmed(rack.name);
            deed.whom = changed.name;
            if (auto checked = checkName(rooms.racks(), changed, RoomReason::RackNameMissing,
                                         RoomReason::RackNameTaken);
                !checked) {
                return passOn(checked);
            }
            rooms.update(changed);
            return changed;
        });
}

Done RoomEntries::removeRack(RackId rack)
{
    return m_ledger.record(Intention::RemoveRack, [&](Database& database, Deed& deed) -> Done {
        RoomRepository rooms(database);
        const auto found = rooms.find(rack);
        if (!found) {
            return fail(ErrorKind::NotFound, RoomReason::RackUnknown);
        }
        deed.whom = found->name;
        if (rooms.wasUsed(rack)) {
            return fail(ErrorKind::InUse, RoomReason::RackInUse, found->name);
        }
        rooms.remove(rack);
        return {};
    });
}

Result<Shelf> RoomEntries::addShelf(RackId rack, const std::string& name, int places)
{
    return m_ledger.record(
        Intention::AddShelf, [&](Database& database, Deed& deed) -> Result<Shelf> {
            RoomRepository rooms(database);
            if (!rooms.find(rack)) {
                return fail(ErrorKind::NotFound, RoomReason::RackUnknown);
            }
            Shelf shelf;
            shelf.rack = rack;
            shelf.name = trimmed(name);
            deed.whom = shelfWords(rooms, shelf);
            const Done checked = checkName(rooms.shelves(rack), shelf, RoomReason::ShelfNameMissing,
                                           RoomReason::ShelfNameTaken)
                                     .and_then([&] { return checkPlaceCount(places); });
            if (!checked) {
                return passOn(checked);
            }
            return rooms.addShelf(rack, shelf.name, places);
        });
}

Done RoomEntries::removeShelf(ShelfId shelf)
{
    return m_ledger.record(Intention::RemoveShelf, [&](Database& database, Deed& deed) -> Done {
        RoomRepository rooms(database);
        const auto found = rooms.find(shelf);
        if (!found) {
            return fail(ErrorKind::NotFound, RoomReason::ShelfUnknown);
        }
        deed.whom = shelfWords(rooms, *found);
        if (rooms.wasUsed(shelf)) {
            return fail(ErrorKind::InUse, RoomReason::ShelfInUse, deed.whom);
        }
        rooms.remove(shelf);
        return {};
    });
}

Result<std::vector<Spot>> RoomEntries::freeSpots()
{
    return m_ledger.ask([](Database& database) { return RoomRepository(database).freeSpots(); });
}

} // namespace plumule
