#include "core/cost/work_time.h"

#include <algorithm>
#include <limits>

namespace plumule {

WorkMoment workMomentOf(const Clock& clock)
{
    return {clock.now(), static_cast<int>(clock.utcMilliseconds() / 1000 % 60)};
}

int secondsUntil(const WorkTime& work, const WorkMoment& then)
{
    const std::int64_t seconds = (then.moment - work.begun()) * 60 + then.second - work.second;
    return static_cast<int>(std::clamp<std::int64_t>(seconds, 0, std::numeric_limits<int>::max()));
}

bool isForgotten(const WorkTime& work, const WorkMoment& now)
{
    return work.isRunning() && secondsUntil(work, now) > kLongestStretchSeconds;
}

std::optional<double> MeasuredTask::mean() const
{
    return times > 0 ? std::optional(static_cast<double>(seconds) / static_cast<double>(times))
                     : std::nullopt;
}

} // namespace plumule
