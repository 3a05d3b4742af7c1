#pragma once

#include "core/cost/work_time.h"

#include <QString>

#include <array>

namespace plumule::ui {

// In the order that a tray goes through them.
inline constexpr std::array kLabourKinds{
    LabourKind::Sowing,  LabourKind::Watering,    LabourKind::StageMove,   LabourKind::Harvesting,
    LabourKind::Packing, LabourKind::ClearingOut, LabourKind::PieceWashing};

// "07:10", "27 Nov, 07:10" of another day.
[[nodiscard]] QString begunText(const WorkTime& work, Date today);
// "12 min", "1 h 05 min"; seconds under a minute.
[[nodiscard]] QString durationText(int seconds);
// "0.78 min"
[[nodiscard]] QString minutesText(double seconds);
// "measured 0.78 min: 3 timings, 54 times"
[[nodiscard]] QString measuredText(const MeasuredTask& task);

} // namespace plumule::ui
