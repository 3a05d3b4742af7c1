#include "core/climate/climate_sums.h"

#include <cmath>

namespace plumule {

double saturationVapourPressure(double celsius)
{
    return 0.6108 * std::exp(17.27 * celsius / (celsius + 237.3));
}

double vapourPressureDeficit(double celsius, double humidityPercent)
{
    return saturationVapourPressure(celsius) * (1 - humidityPercent / 100);
}

} // namespace plumule
