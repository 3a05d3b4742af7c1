#include "core/journal/trial/trial_preparation.h"

#include "core/cost/cost_repository.h"
#include "core/cost/tray_use.h"
#include "core/medium/medium_repository.h"
#include "core/tray/tray_reason.h"
#include "core/trial/trial_places.h"
#include "core/variety/variety_repository.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

std::optional<double> times(std::optional<double> one, double count)
{
    return one ? std::optional(*one * count) : std::nullopt;
}

// Collects what the trays of a draft take.
class PreparationMaker
{
public:
    PreparationMaker(Database& database, const TrialDraft& draft, const Protocol& protocol)
        : m_database(database)
        , m_draft(draft)
        , m_protocol(protocol)
        , m_facts(CostRepository(database).facts())
    {}

    void addSeed();
    void addMedium(const Medium& medium, int trays);
    void addWater(const Medium& medium, Feeding feeding);
    void addWaters();

    Preparation finish()
    {
        m_result.trays = m_draft.count();
        m_result.placesFree = static_cast<int>(freeSpotsFor(m_database, m_draft).size());
        m_result.currency = m_facts.layout.room.currency;
        for (const Supply& supply : m_result.supplies) {
            m_result.cost += supply.cost.value_or(0);
        }
        return std::move(m_result);
    }

private:
    // What one tray on that medium takes, but for water.
    [[nodiscard]] TrayUse useOn(const Medium& medium) const
    {
        TrayUse use;
        use.sownOn = m_draft.plan.sowOn;
        use.medium = &medium;
        use.seedLot = m_draft.plan.seedLot;
        use.seed = seedPerTray();
        return use;
    }
    [[nodiscard]] std::optional<Mass> seedPerTray() const
    {
        return m_draft.plan.seedPerTray ? m_draft.plan.seedPerTray : m_protocol.variety.seedPerTray;
    }
    [[nodiscard]] std::optional<double> priceOf(PriceItem item, double litres) const
    {
        const auto price = priceOn(m_facts.prices, item, m_draft.plan.sowOn);
        return price ? std::optional(*price * litres) : std::nullopt;
    }
    [[nodiscard]] int cleanPiecesOf(MediumId medium) const;

    Database& m_database;
    const TrialDraft& m_draft;
    const Protocol& m_protocol;
    CostFacts m_facts;
    std::map<WaterKind, Volume> m_waters;
    Preparation m_result;
};

void PreparationMaker::addSeed()
{
    const auto seed = seedPerTray();
    if (!seed) {
        return;
    }
    Supply supply;
    supply.kind = SupplyKind::Seed;
    supply.name = m_protocol.variety.name;
    supply.needed = inGrams(*seed * m_draft.count());
    std::optional<Mass> left = Mass{};
    for (const SeedLotStock& stock :
         VarietyRepository(m_database)
             .stock(m_draft.plan.variety, m_draft.plan.seedLot ? Listed::All : Listed::InUse)) {
        if (!m_draft.plan.seedLot || stock.lot.id == *m_draft.plan.seedLot) {
            left = left && stock.left ? std::optional(*left + *stock.left) : std::nullopt;
        }
        if (stock.lot.id == m_draft.plan.seedLot) {
            supply.name += " " + stock.lot.lotNumber;
        }
    }
    supply.inStock = left ? std::optional(inGrams(*left)) : std::nullopt;
    const Medium none;
    supply.cost = times(costOf(useOn(none), m_facts).seed, m_draft.count());
    m_result.supplies.push_back(std::move(supply));
}

int PreparationMaker::cleanPiecesOf(MediumId medium) const
{
    const auto pieces = MediumRepository(m_database).pieces(medium, Listed::InUse);
    return static_cast<int>(std::count_if(pieces.begin(), pieces.end(),
                                          [](const PieceRecord& piece) { return piece.isFree(); }));
}

void PreparationMaker::addMedium(const Medium& medium, int trays)
{
    Supply supply;
    supply.name = medium.name;
    supply.cost = times(costOf(useOn(medium), m_facts).medium, trays);
    if (medium.form == MediumForm::LooseMix) {
        if (!medium.amountPerTray) {
            return;
        }
        supply.kind = SupplyKind::LooseMix;
        supply.needed = inLitres(*medium.amountPerTray * trays);
    } else {
        supply.kind = SupplyKind::Pieces;
        supply.needed = trays;
        if (medium.isReusable) {
            supply.inStock = cleanPiecesOf(medium.id);
        }
    }
    m_result.supplies.push_back(std::move(supply));
}

void PreparationMaker::addWater(const Medium& medium, Feeding feeding)
{
    const auto stages =
        stagesFor(m_protocol, medium, m_draft.plan.sowAt(),
                  m_draft.plan.startsWithSoak ? FirstStage::Soak : FirstStage::AfterSoak, feeding);
    for (const TrayStage& stage : stages) {
        const double days = static_cast<double>(stage.lengthMinutes) / kMinutesPerDay;
        const auto waterings = std::llround(days * stage.wateringsPerDay);
        if (stage.amount && waterings > 0) {
            m_waters[stage.water] += *stage.amount * waterings * m_draft.plan.traysEach;
        }
    }
}

void PreparationMaker::addWaters()
{
    Supply water;
    water.kind = SupplyKind::Water;
    for (const auto& [kind, volume] : m_waters) {
        water.needed += inLitres(volume);
    }
    for (const WaterRecipe& recipe : m_facts.recipes) {
        const auto mixed = m_waters.find(recipe.water);
        if (mixed == m_waters.end() || !recipe.dosePerLitre) {
            continue;
        }
        const Volume amount = concentrateFor(mixed->second, *recipe.dosePerLitre);
        Supply concentrate;
        concentrate.kind = SupplyKind::Concentrate;
        concentrate.name = recipe.concentrate;
        concentrate.needed = inMillilitres(amount);
        // The journal keeps the price of the nutrient alone.
        if (recipe.water == WaterKind::Nutrient) {
            concentrate.cost = priceOf(PriceItem::Concentrate, inLitres(amount));
        }
        m_result.supplies.push_back(std::move(concentrate));
    }
    if (water.needed > 0) {
        water.cost = priceOf(PriceItem::Water, water.needed);
        m_result.supplies.push_back(std::move(water));
    }
}

} // namespace

Result<Preparation> preparationOf(Database& database, const TrialDraft& draft)
{
    const auto protocol = VarietyRepository(database).protocol(draft.plan.variety);
    if (!protocol) {
        return fail(ErrorKind::NotFound, TrayReason::VarietyUnknown);
    }
    const std::map<MediumId, Medium> media = MediumRepository(database).byId();
    PreparationMaker maker(database, draft, *protocol);
    maker.addSeed();
    std::map<MediumId, int> trays;
    std::vector<MediumId> inOrder;
    for (const Treatment& treatment : draft.treatments) {
        const auto medium = media.find(treatment.medium);
        if (medium == media.end()) {
            return fail(ErrorKind::NotFound, TrayReason::MediumUnknown);
        }
        if (trays.count(treatment.medium) == 0) {
            inOrder.push_back(treatment.medium);
        }
        trays[treatment.medium] += draft.plan.traysEach;
        maker.addWater(medium->second, treatment.feeding);
    }
    for (const MediumId medium : inOrder) {
        maker.addMedium(media.at(medium), trays[medium]);
    }
    maker.addWaters();
    return maker.finish();
}

} // namespace plumule
