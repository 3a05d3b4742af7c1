#include "core/watering/watering.h"

namespace plumule {

Volume concentrateFor(Volume water, Volume dosePerLitre)
{
    return dosePerLitre.scaledBy(inLitres(water));
}

double millilitresPerLitreFrom(double usFluidOuncesPerUsGallon)
{
    return usFluidOuncesPerUsGallon * kMillilitresPerUsFluidOunce / (kMillilitresPerUsGallon / 1e3);
}

} // namespace plumule
