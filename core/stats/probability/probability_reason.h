#pragma once

#include <string_view>

namespace plumule::stats {

// Why a probability or a quantile was not worked out.
enum class ProbabilityReason
{
    Correlation, // it is not of a correlation's form
    OutOfRange,  // an argument beyond what the distribution is for
    NoRoot,      // the number sought was not found in reach
};

constexpr std::string_view familyOf(ProbabilityReason)
{
    return "probability";
}

} // namespace plumule::stats
