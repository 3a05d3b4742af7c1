#pragma once

#include "core/journal/journal.h"
#include "ui/review/report_parts.h"

namespace plumule::ui {

// Everything that a season's report is made from.
struct SeasonReportFacts
{
    std::string room;
    Date madeOn;
    SeasonReview review;
    SeasonComparison yield;
    SeasonComparison cost;
    std::vector<HeightFit> heights;
    std::vector<Payback> paybacks;
    std::vector<PieceAgeing> ageing;
    std::vector<Protocol> protocols;      // of the varieties reviewed
    std::vector<std::string> filterNames; // varieties and trials that the season is narrowed to
    std::vector<TastingResult> tastings;  // closed within the span
};

// Reads and works it all out; Cancelled when stopped between two of its parts.
[[nodiscard]] Result<SeasonReportFacts>
seasonReportFacts(Journal& journal, const SeasonFilter& filter, const Progress& progress = {});

[[nodiscard]] Report seasonReport(const SeasonReportFacts& facts);

} // namespace plumule::ui
