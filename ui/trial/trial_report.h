#pragma once

#include "core/journal/journal.h"
#include "core/review/charts/block_chart.h"
#include "ui/review/report_parts.h"

namespace plumule::ui {

// Everything that a trial's report is made from.
struct TrialReportFacts
{
    std::string room;
    Date madeOn;
    TrialProgress progress;
    SeasonReview review;
    SeasonComparison yield;
    SeasonComparison cost;
    SeasonComparison residue; // without means where none is on record
    std::vector<HeightFit> heights;
    std::vector<Payback> paybacks;
    std::vector<Protocol> protocols;
    std::vector<TastingResult> tastings; // closed ones
    std::vector<TrialDay> diary;
    QString photoFolder;
};

// Reads and works it all out; NotFound; Cancelled when stopped between two of its parts.
[[nodiscard]] Result<TrialReportFacts> trialReportFacts(Journal& journal, TrialId trial,
                                                        const Progress& progress = {});

[[nodiscard]] Report trialReport(const TrialReportFacts& facts);

// The trial's blocks, named with their shelf; one of all trays where it has none.
[[nodiscard]] std::vector<BlockOfTrays> blocksOf(const TrialProgress& progress);
// "RD003: no height on 5 Mar."
[[nodiscard]] QStringList lackWords(const TrialProgress& progress);

} // namespace plumule::ui
