#pragma once

#include "core/stats/verdict/media_answer.h"

namespace plumule::stats {

inline constexpr double kOpenRisk = 0.04;   // shared by all looks: 4 %/sowings at each
inline constexpr double kSingleRisk = 0.05; // looked at once
inline constexpr double kLeastVariance = 1e-8;
inline constexpr double kFewestDegrees = 2;

// Media, means without values and pairs without numbers, for either kind of answer.
[[nodiscard]] MediaAnswer frameOf(std::span<const SownTray> trays, const VerdictAsk& ask);

// The risk of one metric out of those that share it.
[[nodiscard]] double sharedRisk(double risk, const VerdictAsk& ask);

[[nodiscard]] bool isConfounded(const VerdictAsk& ask, std::size_t a, std::size_t b);
[[nodiscard]] bool isOfSurvivors(const VerdictAsk& ask, std::size_t a, std::size_t b);

// The spread of the fit, under which nothing can be told. `mean` is of the values, for a linear
// scale; logs are relative already.
[[nodiscard]] bool hasNoSpread(double variance, CellScale scale, double mean);

// h = c √(variance · relative variance) of a pair, its se, df, level and critical value.
struct PairGround
{
    std::size_t media = 0;
    double df = 0;
    double level = 0;
    double variance = 0;
    double relativeVariance = 0;
};
void takeInterval(PairAnswer& pair, const PairGround& ground);

void refuse(PairAnswer& pair, Verdict verdict, NoVerdictReason why);
// Why not to judge a pair whatever its numbers; true when there is such a reason, then said.
bool refusedBeforehand(PairAnswer& pair, const MediaAnswer& answer, const VerdictAsk& ask);
// The verdict from the pair's interval.
void judge(PairAnswer& pair, double margin);

} // namespace plumule::stats
