#pragma once

#include "core/rack/rack.h"
#include "core/tray/tray_move.h"

namespace plumule {

class Ledger;

// What stands where, and how it is moved about.
class RackEntries
{
public:
    explicit RackEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Racks, shelves and places with the trays on them now, the light of the shelves, and the
    // places that come free.
    [[nodiscard]] Result<RoomRacks> racks();
    // All of these as one act, or none; errors as moveTrays().
    Done move(const std::vector<TrayMove>& moves, Moment at);

private:
    Ledger& m_ledger;
};

} // namespace plumule
