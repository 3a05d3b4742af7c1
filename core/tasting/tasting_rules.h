#pragma once

#include "core/base/result.h"
#include "core/tasting/tasting.h"

namespace plumule {

inline constexpr int kMostSamples = 9;    // common practice, no source
inline constexpr int kMostAttributes = 8; // what a taster's sheet has room for
inline constexpr int kMostServings = 900; // as many as there are codes

// The draft with its texts trimmed, its empty lines left out, and a triangle's only attribute.
[[nodiscard]] PanelDraft tidied(PanelDraft draft);

// Of a tidied draft. NameMissing; TooFewMedia (under two), TooManyMedia (over nine), TriangleMedia
// (other than two), MediumTwice; NoTasters, TasterTwice; NoAttributes, TooManyAttributes (over
// eight), AttributeTwice;
// TooManyServings (over 900).
[[nodiscard]] Done checkPanel(const PanelDraft& draft);

// NamesAMedium with that name where the panel's name or an attribute names a medium (in
// any letter case, A–Z): then the tasting would not be blind.
[[nodiscard]] Done checkIsBlind(const PanelDraft& draft, const std::vector<std::string>& media);

// ScoreRange, with the highest value allowed.
[[nodiscard]] Done checkScore(TastingMethod method, std::size_t samples, int value);

// Null where there is none.
[[nodiscard]] const Serving* servingWith(const PanelRecord& record, const std::string& code);
[[nodiscard]] const Taster* tasterOf(const PanelRecord& record, const Serving& serving);
[[nodiscard]] const Score* scoreOf(const PanelRecord& record, ServingId serving,
                                   PanelAttributeId attribute);
// By turn.
[[nodiscard]] std::vector<Serving> servingsOf(const PanelRecord& record, TasterId taster);

// What is still to come of one taster: the codes without a score at one attribute. Of a triangle
// all three codes, until one of them is named.
struct MissingScores
{
    Taster taster;
    PanelAttribute attribute;
    std::vector<std::string> codes; // by turn
};
[[nodiscard]] std::vector<MissingScores> missingScores(const PanelRecord& record);

// One taster gave one rank to two servings.
struct RankTwice
{
    Taster taster;
    PanelAttribute attribute;
    int rank = 0;
    std::vector<std::string> codes; // by turn
};
[[nodiscard]] std::vector<RankTwice> ranksTwice(const PanelRecord& record);

// Scores that a whole panel holds.
[[nodiscard]] int scoresWanted(const PanelRecord& record);

} // namespace plumule
