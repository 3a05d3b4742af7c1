#include "core/watering/watering.h"

namespace plumule {

Volume concentrateFor(Volume water, Volume dosePerLitre)
{
    return dosePerLitre.scaledBy(inLitres(water));
}

double millilitresPerLitreFrom(double usFluidOuncesPerUsGallon)
{
    return inMillilitres(usFluidOunces(usFluidOuncesPerUsGallon)) / inLitres(usGallons(1));
}

} // namespace plumule
