#include "core/week/tray_ahead.h"

#include <algorithm>

namespace plumule {
namespace {

WeekTask taskOf(const std::vector<TrayStage>& stages, std::size_t begun)
{
    const Stage stage = stages[begun].stage;
    if (begun == 0) {
        return stage == Stage::Soak ? WeekTask::Soak : WeekTask::Sow;
    }
    if (stages[begun - 1].stage == Stage::Soak) {
        return WeekTask::Sow;
    }
    return stage == Stage::Light ? WeekTask::Light : WeekTask::Uncover;
}

// The first stage that has not begun by then.
std::size_t firstAhead(const std::vector<TrayStage>& stages, Moment now)
{
    std::size_t ahead = 0;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        if (stages[i].started() && *stages[i].started() <= now) {
            ahead = i + 1;
        }
    }
    return ahead;
}

} // namespace

const char* toText(WeekTask task)
{
    switch (task) {
    case WeekTask::Soak:
        return "soak";
    case WeekTask::Sow:
        return "sow";
    case WeekTask::Uncover:
        return "uncover";
    case WeekTask::Light:
        return "light";
    case WeekTask::Cut:
        return "cut";
    case WeekTask::Wash:
        return "wash";
    case WeekTask::Order:
        return "order";
    }
    return "";
}

std::vector<TaskAhead> tasksAhead(const std::vector<TrayStage>& given,
                                  const std::vector<Moment>& cuts, const Room& room, Moment now)
{
    std::vector<TaskAhead> tasks;
    if (given.empty()) {
        return tasks;
    }
    std::vector<TrayStage> stages = given;
    const RoundKey walked = roundOf(room, now);
    for (std::size_t i = firstAhead(stages, now); i < stages.size(); ++i) {
        const Moment due = planOf(stages).spans[i].start;
        const RoundKey shown = roundShowing(room, due);
        tasks.push_back({taskOf(stages, i), std::max(shown, walked)});
        const Moment begins = shown < walked ? now : due;
        stages[i].startedOn = begins.date;
        stages[i].startedMinute = begins.minute;
    }
    const Moment harvest = planOf(stages).harvest;
    const bool wasCut =
        std::any_of(cuts.begin(), cuts.end(), [&](Moment cut) { return cut.date >= harvest.date; });
    if (!wasCut) {
        tasks.push_back({WeekTask::Cut, std::max(roundShowing(room, harvest), walked)});
    }
    return tasks;
}

} // namespace plumule
