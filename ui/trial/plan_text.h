#pragma once

#include "core/journal/trial/trial_entries.h"
#include "core/review/planning/trial_outlook.h"
#include "ui/text/text.h"

#include <QStringList>

namespace plumule::ui {

// "Chance of seeing a 30 g difference".
[[nodiscard]] QString powerTitle(const PlanOutlook& outlook, const UnitText& units);
// What the chosen number of trays can show, and how many would do.
[[nodiscard]] QStringList outlookWords(const PlanOutlook& outlook, const UnitText& units);
// Where the spread comes from: "16 g, from 44 trays of this variety".
[[nodiscard]] QString spreadWords(const PlanOutlook& outlook, const UnitText& units);
[[nodiscard]] QString marginWords(const PlanOutlook& outlook, const UnitText& units);

[[nodiscard]] QString nameOf(Design design);
// "row 2, column 3" in a Latin square; empty in other designs.
[[nodiscard]] QString squareWords(Design design, int row, int column);
// How the places were drawn, one sentence.
[[nodiscard]] QString drawWords(const TrialDraft& draft);
// "+ nutrient", "no nutrient", or nothing.
[[nodiscard]] QString nameOf(Feeding feeding);
[[nodiscard]] QString nameOf(TrialState state);
[[nodiscard]] QString nameOf(const Supply& supply);
// Of what is needed or there, with the supply's own unit.
[[nodiscard]] QString supplyText(SupplyKind kind, double amount, const UnitText& units);

} // namespace plumule::ui
