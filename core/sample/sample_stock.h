#pragma once

#include "core/medium/medium.h"
#include "core/room/room.h"
#include "core/sample/sample_tables.h"
#include "core/trial/trial.h"
#include "core/variety/variety.h"

namespace plumule {

class Database;

// What trays are sown with and stand on, by the names that the tables use.
struct SampleStock
{
    Room room;
    std::map<std::string, PlaceId> places; // "rack/shelf/number"
    std::map<std::string, Protocol> protocols;
    std::map<std::string, SeedLotId> lots; // "variety/lot"
    std::map<std::string, Medium> media;
    std::map<std::string, PieceId> pieces; // "medium/number"
    std::map<std::string, TrialId> trials;
};

// Takes the starter library and the starter room out, and stores the demo's.
[[nodiscard]] SampleStock storeSampleStock(Database& database, SampleTables& tables);

} // namespace plumule
