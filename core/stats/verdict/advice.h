#pragma once

#include "core/stats/verdict/media_answer.h"

namespace plumule::stats {

inline constexpr int kMostSowingsMore = 30; // beyond: more than a year of trials

struct AdviceGround
{
    double cellVariance = 0;  // of medium × sowing cells; s² of the answer
    double cellDf = 0;        // 0 or less: nothing known, then media are taken to do alike
    double trayVariance = 0;  // within sowings
    double harmonicTrays = 1; // a cell, so far
    double traysEach = 1;     // a cell, in the sowings to come
    std::size_t media = 2;
    int sowings = 0;     // so far
    double margin = 0;   // to be told apart, on the scale of the variances
    int sideMetrics = 0; // that share the level; 0: the main metric
};

struct Advice
{
    // In all, and from here. None: more than kMostSowingsMore.
    std::optional<int> sowings;
    std::optional<int> moreSowings;
    double trialVariance = 0; // medium × sowing, as supposed
    // How far media do unlike from sowing to sowing isn't known yet: it may take more.
    bool isAtLeast = false;
};

// The fewest sowings N above those so far with (c(M, ν, 4 %/N) + t(0.8; ν)) √(2v/N) ≤ margin, ν =
// (N − 1)(M − 1): told apart four times in five. v is a cell's variance, its medium × sowing part
// from s² at the median of its chi-square. Media from 2, trays above 0, margin above 0.
[[nodiscard]] Advice sowingsNeeded(const AdviceGround& ground);

// From an answer, with so many trays a cell in the sowings to come. None where trays or cells give
// no spread to go by, or fewer than two media have any.
[[nodiscard]] std::optional<Advice> adviceFor(const MediaAnswer& answer, const VerdictAsk& ask,
                                              double traysEach);

} // namespace plumule::stats
