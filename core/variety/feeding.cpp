#include "core/variety/feeding.h"

#include "core/base/enum_text.h"

namespace plumule {

const char* toText(Feeding feeding)
{
    switch (feeding) {
    case Feeding::AsProtocol:
        return "as_protocol";
    case Feeding::Nutrient:
        return "nutrient";
    case Feeding::NoNutrient:
        return "no_nutrient";
    }
    return "";
}

bool fromText(std::string_view text, Feeding& feeding)
{
    return matchText(text, std::array{Feeding::AsProtocol, Feeding::Nutrient, Feeding::NoNutrient},
                     feeding);
}

} // namespace plumule
