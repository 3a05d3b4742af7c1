#pragma once

#include "core/forecast/forecast_sums.h"
#include "ui/text/text.h"

namespace plumule::ui {

// What forecasts are said in. Sentences end with a full stop, but for headings.

// "Of 40 harvests, 33 fell in their 80 % interval."
[[nodiscard]] QString coverageSentence(const ForecastReport& report);
// How many in 100 for yield and for the day, and how to read that.
[[nodiscard]] QString coverageDetail(const ForecastReport& report);
// "Red cabbage has scored badly: 3 of 6", and what follows; empty of one that has not.
[[nodiscard]] QString badHeading(const VarietyScore& score, const QString& variety);
[[nodiscard]] QString badDetail(const VarietyScore& score);
// "Yield from 24 trays of 8 sowings in this room, at this time of year; …", or the library's
// source.
[[nodiscard]] QString basisWords(const TrayForecast& forecast);

// "Sun 6 Dec".
// "Sun 6 Dec (5 Dec to 8 Dec)"; a dash where nothing is known.
[[nodiscard]] QString dayWords(const TrayForecast& forecast);
// Without the unit: "8.3–10.1".
[[nodiscard]] QString yieldRange(const YieldForecast& yield, const UnitText& units);
[[nodiscard]] QString yieldMiddle(const YieldForecast& yield, const UnitText& units);
// A mass as the scale counts it, in g or oz.
[[nodiscard]] double shownMass(Mass mass, const UnitText& units);

} // namespace plumule::ui
