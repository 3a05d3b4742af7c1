#include "core/climate/climate.h"

#include "core/base/enum_text.h"

namespace plumule {

const char* toText(LightUnit unit)
{
    return unit == LightUnit::Ppfd ? "ppfd" : "lux";
}

bool fromText(std::string_view text, LightUnit& unit)
{
    return matchText(text, std::array{LightUnit::Ppfd, LightUnit::Lux}, unit);
}

} // namespace plumule
