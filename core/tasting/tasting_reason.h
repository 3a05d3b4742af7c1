#pragma once

#include <string_view>

namespace plumule {

// Why something of a tasting was refused.
// An enumerator's values stand beside it.
enum class TastingReason
{
    Unknown,
    NameMissing,
    TooFewMedia,
    TooManyMedia, // the most
    TriangleMedia,
    MediumTwice,
    NoTasters,
    TasterTwice, // the name
    NoAttributes,
    TooManyAttributes, // the most
    AttributeTwice,    // the name
    AttributeUnknown,
    TooManyServings, // servings, the most
    NamesAMedium,    // the medium
    HasScores,       // its name
    Closed,          // its name
    Open,            // its name
    CodeUnknown,     // the code
    ScoreRange,      // the highest
    NoScore,         // the code
    NoScores,
    RankTwice, // the taster, the attribute, the codes
};

constexpr std::string_view familyOf(TastingReason)
{
    return "tasting";
}

} // namespace plumule
