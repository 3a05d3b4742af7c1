#include "core/journal/medium/medium_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_reason.h"
#include "core/medium/medium_repository.h"
#include "core/medium/medium_rules.h"

#include <algorithm>

namespace plumule {
namespace {

// Another medium that has this marker.
std::optional<Medium> holderOf(int marker, const std::vector<Medium>& media, MediumId but)
{
    const auto found = std::find_if(media.begin(), media.end(), [&](const Medium& each) {
        return each.marker == marker && each.id != but;
    });
    return found == media.end() ? std::nullopt : std::optional(*found);
}

int freeMarker(int wished, const std::vector<Medium>& media)
{
    if (!holderOf(wished, media, {})) {
        return wished;
    }
    std::vector<int> used;
    used.reserve(media.size());
    for (const Medium& medium : media) {
        used.push_back(medium.marker);
    }
    return nextMarker(used);
}

// One that two media share since before is left alone until it is changed.
Done checkMarker(MediumRepository& media, const Medium& medium)
{
    const auto stored = media.find(medium.id);
    if (!stored || stored->marker == medium.marker) {
        return {};
    }
    if (const auto holder = holderOf(medium.marker, media.all(Listed::All), medium.id)) {
        return fail(ErrorKind::Duplicate, MediumReason::MarkerTaken, holder->name);
    }
    return {};
}

Done checkStored(MediumRepository& media, const Medium& medium)
{
    const auto sameName = media.findByName(medium.name);
    if (sameName && sameName->id != medium.id) {
        return fail(ErrorKind::Duplicate, MediumReason::NameTaken, medium.name);
    }
    if (!medium.id.isStored()) {
        return {};
    }
    if (!media.find(medium.id)) {
        return fail(ErrorKind::NotFound, MediumReason::Unknown);
    }
    if (!medium.isReusable && media.lastNumber(medium.id) > 0) {
        return fail(ErrorKind::InUse, MediumReason::HasPieces, medium.name);
    }
    return checkMarker(media, medium);
}

std::string pieceWords(MediumRepository& media, const Piece& piece)
{
    const auto medium = media.find(piece.medium);
    return (medium ? medium->name + " " : std::string()) + std::to_string(piece.number);
}

// The piece, unless it is unknown or a tray grows on it.
Result<Piece> idlePiece(MediumRepository& media, PieceId id)
{
    const auto record = media.record(id);
    if (!record) {
        return fail(ErrorKind::NotFound, MediumReason::PieceUnknown);
    }
    if (record->isInUse) {
        return fail(ErrorKind::Conflict, MediumReason::PieceGrows,
                    pieceWords(media, record->piece));
    }
    return record->piece;
}

} // namespace

Result<std::vector<Medium>> MediumEntries::all(Listed listed)
{
    return m_ledger.ask([&](Database& database) { return MediumRepository(database).all(listed); });
}

Result<Medium> MediumEntries::save(const Medium& medium)
{
    const bool isNew = !medium.id.isStored();
    return m_ledger.record(isNew ? Intention::AddMedium : Intention::ChangeMedium,
                           [&](Database& database, Deed& deed) -> Result<Medium> {
                               MediumRepository media(database);
                               Medium stored = medium;
                               stored.name = trimmed(medium.name);
                               deed.whom = stored.name;
                               if (isNew) {
                                   stored.marker =
                                       freeMarker(medium.marker, media.all(Listed::All));
                               }
                               const Done checked = checkMedium(stored).and_then(
                                   [&] { return checkStored(media, stored); });
                               if (!checked) {
                                   return passOn(checked);
                               }
                               if (isNew) {
                                   media.insert(stored);
                               } else {
                                   media.update(stored);
                               }
                               return stored;
                           });
}

Result<std::map<MediumId, std::string>> MediumEntries::groups()
{
    return m_ledger.ask([](Database& database) { return MediumRepository(database).groups(); });
}

Done MediumEntries::setGroup(MediumId medium, const std::string& name)
{
    return m_ledger.record(Intention::GroupMedium, [&](Database& database, Deed& deed) -> Done {
        MediumRepository media(database);
        const auto found = media.find(medium);
        if (!found) {
            return fail(ErrorKind::NotFound, MediumReason::Unknown);
        }
        deed.whom = found->name;
        media.setGroup(medium, std::string(trimmed(name)));
        return {};
    });
}

Done MediumEntries::remove(MediumId medium)
{
    return m_ledger.record(Intention::RemoveMedium, [&](Database& database, Deed& deed) -> Done {
        MediumRepository media(database);
        const auto found = media.find(medium);
        if (!found) {
            return fail(ErrorKind::NotFound, MediumReason::Unknown);
        }
        deed.whom = found->name;
        if (media.isInUse(medium)) {
            return fail(ErrorKind::InUse, MediumReason::InUse, found->name);
        }
        media.remove(medium);
        return {};
    });
}

Result<std::vector<PieceRecord>> MediumEntries::pieces(std::optional<MediumId> medium,
                                                       Listed listed)
{
    return m_ledger.ask(
        [&](Database& database) { return MediumRepository(database).pieces(medium, listed); });
}

Result<std::vector<Piece>> MediumEntries::addPieces(MediumId medium, int count,
                                                    std::optional<Date> boughtOn)
{
    return m_ledger.record(
        Intention::AddPieces, [&](Database& database, Deed& deed) -> Result<std::vector<Piece>> {
            MediumRepository media(database);
            const auto found = media.find(medium);
            if (!found) {
                return fail(ErrorKind::NotFound, MediumReason::Unknown);
            }
            if (!found->isReusable) {
                return fail(ErrorKind::Invalid, MediumReason::NotReusable, found->name);
            }
            if (count < 1 || count > kMostPiecesAtOnce) {
                return fail(ErrorKind::Invalid, MediumReason::PieceCount, kMostPiecesAtOnce);
            }
            deed.whom = found->name;
            const int last = media.lastNumber(medium);
            std::vector<Piece> pieces;
            for (int number = last + 1; number <= last + count; ++number) {
                Piece piece;
                piece.medium = medium;
                piece.number = number;
                piece.boughtOn = boughtOn;
                media.insert(piece);
                pieces.push_back(piece);
                deed.whom += " " + std::to_string(number);
            }
            return pieces;
        });
}

Done MediumEntries::retirePiece(PieceId piece, const std::string& note)
{
    return m_ledger.record(Intention::RetirePiece, [&](Database& database, Deed& deed) -> Done {
        MediumRepository media(database);
        auto idle = idlePiece(media, piece);
        if (!idle) {
            return passOn(idle);
        }
        deed.whom = pieceWords(media, *idle);
        if (idle->retiredOn) {
            return fail(ErrorKind::Conflict, MediumReason::PieceRetired, toIso(*idle->retiredOn));
        }
        idle->retiredOn = m_ledger.clock().today();
        if (!trimmed(note).empty()) {
            idle->note = trimmed(note);
        }
        media.update(*idle);
        return {};
    });
}

Result<std::vector<Sanitising>> MediumEntries::sanitise(const std::vector<PieceId>& pieces,
                                                        const SanitisingDraft& how)
{
    return m_ledger.record(Intention::SanitisePieces,
                           [&](Database& database, Deed& deed) -> Result<std::vector<Sanitising>> {
                               if (pieces.empty()) {
                                   return fail(ErrorKind::Missing, MediumReason::NoPieceChosen);
                               }
                               SanitisingDraft told = how;
                               told.method = trimmed(how.method);
                               told.by = trimmed(how.by);
                               if (const Done checked = checkSanitising(told); !checked) {
                                   return passOn(checked);
                               }
                               MediumRepository media(database);
                               const Moment now = m_ledger.clock().now();
                               std::vector<Sanitising> done;
                               for (const PieceId id : pieces) {
                                   const auto idle = idlePiece(media, id);
                                   if (!idle) {
                                       return passOn(idle);
                                   }
                                   Sanitising sanitising{{}, id, now.date, now.minute, told};
                                   media.insert(sanitising);
                                   done.push_back(sanitising);
                                   deed.whom +=
                                       (deed.whom.empty() ? "" : ", ") + pieceWords(media, *idle);
                               }
                               return done;
                           });
}

} // namespace plumule
