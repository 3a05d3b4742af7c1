#pragma once

#include "core/base/date.h"
#include "core/exchange/table_keeper.h"

#include <memory>

namespace plumule {

class Database;

// Of every kind but trays. Rows name trays by code, media and varieties by name, servings by
// tasting and code; all of these must be there. Nothing is of a day before the tray's sowing or
// after `today`. Where no time is given it is that of the morning round, or of the round named.
//
//   stages       when a stage of the tray's protocol began, in their order
//   waterings    one a tray and round, but for those between rounds
//   cuts         of trays that grow, numbered on in the order of the file; the last ends the tray
//   residues     of trays that were not discarded
//   scores       of tastings that are open
//   prices       one an item (and medium) and day
//   seed_lots    one a variety and number
//   pieces       one a medium and number
[[nodiscard]] std::unique_ptr<StoringKeeper> keeperFor(TableKind kind, Database& database,
                                                       Date today);

} // namespace plumule
