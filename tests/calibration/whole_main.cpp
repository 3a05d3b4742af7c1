#include "table.h"

#include <chrono>
#include <cstdio>
#include <cstring>

// plumule_calibration [TEXT]: the whole table, or the rooms whose name holds the text. Exits with 1
// when a bound does not hold.
int main(int argc, char** argv)
{
    using namespace plumule::calibration;
    const char* only = argc > 1 ? argv[1] : "";
    bool allHold = true;
    std::uint64_t seed = 1;
    printHead();
    for (const Section& section : allSections()) {
        printSection(section.title);
        for (const Line& line : section.lines) {
            seed += 1'000'000;
            if (line.room.find(only) == std::string::npos &&
                section.title.find(only) == std::string::npos) {
                continue;
            }
            const auto start = std::chrono::steady_clock::now();
            const Tally tally = run(line, line.sets, seed);
            printRow(line, tally);
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
            std::fprintf(stderr, "%6.1f s  %s\n", took.count(), line.room.c_str());
            allHold = allHold && holds(line, tally);
        }
    }
    return allHold ? 0 : 1;
}
