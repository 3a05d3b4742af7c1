#pragma once

#include "line.h"

// The rooms by subject; allSections() puts them in the table's order.
namespace plumule::calibration {

[[nodiscard]] Section promisedRooms(); // false verdicts at most 5 % (6 %, 0)
[[nodiscard]] Section promisedCosts();
[[nodiscard]] Section throughPages(); // the program's comparison, not its engine alone
[[nodiscard]] Section power();
[[nodiscard]] Section oneTrial();
[[nodiscard]] Section seasons();
[[nodiscard]] Section plans();
[[nodiscard]] Section varieties();
[[nodiscard]] Section growers();
[[nodiscard]] Section otherQuestions(); // groups, metrics, discards, payback
[[nodiscard]] Section whatBreaksIt();
[[nodiscard]] Section squares(); // Latin ones
[[nodiscard]] Section forecasts();
[[nodiscard]] Section orders();
[[nodiscard]] Section heights(); // the day of 90 % of full height

} // namespace plumule::calibration
