#pragma once

#include <ctime>
#include <fstream>
#include <unistd.h>

namespace plumule::bench {

// What this process used so far, of both cores, in ms.
inline double cpuMs()
{
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

// What of it is in memory now.
inline double residentMb()
{
    std::ifstream status("/proc/self/statm");
    double pages = 0;
    double resident = 0;
    status >> pages >> resident;
    return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

} // namespace plumule::bench
