#include "tests/bench/life/race.h"

#include "tests/bench/life/process.h"

#include <algorithm>

namespace plumule::bench {
namespace {

double timeOf(const std::function<void()>& work)
{
    const double before = cpuMs();
    work();
    return cpuMs() - before;
}

} // namespace

double median(std::vector<double> values)
{
    if (values.empty()) {
        return 0;
    }
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

Measured judged(Measured measured)
{
    measured.isReached = measured.ms <= measured.aimMs;
    return measured;
}

Measured measure(const Work& work)
{
    std::vector<double> worked;
    std::vector<double> limits;
    for (int run = 0; run < work.runs; ++run) {
        worked.push_back(timeOf(work.run));
        if (work.limit) {
            limits.push_back(timeOf(work.limit));
        }
    }
    Measured measured{work.name, median(worked), median(limits), work.aimMs, false};
    if (work.aimTimes > 0) {
        measured.aimMs = work.aimTimes * measured.limitMs;
    }
    return judged(std::move(measured));
}

} // namespace plumule::bench
