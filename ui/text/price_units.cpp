#include "ui/text/price_units.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

constexpr double kLitresPerCubicFoot = 28.316846592;
constexpr double kLitresPerGallon = 3.785411784;
constexpr double kLitresPerQuart = kLitresPerGallon / 4;
constexpr double kLitresPerFluidOunce = kLitresPerGallon / 128;
constexpr double kKilogramsPerPound = 0.45359237;
constexpr double kKilogramsPerOunce = kKilogramsPerPound / 16;
constexpr double kLitresPerCubicMetre = 1000;

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(PriceUnits)
};

std::vector<PriceUnit> customaryUnits(PriceItem item, bool isLooseMix)
{
    const PriceUnit quart{Words::tr("a quart"), kLitresPerQuart};
    const PriceUnit gallon{Words::tr("a gallon"), kLitresPerGallon};
    switch (item) {
    case PriceItem::Medium:
        return isLooseMix
                   ? std::vector<PriceUnit>{{Words::tr("a cubic foot"), kLitresPerCubicFoot}, quart}
                   : std::vector<PriceUnit>();
    case PriceItem::Concentrate:
        return {quart, gallon, {Words::tr("a fluid ounce"), kLitresPerFluidOunce}};
    case PriceItem::Water:
        return {{Words::tr("1,000 gallons"), 1000 * kLitresPerGallon}, gallon};
    case PriceItem::Waste:
        return {{Words::tr("a pound of residue"), kKilogramsPerPound},
                {Words::tr("an ounce of residue"), kKilogramsPerOunce}};
    default:
        return {};
    }
}

} // namespace

std::vector<PriceUnit> priceUnits(PriceItem item, bool isLooseMix, UnitSystem units)
{
    std::vector<PriceUnit> choices;
    if (units == UnitSystem::UsCustomary) {
        choices = customaryUnits(item, isLooseMix);
    }
    if (choices.empty()) {
        choices.push_back({unitOf(item, isLooseMix), 1});
        if (item == PriceItem::Water) {
            choices.push_back({Words::tr("a cubic metre"), kLitresPerCubicMetre});
        }
    }
    return choices;
}

} // namespace plumule::ui
