#pragma once

#include "line.h"

namespace plumule::calibration {

// The head of the table, and a row of it: room, sets, false verdicts with their Monte Carlo error
// and bound, the same by a model with trays as replicates, found, coverage, and whether it holds.
void printHead();
void printSection(const std::string& title);
void printRow(const Line& line, const Tally& tally);

// Whether the bounds hold; `errors` Monte Carlo standard errors are forgiven.
[[nodiscard]] bool holds(const Line& line, const Tally& tally, double errors = 0);

} // namespace plumule::calibration
