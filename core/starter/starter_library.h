#pragma once

#include "core/room/room.h"

namespace plumule {

class Database;

// Builds the room of the plan and stores the starter library: varieties with protocols, generic
// media, water recipes, labour minutes. Varieties and media carry their source or "from
// memory". Inside a transaction.
void storeStarterLibrary(Database& database, const RoomPlan& plan);

} // namespace plumule
