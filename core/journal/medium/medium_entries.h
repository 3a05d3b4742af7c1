#pragma once

#include "core/base/listed.h"
#include "core/base/result.h"
#include "core/medium/medium.h"

#include <map>

namespace plumule {

class Ledger;

// Media, and the pieces of reusable ones.
class MediumEntries
{
public:
    explicit MediumEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // By name; retired ones only when asked for.
    [[nodiscard]] Result<std::vector<Medium>> all(Listed listed = Listed::InUse);

    // A new medium where its id is not stored (it gets the first marker that no other uses).
    // Missing or Duplicate name; Invalid: planned uses under 1, a reusable loose mix.
    Result<Medium> save(const Medium& medium);
    // The grower's own groups, by which media are answered for together.
    [[nodiscard]] Result<std::map<MediumId, std::string>> groups();
    // Empty: none. NotFound.
    Done setGroup(MediumId medium, const std::string& name);
    // InUse when trays or pieces hang on it: retire it instead.
    Done remove(MediumId medium);

    [[nodiscard]] Result<std::vector<PieceRecord>>
    pieces(std::optional<MediumId> medium = std::nullopt, Listed listed = Listed::InUse);
    // New pieces numbered on from the last.
    Result<std::vector<Piece>> addPieces(MediumId medium, int count, std::optional<Date> boughtOn);
    // Conflict while a tray grows on it.
    Done retirePiece(PieceId piece, const std::string& note);
    // Conflict while a tray grows on it.
    Result<std::vector<Sanitising>> sanitise(const std::vector<PieceId>& pieces,
                                             const SanitisingDraft& how);
    Result<std::vector<Sanitising>> sanitise(const std::vector<PieceId>& pieces,
                                             const std::string& method)
    {
        return sanitise(pieces, SanitisingDraft{method});
    }

private:
    Ledger& m_ledger;
};

} // namespace plumule
