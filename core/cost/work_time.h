#pragma once

#include "core/base/clock.h"
#include "core/cost/cost.h"

namespace plumule {

struct WorkTimeTag;
using WorkTimeId = Id<WorkTimeTag>;

// A civil second of the room.
struct WorkMoment
{
    Moment moment;
    int second = 0; // 0 to 59
    bool operator==(const WorkMoment&) const = default;
};
// Zones of time differ by whole minutes, so that the second is the same everywhere.
[[nodiscard]] WorkMoment workMomentOf(const Clock& clock);

// One stretch of a task as it was timed; while it has no end the timer runs. On a night when clocks
// are turned it is an hour off, which its question or a correction mends.
struct WorkTime
{
    WorkTimeId id;
    LabourKind task = LabourKind::Sowing;
    Date on; // begun then
    int minute = 0;
    int second = 0;
    std::optional<int> seconds; // none: it runs
    std::optional<int> times;   // how often the task was done in it: trays, pieces
    bool operator==(const WorkTime&) const = default;

    [[nodiscard]] bool isRunning() const { return !seconds.has_value(); }
    [[nodiscard]] Moment begun() const { return {on, minute}; }
};

// Longer than any stretch of work in a small room (from memory): a timer that has run as long was
// forgotten and is asked about.
inline constexpr int kLongestStretchSeconds = 4 * 3600;

// From its beginning to then; 0 where the clock went back.
[[nodiscard]] int secondsUntil(const WorkTime& work, const WorkMoment& then);
[[nodiscard]] bool isForgotten(const WorkTime& work, const WorkMoment& now);

// What timers say of a task: all their seconds over all their times.
struct MeasuredTask
{
    LabourKind task = LabourKind::Sowing;
    int stretches = 0;
    std::int64_t seconds = 0;
    std::int64_t times = 0;
    bool operator==(const MeasuredTask&) const = default;

    // Of doing it once; none where it was done never.
    [[nodiscard]] std::optional<double> mean() const;
};

} // namespace plumule
