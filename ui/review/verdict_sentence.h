#pragma once

#include "core/review/comparison/comparison.h"

#include <QString>

namespace plumule::ui {

// The catalogue: what is said of two media in each situation, in a sentence or two. Of a trial what
// they gave, of a series what they give. Tests print it whole.
[[nodiscard]] QString pairSentence(const MediaPair& pair, const SeasonComparison& comparison);
// The same in a few words, for a table: "more", "can't tell yet: 4 more trials".
[[nodiscard]] QString pairWords(const MediaPair& pair, const SeasonComparison& comparison);
// Of groups of media.
[[nodiscard]] QString groupSentence(const MediaPair& pair, const SeasonComparison& comparison);

// A medium's name; with its feeding where that is what is compared.
[[nodiscard]] QString nameInPair(std::size_t medium, const MediaPair& pair,
                                 const SeasonComparison& comparison);
// "reusable", "mesh", or the grower's word.
[[nodiscard]] QString groupName(const GroupOfMedia& group);

// "Steel mesh over coir mix".
[[nodiscard]] QString pairName(const MediaPair& pair, const SeasonComparison& comparison);
// The same of groups.
[[nodiscard]] QString groupPairName(const MediaPair& pair, const SeasonComparison& comparison);

// "4 to 21 %", with one decimal where a whole number would hide on which side of 0 it lies; on a
// linear scale in the response's unit. Empty without an interval.
[[nodiscard]] QString intervalText(const MediaPair& pair, const SeasonComparison& comparison);

// "About 4 more trials with 4 trays of each."; empty where nothing is advised.
[[nodiscard]] QString moreSentence(const MediaPair& pair);

// "2 of 5 trials in; the answer comes with the fifth."
[[nodiscard]] QString waitingSentence(const SeasonComparison& comparison);

} // namespace plumule::ui
