#pragma once

#include "core/cost/cost.h"

namespace plumule {

class Database;

// Stored prices and labour minutes, and what costs are worked out from.
class CostRepository
{
public:
    explicit CostRepository(Database& database)
        : m_database(database)
    {}

    // By item, medium, then date, newest first.
    [[nodiscard]] std::vector<Price> prices() const;
    [[nodiscard]] std::optional<Price> findPrice(PriceId price) const;
    // Of that item (and medium) from that very day.
    [[nodiscard]] std::optional<Price> findPrice(PriceItem item, std::optional<MediumId> medium,
                                                 Date from) const;
    void insert(Price& price);
    void update(const Price& price);
    void remove(PriceId price);

    // In the order of LabourKind.
    [[nodiscard]] std::vector<LabourTask> labour() const;
    [[nodiscard]] std::optional<LabourTask> findLabour(LabourTaskId task) const;
    void insert(LabourTask& task);
    void update(const LabourTask& task);

    // Layout, prices, labour, recipes and all seed lots: once for any number of trays.
    [[nodiscard]] CostFacts facts() const;
    // With that seed lot alone, for a tray that was sown of it.
    [[nodiscard]] CostFacts factsOfLot(std::optional<SeedLotId> lot) const;

private:
    Database& m_database;
};

} // namespace plumule
