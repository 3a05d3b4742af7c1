#pragma once

#include <string_view>

namespace plumule::stats {

// Why a power or a count of trays was not worked out.
enum class PowerReason
{
    Spread,
    Risk,  // of an error of the first kind
    Power, // the one wanted
    OneGroup,
    Count,
    TooFewEach, // no degree of freedom is left
    Difference,
    OutOfReach, // no count or difference has the power wanted
};

constexpr std::string_view familyOf(PowerReason)
{
    return "power";
}

} // namespace plumule::stats
