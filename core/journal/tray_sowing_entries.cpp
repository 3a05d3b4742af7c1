#include "core/base/number_text.h"
#include "core/journal/ledger.h"
#include "core/journal/tray_entries.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/sowing_rules.h"
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
            return fail(ErrorKind::NotFound, "tray.piece");
        }
        const std::string number = std::to_string(piece->piece.number);
        if (piece->piece.medium != draft.medium) {
            return fail(ErrorKind::Invalid, "tray.piece", number);
        }
        if (piece->piece.retiredOn) {
            return fail(ErrorKind::Conflict, "piece.retired", number);
        }
        if (piece->isInUse) {
            return fail(ErrorKind::Conflict, "piece.in_use", number);
        }
        if (piece->needsSanitising) {
            return fail(ErrorKind::Conflict, "piece.sanitising", number);
        }
    }
    return {};
}

Done checkPlaceFree(Database& database, PlaceId place, TrayId except = {})
{
    if (!RoomRepository(database).find(place)) {
        return fail(ErrorKind::NotFound, "tray.place");
    }
    const TrayRepository trays(database);
    const auto taken = trays.trayAt(place);
    if (taken && *taken != except) {
        const auto tray = trays.find(*taken);
        return fail(ErrorKind::Conflict, "tray.place", tray ? tray->code : "");
    }
    return {};
}

Done checkLotAndTrial(Database& database, VarietyId variety, std::optional<SeedLotId> lot,
                      std::optional<TrialId> trial)
{
    if (lot) {
        const auto found = VarietyRepository(database).find(*lot);
        if (!found) {
            return fail(ErrorKind::NotFound, "tray.seed_lot");
        }
        if (found->variety != variety) {
            return fail(ErrorKind::Invalid, "tray.seed_lot", found->lotNumber);
        }
    }
    if (trial && !TrialRepository(database).find(*trial)) {
        return fail(ErrorKind::NotFound, "tray.trial");
    }
    return {};
}

// The stored things that a sowing stands on.
struct SowingGround
{
    Protocol protocol;
    Medium medium;
};

Result<SowingGround> groundOf(Database& database, const SowingDraft& draft)
{
    auto protocol = VarietyRepository(database).protocol(draft.variety);
    if (!protocol) {
        return fail(ErrorKind::NotFound, "tray.variety");
    }
    auto medium = MediumRepository(database).find(draft.medium);
    if (!medium) {
        return fail(ErrorKind::NotFound, "tray.medium");
    }
    if (minutesToHarvest(*protocol) <= 0) {
        return fail(ErrorKind::Missing, "tray.protocol", protocol->variety.name);
    }
    if (auto checked = checkSowing(draft, *medium); !checked) {
        return tl::unexpected<Error>(checked.error());
    }
    auto checked = checkLotAndTrial(database, draft.variety, draft.seedLot, draft.trial);
    if (checked) {
        checked = checkPieces(database, draft);
    }
    for (std::size_t i = 0; checked && i < draft.places.size(); ++i) {
        checked = checkPlaceFree(database, draft.places[i]);
    }
    if (!checked) {
        return tl::unexpected<Error>(checked.error());
    }
    return SowingGround{std::move(*protocol), std::move(*medium)};
}

// The codes of the new trays, in order.
Result<std::vector<std::string>> codesFor(Database& database, const SowingDraft& draft,
                                          const Variety& variety)
{
    const TrayRepository trays(database);
    if (draft.code) {
        const std::string code(trimmed(*draft.code));
        if (trays.findByCode(code)) {
            return fail(ErrorKind::Duplicate, "tray.code", code);
        }
        return std::vector{code};
    }
    std::vector<std::string> used = trays.codesWithPrefix(variety.codePrefix);
    std::vector<std::string> codes;
    for (int i = 0; i < draft.count; ++i) {
        codes.push_back(nextCode(variety.codePrefix, used));
        used.push_back(codes.back());
    }
    return codes;
}

TrayId storeSown(Database& database, const SowingDraft& draft, const SowingGround& ground,
                 std::size_t index, const std::string& code)
{
    TrayRepository trays(database);
    auto stages = stagesFor(ground.protocol, ground.medium, draft.at, draft.startsWithSoak);
    const Moment sown = sowingOf(stages);
    Tray tray;
    tray.code = code;
    tray.variety = draft.variety;
    tray.seedLot = draft.seedLot;
    tray.medium = draft.medium;
    if (index < draft.pieces.size()) {
        tray.piece = draft.pieces[index];
    }
    tray.seed = draft.seedPerTray ? draft.seedPerTray : ground.protocol.variety.seedPerTray;
    tray.sownOn = sown.date;
    tray.sownMinute = sown.minute;
    tray.trial = draft.trial;
    tray.block = draft.block;
    tray.sownBy = draft.sownBy;
    trays.insert(tray);
    for (TrayStage& stage : stages) {
        stage.tray = tray.id;
        trays.insert(stage);
    }
    if (index < draft.places.size()) {
        Stay stay;
        stay.tray = tray.id;
        stay.place = draft.places[index];
        stay.fromOn = draft.at.date;
        stay.fromMinute = draft.at.minute;
        trays.insert(stay);
    }
    return tray.id;
}

// Few are named, many are counted.
std::string namesOf(const std::vector<std::string>& codes)
{
    if (codes.size() > 4) {
        return std::to_string(codes.size());
    }
    std::string names;
    for (const std::string& code : codes) {
        names += (names.empty() ? "" : " ") + code;
    }
    return names;
}

} // namespace

Result<std::vector<TrayId>> TrayEntries::sow(const SowingDraft& draft)
{
    return m_ledger.record(
        "tray.sow", [&](Database& database, std::string& subject) -> Result<std::vector<TrayId>> {
            const auto ground = groundOf(database, draft);
            if (!ground) {
                return tl::unexpected<Error>(ground.error());
            }
            const auto codes = codesFor(database, draft, ground->protocol.variety);
            if (!codes) {
                return tl::unexpected<Error>(codes.error());
            }
            std::vector<TrayId> sown;
            for (std::size_t i = 0; i < codes->size(); ++i) {
                sown.push_back(storeSown(database, draft, *ground, i, (*codes)[i]));
            }
            subject = namesOf(*codes);
            return sown;
        });
}

Done TrayEntries::changeSowing(const Tray& changed)
{
    return m_ledger.record(
        "tray.change_sowing", [&](Database& database, std::string& subject) -> Done {
            TrayRepository trays(database);
            auto tray = trays.find(changed.id);
            if (!tray) {
                return fail(ErrorKind::NotFound, "tray");
            }
            auto checked = checkSown(changed.seed, changed.block);
            if (checked) {
                checked = checkLotAndTrial(database, tray->variety, changed.seedLot, changed.trial);
            }
            if (!checked) {
                return checked;
            }
            subject = tray->code;
            tray->seedLot = changed.seedLot;
            tray->seed = changed.seed;
            tray->trial = changed.trial;
            tray->block = changed.block;
            tray->sownBy = changed.sownBy;
            trays.update(*tray);
            return {};
        });
}

Done TrayEntries::moveTo(TrayId id, std::optional<PlaceId> place, Moment at)
{
    return m_ledger.record("tray.move_to", [&](Database& database, std::string& subject) -> Done {
        TrayRepository trays(database);
        const auto tray = trays.find(id);
        if (!tray) {
            return fail(ErrorKind::NotFound, "tray");
        }
        if (tray->state != TrayState::Growing) {
            return fail(ErrorKind::Conflict, "tray.state", tray->code);
        }
        const auto open = trays.openStay(id);
        if (place == (open ? std::optional(open->place) : std::nullopt)) {
            return {};
        }
        if (open && at < Moment{open->fromOn, open->fromMinute}) {
            return fail(ErrorKind::Invalid, "tray.moved",
                        toIso(at.date) + " " + toClockText(at.minute));
        }
        if (place) {
            if (auto isFree = checkPlaceFree(database, *place, id); !isFree) {
                return isFree;
            }
        }
        subject = tray->code;
        trays.closeStay(id, at);
        if (place) {
            Stay stay{{}, id, *place, at.date, at.minute, std::nullopt, std::nullopt};
            trays.insert(stay);
        }
        return {};
    });
}

} // namespace plumule
