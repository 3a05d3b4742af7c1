#pragma once

#include "core/room/room.h"
#include "core/storage/database.h"

namespace plumule {

// Stores the room, its racks, shelves and places. Writing needs an open transaction.
class RoomRepository
{
public:
    explicit RoomRepository(Database& database)
        : m_database(database)
    {}

    // Throws Damaged in a journal without a room.
    [[nodiscard]] Room room();
    // Racks, shelves and places in walking order.
    [[nodiscard]] RoomLayout layout();
    // Places where no tray stands now, in walking order.
    [[nodiscard]] std::vector<Spot> freeSpots();

    [[nodiscard]] std::optional<Rack> find(RackId rack);
    [[nodiscard]] std::optional<Shelf> find(ShelfId shelf);
    [[nodiscard]] std::optional<Place> find(PlaceId place);
    [[nodiscard]] std::vector<Rack> racks();
    // Of one rack, in walking order; likewise below.
    [[nodiscard]] std::vector<Shelf> shelves(RackId rack);
    [[nodiscard]] std::vector<Place> places(ShelfId shelf);

    void insert(Room& room);
    void insert(Rack& rack);
    void insert(Shelf& shelf);
    void insert(Place& place);
    void update(const Room& room);
    void update(const Rack& rack);
    void update(const Shelf& shelf);
    // A shelf goes with its places, a rack with its shelves.
    void remove(RackId rack);
    void remove(ShelfId shelf);
    void remove(PlaceId place);

    // A rack after the last one, with shelves named 1, 2, …
    Rack addRack(const std::string& name, int shelves, int placesPerShelf);
    // A shelf after the rack's last one.
    Shelf addShelf(RackId rack, const std::string& name, int places);

    // Whether a tray stands there, ever stood there or is planned to, or a climate was measured
    // there.
    [[nodiscard]] bool wasUsed(PlaceId place);
    [[nodiscard]] bool wasUsed(ShelfId shelf);
    [[nodiscard]] bool wasUsed(RackId rack);

private:
    Database& m_database;
};

} // namespace plumule
