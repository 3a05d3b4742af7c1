#include "core/journal/tray/sowing.h"

#include "core/base/moment_text.h"
#include "core/base/number_text.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/sowing_rules.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_code.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

namespace plumule {
namespace {

Done checkPieces(Database& database, const SowingDraft& draft)
{
    MediumRepository media(database);
    for (const PieceId id : draft.pieces) {
        const auto piece = media.record(id);
        if (!piece) {
            return fail(ErrorKind::NotFound, TrayReason::PieceUnknown);
        }
        if (piece->piece.medium != draft.medium) {
            return fail(ErrorKind::Invalid, TrayReason::PieceOfOtherMedium, piece->piece.number);
        }
        if (piece->piece.retiredOn) {
            return fail(ErrorKind::Conflict, TrayReason::PieceRetired, piece->piece.number);
        }
        if (piece->isInUse) {
            return fail(ErrorKind::Conflict, TrayReason::PieceInUse, piece->piece.number);
        }
        if (piece->needsSanitising) {
            return fail(ErrorKind::Conflict, TrayReason::PieceNotSanitised, piece->piece.number);
        }
    }
    return {};
}

// Rack and shelf.
std::string shelfName(RoomRepository& rooms, ShelfId id)
{
    const auto shelf = rooms.find(id);
    const auto rack = shelf ? rooms.find(shelf->rack) : std::nullopt;
    return rack ? rack->name + shelf->name : std::string();
}

// The codes of the new trays, in order.
Result<std::vector<std::string>> codesFor(Database& database, const SowingDraft& draft,
                                          const Variety& variety)
{
    if (!draft.code) {
        return nextCodes(database, variety, draft.count);
    }
    const std::string code(trimmed(*draft.code));
    if (TrayRepository(database).findByCode(code)) {
        return fail(ErrorKind::Duplicate, TrayReason::CodeTaken, code);
    }
    return std::vector{code};
}

SownTray trayAt(const SowingDraft& draft, std::size_t index, const std::string& code)
{
    SownTray tray;
    tray.code = code;
    if (index < draft.pieces.size()) {
        tray.piece = draft.pieces[index];
    }
    if (index < draft.places.size()) {
        tray.place = draft.places[index];
    }
    tray.block = draft.block;
    return tray;
}

} // namespace

std::string namesOf(const std::vector<std::string>& codes)
{
    constexpr std::size_t kMostNamed = 4;
    if (codes.size() > kMostNamed) {
        return std::to_string(codes.size());
    }
    std::string names;
    for (const std::string& code : codes) {
        names += (names.empty() ? "" : ", ") + code;
    }
    return names;
}

Moment endOf(const Stay& left)
{
    return {left.toOn.value_or(left.fromOn), left.toMinute.value_or(0)};
}

Done checkPlaceFree(Database& database, PlaceId place, Moment from, TrayId except)
{
    RoomRepository rooms(database);
    const auto found = rooms.find(place);
    if (!found) {
        return fail(ErrorKind::NotFound, TrayReason::PlaceUnknown);
    }
    const TrayRepository trays(database);
    const auto taken = trays.trayAt(place);
    if (taken && *taken != except) {
        const auto tray = trays.find(*taken);
        return fail(ErrorKind::Conflict, TrayReason::PlaceTaken, shelfName(rooms, found->shelf),
                    found->number, tray ? tray->code : "");
    }
    if (const auto tenant = trays.lastToLeaveAfter(place, except, from)) {
        const auto tray = trays.find(tenant->tray);
        return fail(ErrorKind::Conflict, TrayReason::PlaceTakenThen, shelfName(rooms, found->shelf),
                    found->number, tray ? tray->code : "", textOf(endOf(*tenant)));
    }
    return {};
}

Done checkLotAndTrial(Database& database, VarietyId variety, std::optional<SeedLotId> lot,
                      std::optional<TrialId> trial)
{
    if (lot) {
        const auto found = VarietyRepository(database).find(*lot);
        if (!found) {
            return fail(ErrorKind::NotFound, TrayReason::LotUnknown);
        }
        if (found->variety != variety) {
            return fail(ErrorKind::Invalid, TrayReason::LotOfOtherVariety, found->lotNumber);
        }
    }
    if (trial && !TrialRepository(database).find(*trial)) {
        return fail(ErrorKind::NotFound, TrayReason::TrialUnknown);
    }
    return {};
}

Result<SowingGround> groundOf(Database& database, const SowingDraft& draft)
{
    auto protocol = VarietyRepository(database).protocol(draft.variety);
    if (!protocol) {
        return fail(ErrorKind::NotFound, TrayReason::VarietyUnknown);
    }
    auto medium = MediumRepository(database).find(draft.medium);
    if (!medium) {
        return fail(ErrorKind::NotFound, TrayReason::MediumUnknown);
    }
    if (minutesToHarvest(*protocol) <= 0) {
        return fail(ErrorKind::Missing, TrayReason::ProtocolMissing, protocol->variety.name);
    }
    if (auto checked = checkSowing(draft, *medium); !checked) {
        return passOn(checked);
    }
    auto checked = checkLotAndTrial(database, draft.variety, draft.seedLot, draft.trial);
    if (checked) {
        checked = checkPieces(database, draft);
    }
    for (std::size_t i = 0; checked && i < draft.places.size(); ++i) {
        checked = checkPlaceFree(database, draft.places[i], draft.at);
    }
    if (!checked) {
        return passOn(checked);
    }
    return SowingGround{std::move(*protocol), std::move(*medium)};
}

std::vector<std::string> nextCodes(Database& database, const Variety& variety, int count)
{
    const int highest = TrayRepository(database).highestNumber(variety.codePrefix);
    std::vector<std::string> codes;
    for (int i = 1; i <= count; ++i) {
        codes.push_back(codeOf(variety.codePrefix, highest + i));
    }
    return codes;
}

TrayId storeSown(Database& database, const SowingDraft& draft, const SowingGround& ground,
                 const SownTray& put)
{
    TrayRepository trays(database);
    auto stages =
        stagesFor(ground.protocol, ground.medium, draft.at,
                  draft.startsWithSoak ? FirstStage::Soak : FirstStage::AfterSoak, put.feeding);
    const Moment sown = sowingOf(stages);
    Tray tray;
    tray.code = put.code;
    tray.variety = draft.variety;
    tray.seedLot = draft.seedLot;
    tray.medium = draft.medium;
    tray.piece = put.piece;
    tray.seed = draft.seedPerTray ? draft.seedPerTray : ground.protocol.variety.seedPerTray;
    tray.sownOn = sown.date;
    tray.sownMinute = sown.minute;
    tray.trial = draft.trial;
    tray.block = put.block;
    tray.sownBy = draft.sownBy;
    trays.insert(tray);
    for (TrayStage& stage : stages) {
        stage.tray = tray.id;
        trays.insert(stage);
    }
    if (put.place) {
        Stay stay;
        stay.tray = tray.id;
        stay.place = *put.place;
        stay.fromOn = draft.at.date;
        stay.fromMinute = draft.at.minute;
        trays.insert(stay);
    }
    return tray.id;
}

Result<std::vector<TrayId>> sowAll(Database& database, const SowingDraft& draft, Deed& deed)
{
    const auto ground = groundOf(database, draft);
    if (!ground) {
        return passOn(ground);
    }
    const auto codes = codesFor(database, draft, ground->protocol.variety);
    if (!codes) {
        return passOn(codes);
    }
    std::vector<TrayId> sown;
    for (std::size_t i = 0; i < codes->size(); ++i) {
        sown.push_back(storeSown(database, draft, *ground, trayAt(draft, i, (*codes)[i])));
    }
    deed.whom = namesOf(*codes);
    return sown;
}

} // namespace plumule
