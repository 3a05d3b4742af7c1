#pragma once

#include <string_view>

namespace plumule {

// Whether a tray gets nutrient water where the protocol feeds.
enum class Feeding
{
    AsProtocol, // an inert medium does, a nutrient-bearing one does not
    Nutrient,   // it does, whatever the medium
    NoNutrient  // pH-set water instead
};
[[nodiscard]] const char* toText(Feeding feeding); // as_protocol, nutrient, no_nutrient
bool fromText(std::string_view text, Feeding& feeding);

} // namespace plumule
