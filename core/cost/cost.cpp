#include "core/cost/cost.h"

#include "core/cost/tray_use.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace plumule {
namespace {

using Part = std::optional<double>;

constexpr std::array kParts = {&TrayCost::seed,     &TrayCost::medium,    &TrayCost::washing,
                               &TrayCost::nutrient, &TrayCost::water,     &TrayCost::light,
                               &TrayCost::labour,   &TrayCost::packaging, &TrayCost::waste};

// An amount of nothing costs nothing, whatever the price.
Part priced(Part amount, Part price)
{
    if (amount && *amount == 0) {
        return 0.0;
    }
    if (!amount || !price) {
        return std::nullopt;
    }
    return *amount * *price;
}

// The prices and minutes that hold for one tray.
class Tariff
{
public:
    Tariff(const CostFacts& facts, Date day)
        : m_facts(facts)
        , m_day(day)
    {}

    [[nodiscard]] Part price(PriceItem item, std::optional<MediumId> medium = std::nullopt) const
    {
        return priceOn(m_facts.prices, item, m_day, medium);
    }

private:
    const CostFacts& m_facts;
    Date m_day;
};

Part seedCost(const TrayUse& use, const CostFacts& facts)
{
    const auto lot = use.seedLot ? facts.lots.find(*use.seedLot) : facts.lots.end();
    if (!use.seed || lot == facts.lots.end()) {
        return std::nullopt;
    }
    const auto& [id, bought] = *lot;
    if (!bought.price || !bought.bought || bought.bought->count() <= 0) {
        return std::nullopt;
    }
    return inUnits(*bought.price) * (*use.seed / *bought.bought);
}

Part mediumCost(const Medium& medium, const Tariff& tariff)
{
    const Part price = tariff.price(PriceItem::Medium, medium.id);
    if (medium.form == MediumForm::LooseMix) {
        const Part amount =
            medium.amountPerTray ? Part(inLitres(*medium.amountPerTray)) : std::nullopt;
        return priced(amount, price);
    }
    if (!medium.isReusable) {
        return price;
    }
    if (!price || medium.plannedUses.value_or(0) < 1) {
        return std::nullopt;
    }
    return *price / *medium.plannedUses;
}

// Work is paid by the hour.
Part paid(Part minutes, const Tariff& tariff)
{
    return priced(minutes ? Part(*minutes / 60) : std::nullopt, tariff.price(PriceItem::Labour));
}

Part washingCost(const Medium& medium, const CostFacts& facts, const Tariff& tariff)
{
    if (!medium.isReusable) {
        return 0.0;
    }
    const Part work = paid(washingMinutes(medium, facts.labour), tariff);
    const Part supplies = tariff.price(PriceItem::Washing);
    return work && supplies ? Part(*work + *supplies) : std::nullopt;
}

Part nutrientCost(const TrayUse& use, const CostFacts& facts, const Tariff& tariff)
{
    if (use.nutrient && use.nutrient->count() == 0) {
        return 0.0;
    }
    const auto recipe =
        std::find_if(facts.recipes.begin(), facts.recipes.end(),
                     [](const WaterRecipe& entry) { return entry.water == WaterKind::Nutrient; });
    if (!use.nutrient || recipe == facts.recipes.end() || !recipe->dosePerLitre) {
        return std::nullopt;
    }
    const Volume concentrate = concentrateFor(*use.nutrient, *recipe->dosePerLitre);
    return priced(inLitres(concentrate), tariff.price(PriceItem::Concentrate));
}

Part kilowattHours(const TrayUse& use, const RoomLayout& layout)
{
    if (!use.light) {
        return std::nullopt;
    }
    double sum = 0;
    for (const LitTime& lit : *use.light) {
        const auto shelf = std::find_if(layout.shelves.begin(), layout.shelves.end(),
                                        [&](const Shelf& entry) { return entry.id == lit.shelf; });
        const int places = layout.placesOn(lit.shelf);
        if (shelf == layout.shelves.end() || !shelf->lightMilliwatts || !shelf->lightMinutes ||
            places == 0) {
            return std::nullopt;
        }
        const double days = static_cast<double>(lit.minutes) / kMinutesPerDay;
        const double lampHours = days * *shelf->lightMinutes / 60.0;
        sum += static_cast<double>(*shelf->lightMilliwatts) * 1e-6 * lampHours / places;
    }
    return sum;
}

} // namespace

double TrayCost::total() const
{
    double sum = 0;
    for (const auto part : kParts) {
        sum += (this->*part).value_or(0);
    }
    return sum;
}

int TrayCost::unknownParts() const
{
    return static_cast<int>(std::count_if(kParts.begin(), kParts.end(),
                                          [&](const auto part) { return !(this->*part); }));
}

std::optional<int> paybackUse(double piecePrice, double singleUseCost, double washingCost)
{
    if (piecePrice <= 0) {
        return washingCost <= singleUseCost ? std::optional(1) : std::nullopt;
    }
    const double uses = piecePrice / (singleUseCost - washingCost);
    if (singleUseCost <= washingCost || uses > 1e6) {
        return std::nullopt;
    }
    // Prices are exact to 1/10 000, quotients are not: 12.000000000000002 uses are 12.
    return std::max(1, static_cast<int>(std::ceil(uses * (1 - 1e-12))));
}

double unitsIn(PriceMeasure measure)
{
    constexpr double kLitresPerGallon = 3.785411784;
    constexpr double kKilogramsPerPound = 0.45359237;
    switch (measure) {
    case PriceMeasure::Unit:
        return 1;
    case PriceMeasure::CubicMetre:
        return 1000;
    case PriceMeasure::CubicFoot:
        return 28.316846592;
    case PriceMeasure::UsQuart:
        return kLitresPerGallon / 4;
    case PriceMeasure::UsGallon:
        return kLitresPerGallon;
    case PriceMeasure::ThousandUsGallons:
        return 1000 * kLitresPerGallon;
    case PriceMeasure::UsFluidOunce:
        return kLitresPerGallon / 128;
    case PriceMeasure::Pound:
        return kKilogramsPerPound;
    case PriceMeasure::Ounce:
        return kKilogramsPerPound / 16;
    }
    assert(false);
    return 1;
}

std::optional<double> priceOn(const std::vector<Price>& prices, PriceItem item, Date day,
                              std::optional<MediumId> medium)
{
    const Price* holding = nullptr;
    for (const Price& price : prices) {
        if (price.item == item && price.medium == medium && price.from <= day &&
            (holding == nullptr || price.from > holding->from)) {
            holding = &price;
        }
    }
    return holding == nullptr ? std::nullopt
                              : std::optional(inUnits(holding->amount) / unitsIn(holding->measure));
}

TrayCost costOf(const TrayUse& use, const CostFacts& facts)
{
    assert(use.medium != nullptr);
    const Tariff tariff(facts, use.sownOn);
    const auto litresOf = [](std::optional<Volume> volume) {
        return volume ? Part(inLitres(*volume)) : std::nullopt;
    };
    TrayCost cost;
    cost.seed = seedCost(use, facts);
    cost.medium = mediumCost(*use.medium, tariff);
    cost.washing = washingCost(*use.medium, facts, tariff);
    cost.nutrient = nutrientCost(use, facts, tariff);
    cost.water = priced(litresOf(use.water), tariff.price(PriceItem::Water));
    cost.light = priced(kilowattHours(use, facts.layout), tariff.price(PriceItem::Electricity));
    cost.labour = paid(tendingMinutes(use, facts.labour), tariff);
    cost.packaging = priced(use.isHarvested ? 1.0 : 0.0, tariff.price(PriceItem::Packaging));
    const Part waste = use.residue ? Part(inGrams(*use.residue) / 1e3) : std::nullopt;
    cost.waste = priced(waste, tariff.price(PriceItem::Waste));
    return cost;
}

} // namespace plumule
