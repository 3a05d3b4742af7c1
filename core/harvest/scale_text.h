#pragma once

#include "core/base/quantity.h"
#include "core/base/result.h"

#include <string_view>

namespace plumule {

enum class MassUnit
{
    Gram,
    Ounce
};

struct ScaleReading
{
    Mass mass;
    bool isStable = true; // false where the scale says "US" (unstable) or sends "?"
    bool isNet = false;   // the scale's own tare is taken off already ("NT")
};

// Reads what a grower types or a scale sends: "331.5", "331,5 g", "+0331.5 g", "ST,GS,  331.5g",
// "US,NT,+ 12.3 g", "11.69 oz", "0.3 kg". Without a unit, `unit` is taken. Ambiguous for
// "1,234"; Invalid for anything else, for two decimal marks, and for weights beyond ±50 kg.
[[nodiscard]] Result<ScaleReading> scaleReadingFrom(std::string_view text, MassUnit unit);

} // namespace plumule
