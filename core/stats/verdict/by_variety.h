#pragma once

#include "core/stats/verdict/media_answer.h"

namespace plumule::stats {

// Fills gate and byVariety of an answer that has its level, media and pairs, from two varieties
// with two sowings of two media or more on. Pairs of a variety are judged where the gate is open,
// at level/(2 (varieties + 1)), on the spread within varieties.
void answerByVariety(MediaAnswer& answer, std::span<const VarietyCell> cells,
                     const VerdictAsk& ask);

} // namespace plumule::stats
