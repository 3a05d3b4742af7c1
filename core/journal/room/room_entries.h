#pragma once

#include "core/room/room.h"

namespace plumule {

class Ledger;

// The room, its racks, shelves and places. Names may not be empty (Missing) nor be taken by a
// sibling (Duplicate). What trays have stood on is not removed (InUse).
class RoomEntries
{
public:
    explicit RoomEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<RoomLayout> layout();

    // Invalid unless morning is before evening and the tray has a size.
    Result<Room> changeRoom(const Room& room);
    // A rack of equal shelves of equal places, after the last one.
    Result<Rack> addRack(const std::string& name, int shelves, int placesPerShelf);
    Result<Rack> changeRack(const Rack& rack);
    Done removeRack(RackId rack);
    Result<Shelf> addShelf(RackId rack, const std::string& name, int places);
    Result<Shelf> changeShelf(const Shelf& shelf);
    Done removeShelf(ShelfId shelf);
    // More places are added at the end; fewer are taken from the end, unless they were ever used.
    Done setPlaces(ShelfId shelf, int count);

    // Places where no tray stands, in walking order.
    [[nodiscard]] Result<std::vector<Spot>> freeSpots();

private:
    Ledger& m_ledger;
};

} // namespace plumule
