#pragma once

namespace plumule {

// Saturation vapour pressure over water in kPa at a temperature in °C: Tetens' formula as FAO
// Irrigation and Drainage Paper 56 has it (Allen, Pereira, Raes and Smith 1998, equation 11):
// 0.6108·exp(17.27·T / (T + 237.3)).
[[nodiscard]] double saturationVapourPressure(double celsius);

// What the air could still take up, in kPa: saturation less what it holds at a relative humidity in
// percent (the same paper, equations 10 and 11). 0 at 100 %.
[[nodiscard]] double vapourPressureDeficit(double celsius, double humidityPercent);

// Daily light integral in mol/m² of a photon flux density in µmol/m²/s that shone for some hours:
// 3600 s an hour, a million µmol a mol.
[[nodiscard]] constexpr double dailyLight(double ppfd, double hours)
{
    return ppfd * hours * 0.0036;
}

[[nodiscard]] constexpr double celsiusOfFahrenheit(double fahrenheit)
{
    return (fahrenheit - 32) / 1.8;
}
[[nodiscard]] constexpr double fahrenheitOfCelsius(double celsius)
{
    return celsius * 1.8 + 32;
}

} // namespace plumule
