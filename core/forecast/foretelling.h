#pragma once

#include "core/forecast/known_past.h"

namespace plumule {

// From a prediction of log grams.
[[nodiscard]] YieldForecast yieldFrom(const CellPrediction& prediction);

// When a tray's stages have its first cut, and how far that is known: the protocol's moment,
// counted from the last stage that began, or from the end of one that was put off. A stage that
// outlasts its length has those after it still to come.
struct CutPlan
{
    Stage from = Stage::Light; // counted from its start
    Moment planned;
    Moment notBefore;
    Date asPlanned; // before what is put off
};
// There is a stage at least. One that has not begun begins at `sownAt`.
[[nodiscard]] CutPlan cutPlan(const std::vector<StageFact>& stages, Moment sownAt, Moment now);

// From a prediction of days after the plan's moment.
[[nodiscard]] DayForecast dayFrom(const CellPrediction& prediction, const CutPlan& plan);

// How many times as wide intervals from the room's past are drawn; what the library says never is.
struct Widening
{
    double yield = 1;
    double day = 1;
};
[[nodiscard]] CellPrediction widened(CellPrediction prediction, double times);

// Of a tray as the facts know it, which `past` is of.
[[nodiscard]] TrayForecast foretell(const KnownPast& past, const TrayFact& tray, Moment now,
                                    Widening widening);

} // namespace plumule
