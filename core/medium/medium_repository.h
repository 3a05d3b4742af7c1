#pragma once

#include "core/base/listed.h"
#include "core/medium/medium.h"
#include "core/storage/database.h"

#include <map>

namespace plumule {

// Stores media, pieces and their sanitising. Writing needs an open transaction. Names are found
// whatever their letter case (A–Z).
class MediumRepository
{
public:
    explicit MediumRepository(Database& database)
        : m_database(database)
    {}

    // By name.
    [[nodiscard]] std::vector<Medium> all(Listed listed);
    [[nodiscard]] std::map<MediumId, Medium> byId();
    [[nodiscard]] std::optional<Medium> find(MediumId medium);
    [[nodiscard]] std::optional<Medium> findByName(const std::string& name);

    // Gives no marker: see nextMarker().
    void insert(Medium& medium);
    void update(const Medium& medium);
    void remove(MediumId medium);
    // Whether trays, pieces, prices, stock, a trial (its control, what it compares), a tasting, a
    // repeating sowing or an order hang on it.
    [[nodiscard]] bool isInUse(MediumId medium);

    // The grower's own groups; media without one are missing.
    [[nodiscard]] std::map<MediumId, std::string> groups();
    // Empty: none.
    void setGroup(MediumId medium, const std::string& name);

    // By medium and number.
    [[nodiscard]] std::vector<PieceRecord> pieces(std::optional<MediumId> medium, Listed listed);
    [[nodiscard]] std::optional<Piece> find(PieceId piece);
    [[nodiscard]] std::optional<PieceRecord> record(PieceId piece);
    // The highest number given in that medium; 0 when it has no piece.
    [[nodiscard]] int lastNumber(MediumId medium);

    void insert(Piece& piece);
    void update(const Piece& piece);
    void insert(Sanitising& sanitising);
    // Of one piece or of all, oldest first: two queries.
    [[nodiscard]] std::vector<Sanitising> sanitisings(std::optional<PieceId> piece = std::nullopt);

private:
    Database& m_database;
};

} // namespace plumule
