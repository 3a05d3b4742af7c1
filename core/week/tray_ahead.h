#pragma once

#include "core/tray/stage_plan.h"
#include "core/watering/round_key.h"

#include <array>

namespace plumule {

// What is done with a tray, or for trays, on a day.
enum class WeekTask
{
    Soak,
    Sow,     // of soaked seed too
    Uncover, // the weight is lifted, and the tray domed
    Light,   // brought into light
    Cut,
    Wash, // and sanitise: pieces
    Order // seed, pieces
};
inline constexpr std::array kWeekTasks = {WeekTask::Soak,  WeekTask::Sow, WeekTask::Uncover,
                                          WeekTask::Light, WeekTask::Cut, WeekTask::Wash,
                                          WeekTask::Order};
[[nodiscard]] const char* toText(WeekTask task); // soak, sow, uncover, light, cut, wash, order

// A task of one tray and the round in which it shows.
struct TaskAhead
{
    WeekTask task = WeekTask::Sow;
    RoundKey at;
    bool operator==(const TaskAhead&) const = default;
};

// What lies ahead of a tray that is not done at `now`, in order, the cut last: planned starts chain
// from the last actual one, and what is late is taken as done in the present round. A tray that was
// cut since its harvest fell due grows on, and when it is cut again is not known.
[[nodiscard]] std::vector<TaskAhead> tasksAhead(const std::vector<TrayStage>& stages,
                                                const std::vector<Moment>& cuts, const Room& room,
                                                Moment now);

} // namespace plumule
