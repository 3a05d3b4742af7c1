#include "core/variety/variety_repository.h"

#include "core/storage/id_list.h"
#include "core/storage/table.h"
#include "core/variety/variety_rules.h"

#include <algorithm>

namespace plumule {

template <>
struct TableOf<Variety>
{
    static constexpr const char* name = "variety";
    static constexpr auto columns = std::tuple{
        column("name", &Variety::name),           column("code_prefix", &Variety::codePrefix),
        column("seed_mg", &Variety::seedPerTray), column("source", &Variety::source),
        column("note", &Variety::note),           column("is_retired", &Variety::isRetired)};
};

template <>
struct TableOf<ProtocolStage>
{
    static constexpr const char* name = "protocol_stage";
    static constexpr auto columns =
        std::tuple{column("variety_id", &ProtocolStage::variety),
                   column("position", &ProtocolStage::position),
                   column("stage", &ProtocolStage::stage),
                   column("length_min", &ProtocolStage::lengthMinutes),
                   column("cue", &ProtocolStage::cue),
                   column("waterings_per_day", &ProtocolStage::wateringsPerDay),
                   column("method", &ProtocolStage::method),
                   column("amount_ul", &ProtocolStage::amount),
                   column("water", &ProtocolStage::water),
                   column("waters_nutrient_bearing", &ProtocolStage::waterOnNutrientBearing)};
};

template <>
struct TableOf<SeedLot>
{
    static constexpr const char* name = "seed_lot";
    static constexpr auto columns =
        std::tuple{column("variety_id", &SeedLot::variety),
                   column("lot_number", &SeedLot::lotNumber),
                   column("supplier", &SeedLot::supplier),
                   column("bought_on", &SeedLot::boughtOn),
                   column("bought_mg", &SeedLot::bought),
                   column("price", &SeedLot::price),
                   column("germination_percent", &SeedLot::germinationPercent),
                   column("note", &SeedLot::note),
                   column("is_used_up", &SeedLot::isUsedUp)};
};

template <>
struct TableOf<StockCorrection>
{
    static constexpr const char* name = "stock_correction";
    static constexpr auto columns = std::tuple{
        column("seed_lot_id", &StockCorrection::lot), column("on_date", &StockCorrection::on),
        column("change_mg", &StockCorrection::change), column("reason", &StockCorrection::reason)};
};

template <>
struct TableOf<SeedLow>
{
    static constexpr const char* name = "seed_low";
    static constexpr auto columns =
        std::tuple{column("variety_id", &SeedLow::variety), column("low_days", &SeedLow::days),
                   column("low_mg", &SeedLow::amount)};
};

namespace {

using MassByLot = std::map<SeedLotId, Mass>;

MassByLot massByLot(Database& database, const std::string& sql, const std::string& lots)
{
    MassByLot masses;
    Statement statement = database.prepare(sql);
    statement.bind(lots);
    while (statement.step()) {
        masses[statement.get<SeedLotId>(0)] = statement.get<Mass>(1);
    }
    return masses;
}

Mass massOf(const MassByLot& masses, SeedLotId lot)
{
    const auto found = masses.find(lot);
    return found == masses.end() ? Mass{} : found->second;
}

} // namespace

std::vector<Variety> VarietyRepository::all(Listed listed)
{
    return selectRows<Variety>(m_database,
                               "WHERE is_retired <= ?1 ORDER BY name COLLATE NOCASE, id",
                               listed == Listed::All);
}

std::map<VarietyId, Variety> VarietyRepository::byId()
{
    std::map<VarietyId, Variety> varieties;
    for (Variety& variety : all(Listed::All)) {
        const VarietyId id = variety.id;
        varieties.emplace(id, std::move(variety));
    }
    return varieties;
}

std::optional<Variety> VarietyRepository::find(VarietyId variety)
{
    return findRow<Variety>(m_database, variety);
}

std::optional<Variety> VarietyRepository::findByName(const std::string& name)
{
    return selectRow<Variety>(m_database, "WHERE name = ?1 COLLATE NOCASE ORDER BY is_retired, id",
                              name);
}

std::optional<Protocol> VarietyRepository::protocol(VarietyId variety)
{
    auto found = find(variety);
    if (!found) {
        return std::nullopt;
    }
    return Protocol{std::move(*found), stages(variety)};
}

std::vector<ProtocolStage> VarietyRepository::stages(VarietyId variety)
{
    return selectRows<ProtocolStage>(m_database, "WHERE variety_id = ?1 ORDER BY position, id",
                                     variety);
}

void VarietyRepository::insert(Variety& variety)
{
    insertRow(m_database, variety);
}

void VarietyRepository::update(const Variety& variety)
{
    updateRow(m_database, variety);
}

void VarietyRepository::remove(VarietyId variety)
{
    for (const ProtocolStage& stage : stages(variety)) {
        deleteRow<ProtocolStage>(m_database, stage.id);
    }
    setSeedLow({{}, variety, {}, {}});
    deleteRow<Variety>(m_database, variety);
}

void VarietyRepository::storeStages(VarietyId variety, std::vector<ProtocolStage>& stages)
{
    std::map<Stage, ProtocolStageId> present;
    for (const ProtocolStage& stage : this->stages(variety)) {
        present.emplace(stage.stage, stage.id);
    }
    int position = 0;
    for (ProtocolStage& stage : stages) {
        stage.variety = variety;
        stage.position = position++;
        const auto kept = present.extract(stage.stage);
        stage.id = kept.empty() ? ProtocolStageId{} : kept.mapped();
        if (kept.empty()) {
            insertRow(m_database, stage);
        } else {
            updateRow(m_database, stage);
        }
    }
    for (const auto& [stage, id] : present) {
        deleteRow<ProtocolStage>(m_database, id);
    }
}

std::vector<SeedLot> VarietyRepository::lots(std::optional<VarietyId> variety, Listed listed)
{
    return selectRows<SeedLot>(m_database,
                               "WHERE (?1 IS NULL OR variety_id = ?1) AND is_used_up <= ?2 "
                               "ORDER BY (SELECT v.name FROM variety v WHERE v.id = variety_id) "
                               "COLLATE NOCASE, bought_on, id",
                               variety, listed == Listed::All);
}

std::map<SeedLotId, SeedLot> VarietyRepository::lotsById()
{
    std::map<SeedLotId, SeedLot> byId;
    for (SeedLot& lot : lots(std::nullopt, Listed::All)) {
        const SeedLotId id = lot.id;
        byId.emplace(id, std::move(lot));
    }
    return byId;
}

std::vector<SeedLotStock> VarietyRepository::stock(std::optional<VarietyId> variety, Listed listed)
{
    auto listedLots = lots(variety, listed);
    const std::string ids = idListOf(listedLots);
    const auto sown = massByLot(m_database,
                                "SELECT lot.value, (SELECT coalesce(sum(seed_mg), 0) FROM tray "
                                "WHERE seed_lot_id = lot.value) FROM json_each(?1) AS lot",
                                ids);
    const auto corrected =
        massByLot(m_database,
                  "SELECT lot.value, (SELECT coalesce(sum(change_mg), 0) FROM stock_correction "
                  "WHERE seed_lot_id = lot.value) FROM json_each(?1) AS lot",
                  ids);
    std::vector<SeedLotStock> stock;
    for (SeedLot& lot : listedLots) {
        const Mass sownOfLot = massOf(sown, lot.id);
        const auto left = leftOf(lot, sownOfLot, massOf(corrected, lot.id));
        stock.push_back({std::move(lot), sownOfLot, left});
    }
    return stock;
}

std::optional<SeedLotStock> VarietyRepository::stockOf(SeedLotId lot)
{
    auto found = find(lot);
    if (!found) {
        return std::nullopt;
    }
    Mass sown;
    {
        Statement statement =
            m_database.prepare("SELECT coalesce(sum(seed_mg), 0) FROM tray WHERE seed_lot_id = ?1");
        statement.bind(lot).step();
        sown = statement.get<Mass>(0);
    }
    Mass corrected;
    for (const StockCorrection& correction : corrections(lot)) {
        corrected += correction.change;
    }
    const auto left = leftOf(*found, sown, corrected);
    return SeedLotStock{std::move(*found), sown, left};
}

std::optional<SeedLot> VarietyRepository::find(SeedLotId lot)
{
    return findRow<SeedLot>(m_database, lot);
}

std::optional<SeedLot> VarietyRepository::findLot(VarietyId variety, const std::string& lotNumber)
{
    return selectRow<SeedLot>(m_database,
                              "WHERE variety_id = ?1 AND lot_number = ?2 COLLATE NOCASE "
                              "ORDER BY id",
                              variety, lotNumber);
}

std::vector<StockCorrection> VarietyRepository::corrections(SeedLotId lot)
{
    return selectRows<StockCorrection>(m_database, "WHERE seed_lot_id = ?1 ORDER BY on_date, id",
                                       lot);
}

void VarietyRepository::insert(SeedLot& lot)
{
    insertRow(m_database, lot);
}

void VarietyRepository::update(const SeedLot& lot)
{
    updateRow(m_database, lot);
}

void VarietyRepository::remove(SeedLotId lot)
{
    for (const StockCorrection& correction : corrections(lot)) {
        deleteRow<StockCorrection>(m_database, correction.id);
    }
    deleteRow<SeedLot>(m_database, lot);
}

void VarietyRepository::insert(StockCorrection& correction)
{
    insertRow(m_database, correction);
}

std::map<VarietyId, SeedLow> VarietyRepository::seedLows()
{
    std::map<VarietyId, SeedLow> lows;
    for (const SeedLow& low : selectRows<SeedLow>(m_database, "ORDER BY id")) {
        lows.insert_or_assign(low.variety, low);
    }
    return lows;
}

void VarietyRepository::setSeedLow(const SeedLow& low)
{
    const auto stored = selectRow<SeedLow>(m_database, "WHERE variety_id = ?1", low.variety);
    SeedLow changed = low;
    changed.id = stored ? stored->id : SeedLowId{};
    const bool isTold = low.days || low.amount;
    if (stored && isTold) {
        updateRow(m_database, changed);
    } else if (stored) {
        deleteRow<SeedLow>(m_database, stored->id);
    } else if (isTold) {
        insertRow(m_database, changed);
    }
}

bool VarietyRepository::isInUse(VarietyId variety)
{
    return m_database
        .prepare("SELECT 1 FROM tray WHERE variety_id = ?1 "
                 "UNION ALL SELECT 1 FROM seed_lot WHERE variety_id = ?1 "
                 "UNION ALL SELECT 1 FROM trial_plan WHERE variety_id = ?1 "
                 "UNION ALL SELECT 1 FROM repeat_sowing WHERE variety_id = ?1 "
                 "UNION ALL SELECT 1 FROM promised_order WHERE variety_id = ?1 LIMIT 1")
        .bind(variety)
        .step();
}

bool VarietyRepository::isInUse(SeedLotId lot)
{
    return m_database
        .prepare("SELECT 1 FROM tray WHERE seed_lot_id = ?1 "
                 "UNION ALL SELECT 1 FROM trial_plan WHERE seed_lot_id = ?1 LIMIT 1")
        .bind(lot)
        .step();
}

} // namespace plumule
