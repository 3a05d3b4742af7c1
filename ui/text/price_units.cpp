#include "ui/text/price_units.h"

#include "ui/text/text.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(PriceUnits)
};

PriceUnit priceUnit(PriceMeasure measure, PriceItem item, bool isLooseMix)
{
    const auto name = [&] {
        switch (measure) {
        case PriceMeasure::Unit:
            break;
        case PriceMeasure::CubicMetre:
            return Words::tr("a cubic metre");
        case PriceMeasure::CubicFoot:
            return Words::tr("a cubic foot");
        case PriceMeasure::UsQuart:
            return Words::tr("a quart");
        case PriceMeasure::UsGallon:
            return Words::tr("a gallon");
        case PriceMeasure::ThousandUsGallons:
            return Words::tr("1,000 gallons");
        case PriceMeasure::UsFluidOunce:
            return Words::tr("a fluid ounce");
        case PriceMeasure::Pound:
            return Words::tr("a pound of residue");
        case PriceMeasure::Ounce:
            return Words::tr("an ounce of residue");
        }
        return unitOf(item, isLooseMix);
    };
    return {name(), measure};
}

std::vector<PriceMeasure> customaryMeasures(PriceItem item, bool isLooseMix)
{
    switch (item) {
    case PriceItem::Medium:
        return isLooseMix ? std::vector{PriceMeasure::CubicFoot, PriceMeasure::UsQuart}
                          : std::vector<PriceMeasure>();
    case PriceItem::Concentrate:
        return {PriceMeasure::UsQuart, PriceMeasure::UsGallon, PriceMeasure::UsFluidOunce};
    case PriceItem::Water:
        return {PriceMeasure::ThousandUsGallons, PriceMeasure::UsGallon};
    case PriceItem::Waste:
        return {PriceMeasure::Pound, PriceMeasure::Ounce};
    default:
        return {};
    }
}

} // namespace

std::vector<PriceUnit> priceUnits(PriceItem item, bool isLooseMix, UnitSystem units,
                                  std::optional<PriceMeasure> given)
{
    std::vector<PriceMeasure> measures;
    if (units == UnitSystem::UsCustomary) {
        measures = customaryMeasures(item, isLooseMix);
    }
    if (measures.empty()) {
        measures.push_back(PriceMeasure::Unit);
        if (item == PriceItem::Water) {
            measures.push_back(PriceMeasure::CubicMetre);
        }
    }
    if (given && std::find(measures.begin(), measures.end(), *given) == measures.end()) {
        measures.push_back(*given);
    }
    std::vector<PriceUnit> choices;
    choices.reserve(measures.size());
    for (const PriceMeasure measure : measures) {
        choices.push_back(priceUnit(measure, item, isLooseMix));
    }
    return choices;
}

} // namespace plumule::ui
