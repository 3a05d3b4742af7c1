#pragma once

#include "core/base/result.h"
#include "core/journal/ledger/intention.h"
#include "core/tray/tray.h"
#include "core/trial/trial_plan.h"

namespace plumule {

class Database;

// The stored things that a sowing stands on.
struct SowingGround
{
    Protocol protocol;
    Medium medium;
};

// What one tray of a sowing gets for itself.
struct SownTray
{
    std::string code;
    std::optional<PieceId> piece;
    std::optional<PlaceId> place;
    std::optional<int> block;
    Feeding feeding = Feeding::AsProtocol;
};

// Whether the draft may be sown as things stand; errors as TrayEntries::sow().
[[nodiscard]] Result<SowingGround> groundOf(Database& database, const SowingDraft& draft);

// The next codes of the variety, in order.
[[nodiscard]] std::vector<std::string> nextCodes(Database& database, const Variety& variety,
                                                 int count);

// One tray of a draft that groundOf() found sound: its stages and its stay. Its own piece, place,
// block and code are `put`'s. Inside a transaction.
TrayId storeSown(Database& database, const SowingDraft& draft, const SowingGround& ground,
                 const SownTray& put);

// As a deed names trays by their codes: a few each, many by their number.
[[nodiscard]] std::string namesOf(const std::vector<std::string>& codes);

// Sows all of a draft and names them in the deed; errors as TrayEntries::sow(). Inside a
// transaction.
[[nodiscard]] Result<std::vector<TrayId>> sowAll(Database& database, const SowingDraft& draft,
                                                 Deed& deed);

// Of a stay that has ended.
[[nodiscard]] Moment endOf(const Stay& left);

// Whether a tray may stand at the place from that moment on. PlaceUnknown; PlaceTaken, with its
// code, where another tray than `except` stands there; PlaceTakenThen where one left only later.
[[nodiscard]] Done checkPlaceFree(Database& database, PlaceId place, Moment from,
                                  TrayId except = {});

// NotFound, or Invalid where the lot is another variety's.
[[nodiscard]] Done checkLotAndTrial(Database& database, VarietyId variety,
                                    std::optional<SeedLotId> lot, std::optional<TrialId> trial);

} // namespace plumule
