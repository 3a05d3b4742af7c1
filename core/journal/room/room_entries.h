#pragma once

#include "core/room/room.h"

namespace plumule {

class Ledger;

// A shelf as it shall be, and how many places it shall have.
struct ShelfDraft
{
    Shelf shelf;
    int places = 0;
};

// The room, its racks, shelves and places. Names may not be empty (Missing) nor be taken by a
// sibling (Duplicate). What trays have stood on is not removed (InUse).
class RoomEntries
{
public:
    explicit RoomEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<RoomLayout> layout();

    // The room and those of its shelves, as one act. Invalid unless morning is before evening and
    // the tray has a size. More places are added at a shelf's end; fewer are taken from the end,
    // unless they were ever used.
    Result<Room> changeRoom(const Room& room, const std::vector<ShelfDraft>& shelves = {});
    // A rack of equal shelves of equal places, after the last one.
    Result<Rack> addRack(const std::string& name, int shelves, int placesPerShelf);
    Result<Rack> changeRack(const Rack& rack);
    Done removeRack(RackId rack);
    Result<Shelf> addShelf(RackId rack, const std::string& name, int places);
    Done removeShelf(ShelfId shelf);

    // Places where no tray stands, in walking order.
    [[nodiscard]] Result<std::vector<Spot>> freeSpots();

private:
    Ledger& m_ledger;
};

} // namespace plumule
