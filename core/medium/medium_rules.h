#pragma once

#include "core/base/result.h"
#include "core/medium/medium.h"

namespace plumule {

inline constexpr int kMarkers = 24;
inline constexpr int kMostPiecesAtOnce = 500;
inline constexpr double kMostPercent = 100;
inline constexpr double kMostPpm = 100'000; // a tenth of the whole: stronger is told in percent

// Missing name; Invalid: planned uses under 1 or for a single-use medium, a reusable loose mix, a
// depth below the rim or an amount that is negative, a marker that does not exist.
[[nodiscard]] Done checkMedium(const Medium& medium);

// Missing method; Invalid: no strength, or more than there can be; no minute, or more than a day.
[[nodiscard]] Done checkSanitising(const SanitisingDraft& how);

// The first marker that is not among the used ones; all taken, the one used least.
[[nodiscard]] int nextMarker(const std::vector<int>& used);

// Whether a piece last used at `used` and last sanitised at `sanitised` must be sanitised before it
// is sown on.
[[nodiscard]] bool needsSanitising(std::optional<Moment> used, std::optional<Moment> sanitised);

} // namespace plumule
