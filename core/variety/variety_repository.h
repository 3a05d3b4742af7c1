#pragma once

#include "core/base/listed.h"
#include "core/storage/database.h"
#include "core/variety/variety.h"

#include <map>

namespace plumule {

// Stores varieties, their protocols, seed lots and stock corrections. Writing needs an open
// transaction. Names are found whatever their letter case (A–Z).
class VarietyRepository
{
public:
    explicit VarietyRepository(Database& database)
        : m_database(database)
    {}

    // By name.
    [[nodiscard]] std::vector<Variety> all(Listed listed);
    [[nodiscard]] std::map<VarietyId, Variety> byId();
    [[nodiscard]] std::optional<Variety> find(VarietyId variety);
    [[nodiscard]] std::optional<Variety> findByName(const std::string& name);
    [[nodiscard]] std::optional<Protocol> protocol(VarietyId variety);
    // In order.
    [[nodiscard]] std::vector<ProtocolStage> stages(VarietyId variety);

    void insert(Variety& variety);
    void update(const Variety& variety);
    // With its stages and the mark of low seed.
    void remove(VarietyId variety);
    // Stores these stages, numbered on from 0, instead of the variety's present ones; rows whose
    // stage stays keep their id.
    void storeStages(VarietyId variety, std::vector<ProtocolStage>& stages);

    // By variety and day of purchase.
    [[nodiscard]] std::vector<SeedLot> lots(std::optional<VarietyId> variety, Listed listed);
    [[nodiscard]] std::map<SeedLotId, SeedLot> lotsById();
    // As lots(), with what is left: two queries for any number of lots.
    [[nodiscard]] std::vector<SeedLotStock> stock(std::optional<VarietyId> variety, Listed listed);
    [[nodiscard]] std::optional<SeedLotStock> stockOf(SeedLotId lot);
    [[nodiscard]] std::optional<SeedLot> find(SeedLotId lot);
    [[nodiscard]] std::optional<SeedLot> findLot(VarietyId variety, const std::string& lotNumber);
    // Oldest first.
    [[nodiscard]] std::vector<StockCorrection> corrections(SeedLotId lot);

    void insert(SeedLot& lot);
    void update(const SeedLot& lot);
    // With its stock corrections.
    void remove(SeedLotId lot);
    void insert(StockCorrection& correction);

    [[nodiscard]] std::map<VarietyId, SeedLow> seedLows();
    // Instead of the variety's present one; none of both takes it away.
    void setSeedLow(const SeedLow& low);

    // Whether trays, lots, a trial's plan, a repeating sowing or an order hang on it.
    [[nodiscard]] bool isInUse(VarietyId variety);
    // Whether trays were sown from it, or are planned to be.
    [[nodiscard]] bool isInUse(SeedLotId lot);

private:
    Database& m_database;
};

} // namespace plumule
