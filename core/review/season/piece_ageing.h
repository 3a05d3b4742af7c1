#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

struct AgeingPoint
{
    TrayId tray;
    std::string code;
    int use = 1;      // the tray was the n-th on its piece
    double value = 0; // g, adjusted to the mix of varieties and trials; as weighed without a slope
    bool operator==(const AgeingPoint&) const = default;
};

// Whether a piece yields less the more often it was used. Numbers are missing where the trays can't
// tell the uses from varieties or trials, or leave no spread to judge by.
struct PieceAgeing
{
    Medium medium;
    int pieces = 0;
    int trays = 0;
    int mostUses = 0;
    std::optional<double> slope; // g per tray for each further use
    std::optional<double> lower; // 95 % t interval
    std::optional<double> upper;
    std::optional<double> p;
    double meanUse = 0;
    double meanYield = 0;            // g, where the line passes the mean use
    std::vector<AgeingPoint> points; // by use, then code
};

// Of each reusable medium with three trays or more on two different uses or more, by medium id:
// least squares of the yield on the use, with variety and trial as factors where they vary.
[[nodiscard]] std::vector<PieceAgeing> pieceAgeing(const SeasonFacts& facts,
                                                   const SeasonFilter& filter);

// The trays, and the line where there is a slope. Key "yield_by_uses".
[[nodiscard]] ChartSpec ageingChart(const PieceAgeing& ageing);

} // namespace plumule
