#pragma once

#include "core/base/listed.h"
#include "core/variety/variety.h"

namespace plumule {

class Ledger;

// Varieties with their protocols, seed lots and what is left of them.
class VarietyEntries
{
public:
    explicit VarietyEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // By name; retired ones only when asked for.
    [[nodiscard]] Result<std::vector<Variety>> all(Listed listed = Listed::InUse);
    [[nodiscard]] Result<Protocol> protocol(VarietyId variety);

    // Stores the variety and its stages as given, in their order; a new one where its id is not
    // stored. Missing name or prefix; Duplicate name; Invalid where stages are out of order,
    // doubled, without length, or watered without a method.
    Result<Protocol> save(const Protocol& protocol);
    // InUse when trays or lots hang on it: retire it instead.
    Done remove(VarietyId variety);

    [[nodiscard]] Result<std::vector<SeedLotStock>>
    lots(std::optional<VarietyId> variety = std::nullopt, Listed listed = Listed::InUse);
    // A new lot where its id is not stored. Missing lot number; Duplicate within the variety.
    Result<SeedLot> saveLot(const SeedLot& lot);
    Done removeLot(SeedLotId lot);
    // The shelf was counted: stores the difference to what should be left. Missing where the
    // purchase was not weighed.
    Result<StockCorrection> countLot(SeedLotId lot, Mass found, const std::string& reason);

private:
    Ledger& m_ledger;
};

} // namespace plumule
