#pragma once

#include "core/base/progress.h"
#include "core/review/comparison/comparison.h"
#include "core/review/season/height_fits.h"
#include "core/review/season/payback.h"
#include "core/review/season/piece_ageing.h"
#include "core/review/season/season_spans.h"
#include "core/review/season/what_if.h"
#include "core/tasting/tasting_result.h"
#include "core/variety/variety.h"

#include <set>

namespace plumule {

// What can be asked beside comparisons. What is not asked for stays empty.
enum class SeasonPart
{
    HeightFits,
    Paybacks,
    Ageing,
    Tastings,
    Protocols // of the varieties that were grown
};

// Everything asked of a season at once, so that it is read once.
struct SeasonQuestion
{
    SeasonFilter filter;
    Series series; // what the filter is of
    std::vector<ComparisonAsk> asks;
    std::set<SeasonPart> parts;
    WhatIf whatIf;
    std::vector<SeasonFilter> beside; // other spans to show next to it
};

// A closed tasting, and why it has no result where it has none.
struct TastingOfSpan
{
    Panel panel;
    Result<TastingResult> result;
};

struct TastingsOfSpan
{
    std::vector<TastingOfSpan> closed; // newest first
    int open = 0;
};

// A part that fails says why, and costs the others nothing.
struct SeasonAnswer
{
    std::string room;
    UnitSystem units = UnitSystem::Metric;
    Date madeOn;
    Series series;
    std::vector<std::string> chosen; // names of the varieties, trials and shelves asked for
    SeasonReview review;
    std::vector<SeasonComparison> comparisons; // as asked
    std::vector<HeightFit> heights;
    std::vector<Payback> paybacks;
    std::vector<CurveLack> curveLacks;
    std::vector<PieceAgeing> ageing;
    std::vector<SeasonBeside> beside; // as asked
    Result<TastingsOfSpan> tastings;
    Result<std::vector<Protocol>> protocols;

    // One that was asked for.
    [[nodiscard]] const SeasonComparison& comparison(Response response) const;
};

// What an answer is worked out from, read in one go.
struct AnswerFacts
{
    SeasonFacts season;
    Result<std::vector<PanelRecord>>
        panels; // of closed tastings their record, of open ones no more
    Result<std::vector<Protocol>> protocols; // than the panel
    Date today;
};

// Cancelled when stopped.
[[nodiscard]] Result<SeasonAnswer> answerOf(const SeasonQuestion& question, AnswerFacts facts,
                                            const Progress& progress = {});

// Whether a tasting belongs to the trials and days of the filter.
[[nodiscard]] bool isOfSpan(const Panel& panel, const SeasonFilter& filter);

} // namespace plumule
