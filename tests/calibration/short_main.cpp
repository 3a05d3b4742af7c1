#include "table.h"

#include <cstdio>

// The part that runs with the tests: fewer sets of the rooms that a model with trays as replicates
// fails in. Three Monte Carlo errors are forgiven where the bound is not 0.
int main()
{
    using namespace plumule::calibration;
    constexpr double kForgiven = 3;
    bool allHold = true;
    std::uint64_t seed = 1;
    printHead();
    for (const Section& section : allSections()) {
        for (const Line& line : section.lines) {
            seed += 1'000'000;
            if (line.shortSets > 0) {
                const Tally tally = run(line, line.shortSets, seed);
                printRow(line, tally);
                allHold = allHold && holds(line, tally, kForgiven);
            }
        }
    }
    return allHold ? 0 : 1;
}
