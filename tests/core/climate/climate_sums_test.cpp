#include "core/climate/climate_sums.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith 1998). Example 3 gives 1.705
// kPa at 15.0 °C and 3.075 kPa at 24.5 °C; the others are of its table 2.3 (from memory). They are
// rounded to 1 Pa there.
TEST(ClimateSums, GiveThePublishedSaturationPressures)
{
    const std::pair<double, double> kPublished[] = {{15.0, 1.705}, {24.5, 3.075}, {1.0, 0.657},
                                                    {5.0, 0.872},  {10.0, 1.228}, {18.0, 2.064},
                                                    {20.0, 2.338}, {25.0, 3.168}, {30.0, 4.243}};
    for (const auto& [celsius, kilopascal] : kPublished) {
        EXPECT_NEAR(saturationVapourPressure(celsius), kilopascal, 0.0006) << celsius;
    }
}

// The same paper's example 5 has the actual pressure from the extremes of a day: 18 °C with 82 %
// and 25 °C with 54 % make 1.70 kPa; what is lacking to saturation at each is its deficit.
TEST(ClimateSums, GiveThePublishedDeficit)
{
    const double actual = (saturationVapourPressure(18) - vapourPressureDeficit(18, 82) +
                           saturationVapourPressure(25) - vapourPressureDeficit(25, 54)) /
                          2;
    EXPECT_NEAR(actual, 1.70, 0.005);
    // Example 6: 2.62 kPa of saturation less those 1.70 leave 0.91.
    const double saturated = (saturationVapourPressure(18) + saturationVapourPressure(25)) / 2;
    EXPECT_NEAR(saturated - actual, 0.91, 0.006);
}

TEST(ClimateSums, LackNothingInSaturatedAir)
{
    EXPECT_DOUBLE_EQ(vapourPressureDeficit(21, 100), 0);
    EXPECT_DOUBLE_EQ(vapourPressureDeficit(21, 0), saturationVapourPressure(21));
}

// A maker of quantum sensors publishes 1 µmol/m²/s all day as 0.0864 mol/m² (Apogee Instruments,
// "Conversion of instantaneous PPF to integrated daily PPF").
TEST(ClimateSums, AddLightUpToThePublishedIntegral)
{
    EXPECT_DOUBLE_EQ(dailyLight(1, 24), 0.0864);
    EXPECT_DOUBLE_EQ(dailyLight(200, 16), 11.52);
    EXPECT_DOUBLE_EQ(dailyLight(0, 24), 0);
}

// NIST SP 811, appendix B: t/°C = (t/°F − 32)/1.8.
TEST(ClimateSums, TurnFahrenheitIntoCelsiusAndBack)
{
    EXPECT_DOUBLE_EQ(celsiusOfFahrenheit(32), 0);
    EXPECT_DOUBLE_EQ(celsiusOfFahrenheit(212), 100);
    EXPECT_DOUBLE_EQ(fahrenheitOfCelsius(-40), -40);
    EXPECT_DOUBLE_EQ(fahrenheitOfCelsius(celsiusOfFahrenheit(71.3)), 71.3);
}

} // namespace
} // namespace plumule
