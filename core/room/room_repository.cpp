#include "core/room/room_repository.h"

#include "core/storage/table.h"

#include <algorithm>
#include <unordered_set>

namespace plumule {

template <>
struct TableOf<Room>
{
    static constexpr const char* name = "room";
    static constexpr auto columns = std::tuple{column("name", &Room::name),
                                               column("units", &Room::units),
                                               column("currency", &Room::currency),
                                               column("morning_minute", &Room::morningMinute),
                                               column("evening_minute", &Room::eveningMinute),
                                               column("tray_length_um", &Room::trayLength),
                                               column("tray_width_um", &Room::trayWidth)};
};

template <>
struct TableOf<Rack>
{
    static constexpr const char* name = "rack";
    static constexpr auto columns =
        std::tuple{column("name", &Rack::name), column("position", &Rack::position)};
};

template <>
struct TableOf<Shelf>
{
    static constexpr const char* name = "shelf";
    static constexpr auto columns = std::tuple{
        column("rack_id", &Shelf::rack), column("name", &Shelf::name),
        column("position", &Shelf::position), column("light_mw", &Shelf::lightMilliwatts),
        column("light_minutes", &Shelf::lightMinutes)};
};

template <>
struct TableOf<Place>
{
    static constexpr const char* name = "place";
    static constexpr auto columns =
        std::tuple{column("shelf_id", &Place::shelf), column("number", &Place::number)};
};

Room RoomRepository::room()
{
    auto room = selectRow<Room>(m_database, "ORDER BY id LIMIT 1");
    if (!room) {
        throw damagedRow(TableOf<Room>::name, 0);
    }
    return *room;
}

RoomLayout RoomRepository::layout()
{
    RoomLayout layout;
    layout.room = room();
    layout.racks = this->racks();
    layout.shelves = selectRows<Shelf>(
        m_database, "ORDER BY (SELECT r.position FROM rack r WHERE r.id = shelf.rack_id), "
                    "rack_id, position, id");
    layout.places = selectRows<Place>(m_database, "ORDER BY shelf_id, number, id");

    std::unordered_set<RackId> racks;
    for (const Rack& rack : layout.racks) {
        racks.insert(rack.id);
    }
    std::unordered_map<ShelfId, std::size_t> rankOf;
    for (const Shelf& shelf : layout.shelves) {
        if (!racks.contains(shelf.rack)) {
            throw damagedRow(TableOf<Shelf>::name, shelf.id.value);
        }
        rankOf.emplace(shelf.id, rankOf.size());
    }
    for (const Place& place : layout.places) {
        (void)pointedAt(rankOf, place.shelf, TableOf<Place>::name, place.id);
    }
    std::stable_sort(
        layout.places.begin(), layout.places.end(),
        [&](const Place& a, const Place& b) { return rankOf[a.shelf] < rankOf[b.shelf]; });
    return layout;
}

std::vector<Spot> RoomRepository::freeSpots()
{
    std::unordered_set<PlaceId> taken;
    {
        Statement statement =
            m_database.prepare("SELECT DISTINCT place_id FROM stay WHERE to_on IS NULL");
        while (statement.step()) {
            taken.insert(statement.get<PlaceId>(0));
        }
    }
    auto spots = layout().spots();
    std::erase_if(spots, [&](const Spot& spot) { return taken.contains(spot.place); });
    return spots;
}

std::optional<Rack> RoomRepository::find(RackId rack)
{
    return findRow<Rack>(m_database, rack);
}

std::optional<Shelf> RoomRepository::find(ShelfId shelf)
{
    return findRow<Shelf>(m_database, shelf);
}

std::optional<Place> RoomRepository::find(PlaceId place)
{
    return findRow<Place>(m_database, place);
}

std::vector<Rack> RoomRepository::racks()
{
    return selectRows<Rack>(m_database, "ORDER BY position, id");
}

std::vector<Shelf> RoomRepository::shelves(RackId rack)
{
    return selectRows<Shelf>(m_database, "WHERE rack_id = ?1 ORDER BY position, id", rack);
}

std::vector<Place> RoomRepository::places(ShelfId shelf)
{
    return selectRows<Place>(m_database, "WHERE shelf_id = ?1 ORDER BY number, id", shelf);
}

void RoomRepository::insert(Room& room)
{
    insertRow(m_database, room);
}

void RoomRepository::insert(Rack& rack)
{
    insertRow(m_database, rack);
}

void RoomRepository::insert(Shelf& shelf)
{
    insertRow(m_database, shelf);
}

void RoomRepository::insert(Place& place)
{
    insertRow(m_database, place);
}

void RoomRepository::update(const Room& room)
{
    updateRow(m_database, room);
}

void RoomRepository::update(const Rack& rack)
{
    updateRow(m_database, rack);
}

void RoomRepository::update(const Shelf& shelf)
{
    updateRow(m_database, shelf);
}

void RoomRepository::remove(RackId rack)
{
    for (const Shelf& shelf : shelves(rack)) {
        remove(shelf.id);
    }
    deleteRow<Rack>(m_database, rack);
}

void RoomRepository::remove(ShelfId shelf)
{
    for (const Place& place : places(shelf)) {
        remove(place.id);
    }
    deleteRow<Shelf>(m_database, shelf);
}

void RoomRepository::remove(PlaceId place)
{
    deleteRow<Place>(m_database, place);
}

Rack RoomRepository::addRack(const std::string& name, int shelves, int placesPerShelf)
{
    const auto present = racks();
    Rack rack;
    rack.name = name;
    rack.position = present.empty() ? 0 : present.back().position + 1;
    insert(rack);
    for (int shelf = 1; shelf <= shelves; ++shelf) {
        addShelf(rack.id, std::to_string(shelf), placesPerShelf);
    }
    return rack;
}

Shelf RoomRepository::addShelf(RackId rack, const std::string& name, int places)
{
    const auto present = shelves(rack);
    Shelf shelf;
    shelf.rack = rack;
    shelf.name = name;
    shelf.position = present.empty() ? 0 : present.back().position + 1;
    insert(shelf);
    for (int number = 1; number <= places; ++number) {
        Place place{{}, shelf.id, number};
        insert(place);
    }
    return shelf;
}

bool RoomRepository::wasUsed(PlaceId place)
{
    return m_database
        .prepare("SELECT 1 FROM stay WHERE place_id = ?1 "
                 "UNION ALL SELECT 1 FROM planned_tray WHERE place_id = ?1 LIMIT 1")
        .bind(place)
        .step();
}

bool RoomRepository::wasUsed(ShelfId shelf)
{
    const bool isMeasured = m_database
                                .prepare("SELECT 1 FROM climate_logger WHERE shelf_id = ?1 UNION "
                                         "ALL SELECT 1 FROM shelf_ppfd WHERE shelf_id = ?1 LIMIT 1")
                                .bind(shelf)
                                .step();
    const auto standing = places(shelf);
    return isMeasured || std::any_of(standing.begin(), standing.end(),
                                     [&](const Place& place) { return wasUsed(place.id); });
}

bool RoomRepository::wasUsed(RackId rack)
{
    const bool isMeasured =
        m_database.prepare("SELECT 1 FROM climate_logger WHERE rack_id = ?1 LIMIT 1")
            .bind(rack)
            .step();
    const auto standing = shelves(rack);
    return isMeasured || std::any_of(standing.begin(), standing.end(),
                                     [&](const Shelf& shelf) { return wasUsed(shelf.id); });
}

} // namespace plumule
