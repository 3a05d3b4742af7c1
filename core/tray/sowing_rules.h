#pragma once

#include "core/tray/tray.h"

namespace plumule {

inline constexpr int kMostTraysAtOnce = 500;

// Invalid, naming the field: the count, pieces that are not one a tray of a reusable medium, more
// places than trays, seed of nothing, a block under 1, a code for several trays. Conflict: a piece
// or place given twice. Whether they exist and are free is not looked at.
[[nodiscard]] Done checkSowing(const SowingDraft& draft, const Medium& medium);

// Invalid: a reading beyond 0 to 1 m above the surface. From a rim whose depth is not known it may
// not be below the rim.
[[nodiscard]] Done checkHeight(const Height& height, const Medium& medium);

// Conflict: the tray has no such stage begun. Invalid: before the stage before it began, or after
// the one after it did, or after the tray's end.
[[nodiscard]] Done checkStart(const Tray& tray, const std::vector<TrayStage>& stages, Stage stage,
                              Moment at);

// When the first stage after the soak began or is due; `stages` is not empty.
[[nodiscard]] Moment sowingOf(const std::vector<TrayStage>& stages);

} // namespace plumule
