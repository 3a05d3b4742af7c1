#include "core/journal/medium/medium_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_repository.h"
#include "core/medium/medium_rules.h"

namespace plumule {
namespace {

Done checkStored(MediumRepository& media, const Medium& medium)
{
    const auto sameName = media.findByName(medium.name);
    if (sameName && sameName->id != medium.id) {
        return fail(ErrorKind::Duplicate, "medium.name", medium.name);
    }
    if (!medium.id.isStored()) {
        return {};
    }
    if (!media.find(medium.id)) {
        return fail(ErrorKind::NotFound, "medium", medium.name);
    }
    if (!medium.isReusable && media.lastNumber(medium.id) > 0) {
        return fail(ErrorKind::InUse, "medium.is_reusable", medium.name);
    }
    return {};
}

int freeMarker(MediumRepository& media)
{
    std::vector<int> used;
    for (const Medium& medium : media.all(true)) {
        used.push_back(medium.marker);
    }
    return nextMarker(used);
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
        return fail(ErrorKind::NotFound, "piece");
    }
    if (record->isInUse) {
        return fail(ErrorKind::Conflict, "piece", pieceWords(media, record->piece));
    }
    return record->piece;
}

Done checkNumber(MediumRepository& media, const Piece& piece)
{
    if (piece.number < 1) {
        return fail(ErrorKind::Invalid, "piece.number", std::to_string(piece.number));
    }
    for (const PieceRecord& other : media.pieces(piece.medium, true)) {
        if (other.piece.number == piece.number && other.piece.id != piece.id) {
            return fail(ErrorKind::Duplicate, "piece.number", std::to_string(piece.number));
        }
    }
    return {};
}

} // namespace

Result<std::vector<Medium>> MediumEntries::all(bool withRetired)
{
    return m_ledger.ask(
        [&](Database& database) { return MediumRepository(database).all(withRetired); });
}

Result<Medium> MediumEntries::save(const Medium& medium)
{
    const bool isNew = !medium.id.isStored();
    return m_ledger.record(isNew ? "medium.add" : "medium.change",
                           [&](Database& database, std::string& subject) -> Result<Medium> {
                               MediumRepository media(database);
                               Medium stored = medium;
                               stored.name = trimmed(medium.name);
                               subject = stored.name;
                               if (isNew) {
                                   stored.marker = freeMarker(media);
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

Done MediumEntries::remove(MediumId medium)
{
    return m_ledger.record("medium.remove", [&](Database& database, std::string& subject) -> Done {
        MediumRepository media(database);
        const auto found = media.find(medium);
        if (!found) {
            return fail(ErrorKind::NotFound, "medium");
        }
        subject = found->name;
        if (media.isInUse(medium)) {
            return fail(ErrorKind::InUse, "medium", found->name);
        }
        media.remove(medium);
        return {};
    });
}

Result<std::vector<PieceRecord>> MediumEntries::pieces(std::optional<MediumId> medium,
                                                       bool withRetired)
{
    return m_ledger.ask(
        [&](Database& database) { return MediumRepository(database).pieces(medium, withRetired); });
}

Result<std::vector<Piece>> MediumEntries::addPieces(MediumId medium, int count,
                                                    std::optional<Date> boughtOn)
{
    return m_ledger.record(
        "piece.add", [&](Database& database, std::string& subject) -> Result<std::vector<Piece>> {
            MediumRepository media(database);
            const auto found = media.find(medium);
            if (!found) {
                return fail(ErrorKind::NotFound, "medium");
            }
            if (!found->isReusable) {
                return fail(ErrorKind::Invalid, "medium.is_reusable", found->name);
            }
            if (count < 1 || count > kMostPiecesAtOnce) {
                return fail(ErrorKind::Invalid, "piece.count", std::to_string(count));
            }
            subject = found->name;
            const int last = media.lastNumber(medium);
            std::vector<Piece> pieces;
            for (int number = last + 1; number <= last + count; ++number) {
                Piece piece;
                piece.medium = medium;
                piece.number = number;
                piece.boughtOn = boughtOn;
                media.insert(piece);
                pieces.push_back(piece);
                subject += " " + std::to_string(number);
            }
            return pieces;
        });
}

Result<Piece> MediumEntries::changePiece(const Piece& piece)
{
    return m_ledger.record("piece.change",
                           [&](Database& database, std::string& subject) -> Result<Piece> {
                               MediumRepository media(database);
                               const auto present = media.find(piece.id);
                               if (!present || present->medium != piece.medium) {
                                   return fail(ErrorKind::NotFound, "piece");
                               }
                               subject = pieceWords(media, piece);
                               if (auto checked = checkNumber(media, piece); !checked) {
                                   return passOn(checked);
                               }
                               if (piece.retiredOn && !present->retiredOn) {
                                   if (auto idle = idlePiece(media, piece.id); !idle) {
                                       return idle;
                                   }
                               }
                               media.update(piece);
                               return piece;
                           });
}

Done MediumEntries::retirePiece(PieceId piece, const std::string& note)
{
    return m_ledger.record("piece.retire", [&](Database& database, std::string& subject) -> Done {
        MediumRepository media(database);
        auto idle = idlePiece(media, piece);
        if (!idle) {
            return passOn(idle);
        }
        subject = pieceWords(media, *idle);
        if (idle->retiredOn) {
            return fail(ErrorKind::Conflict, "piece.retired_on", toIso(*idle->retiredOn));
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
                                                        const std::string& method)
{
    return m_ledger.record(
        "piece.sanitise",
        [&](Database& database, std::string& subject) -> Result<std::vector<Sanitising>> {
            if (pieces.empty()) {
                return fail(ErrorKind::Missing, "piece");
            }
            if (trimmed(method).empty()) {
                return fail(ErrorKind::Missing, "sanitising.method");
            }
            MediumRepository media(database);
            const Moment now = m_ledger.clock().now();
            std::vector<Sanitising> done;
            for (const PieceId id : pieces) {
                const auto idle = idlePiece(media, id);
                if (!idle) {
                    return passOn(idle);
                }
                Sanitising sanitising{{}, id, now.date, now.minute, std::string(trimmed(method))};
                media.insert(sanitising);
                done.push_back(sanitising);
                subject += (subject.empty() ? "" : ", ") + pieceWords(media, *idle);
            }
            return done;
        });
}

} // namespace plumule
