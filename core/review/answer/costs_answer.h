#pragma once

#include "core/cost/price_history.h"
#include "core/review/season/medium_costs.h"
#include "core/review/season/payback.h"
#include "core/review/season/what_if.h"

namespace plumule {

// What is asked of the costs of a span's trays.
struct CostsQuestion
{
    SeasonFilter filter;
    WhatIf whatIf; // shown beside what was paid, never in its place
};

// Where the money went. Everything but what says so is of the prices that were paid.
struct CostsAnswer
{
    SeasonReview review; // of the trays that were harvested
    UnitSystem units = UnitSystem::Metric;
    Date madeOn;
    std::vector<MediumCosts> media; // as mediumCosts() has them
    int harvested = 0;
    int failed = 0;
    CostLacks lacks;
    std::vector<Payback> paybacks;
    std::vector<CurveLack> curveLacks;
    std::vector<Payback> paybacksIf;     // as the what-if has it; empty without one
    std::vector<PriceHistory> histories; // of all items, the trays' media, and where one variety is
                                         // asked for its seed
    std::optional<double> seedPrice;     // paid for a kilogram, over these trays
};

// Cancelled when stopped.
[[nodiscard]] Result<CostsAnswer> costsAnswerOf(const CostsQuestion& question, SeasonFacts facts,
                                                Date today, const Progress& progress = {});

} // namespace plumule
