#pragma once

#include <functional>
#include <string>
#include <vector>

namespace plumule::bench {

// A piece of work beside the least that it could cost: what SQLite alone needs for the same rows.
struct Work
{
    std::string name;
    std::function<void()> run;
    std::function<void()> limit; // none: there is nothing to hold it against
    double aimTimes = 0;         // of the limit at most; 0: the aim is in ms
    double aimMs = 0;            // 0: it has none
    int runs = 15;
};

struct Measured
{
    std::string name;
    double ms = 0; // medians of the CPU time of this process
    double limitMs = 0;
    double aimMs = 0;
    bool isReached = false;
};

[[nodiscard]] double median(std::vector<double> values); // 0 of none
// With isReached as the figures have it.
[[nodiscard]] Measured judged(Measured measured);
// Runs work and limit by turns, so that a machine that is busy is so for both.
[[nodiscard]] Measured measure(const Work& work);

} // namespace plumule::bench
