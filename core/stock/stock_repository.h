#pragma once

#include "core/stock/stock.h"

#include <set>

namespace plumule {

class Database;

// Supplies and their counts, and what the stock is worked out from. Writing needs an open
// transaction.
class StockRepository
{
public:
    explicit StockRepository(Database& database)
        : m_database(database)
    {}

    // By name; those no longer kept among them.
    [[nodiscard]] std::vector<StockItem> supplies() const;
    [[nodiscard]] std::optional<StockItem> find(StockItemId supply) const;
    void insert(StockItem& supply);
    void update(const StockItem& supply);
    void insert(StockCount& count);

    // Of lots, supplies and what trays took of them since `from` or the oldest entry that still
    // counts: a fixed number of queries.
    [[nodiscard]] StockFacts facts(Date today) const;
    [[nodiscard]] std::map<PieceId, PieceInUse> piecesInUse() const;

private:
    void readUses(StockFacts& facts, Date from) const;

    Database& m_database;
};

} // namespace plumule
