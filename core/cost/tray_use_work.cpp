// Part of core/cost/tray_use.h: the minutes of the labour tasks.
#include "core/cost/tray_use.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

// Seconds that a task takes so many times; none where its minutes are not known.
std::optional<std::int64_t> secondsOf(const std::vector<LabourTask>& labour, LabourKind kind,
                                      std::optional<int> times)
{
    const auto task = std::find_if(labour.begin(), labour.end(),
                                   [&](const LabourTask& entry) { return entry.kind == kind; });
    if ((times && *times == 0) || (task != labour.end() && task->seconds == 0)) {
        return 0;
    }
    if (!times || task == labour.end()) {
        return std::nullopt;
    }
    return std::int64_t{*times} * task->seconds;
}

} // namespace

std::optional<double> tendingMinutes(const TrayUse& use, const std::vector<LabourTask>& labour)
{
    const std::pair<LabourKind, std::optional<int>> work[] = {
        {LabourKind::Sowing, 1},
        {LabourKind::Watering, use.waterings},
        {LabourKind::StageMove, use.stageMoves},
        {LabourKind::Harvesting, use.cuts},
        {LabourKind::Packing, use.isHarvested ? 1 : 0},
        {LabourKind::ClearingOut, use.hasEnded ? 1 : 0},
    };
    std::int64_t seconds = 0;
    for (const auto& [kind, times] : work) {
        const auto spent = secondsOf(labour, kind, times);
        if (!spent) {
            return std::nullopt;
        }
        seconds += *spent;
    }
    return static_cast<double>(seconds) / 60;
}

std::optional<double> washingMinutes(const Medium& medium, const std::vector<LabourTask>& labour)
{
    if (!medium.isReusable) {
        return 0.0;
    }
    const auto seconds = secondsOf(labour, LabourKind::PieceWashing, 1);
    return seconds ? std::optional(static_cast<double>(*seconds) / 60) : std::nullopt;
}

std::optional<double> workMinutes(const TrayUse& use, const std::vector<LabourTask>& labour)
{
    assert(use.medium != nullptr);
    const auto tending = tendingMinutes(use, labour);
    const auto washing = washingMinutes(*use.medium, labour);
    return tending && washing ? std::optional(*tending + *washing) : std::nullopt;
}

} // namespace plumule
