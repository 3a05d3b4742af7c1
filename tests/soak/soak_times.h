#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

namespace plumule {

// How often something is tried: `few` with the other tests, `many` where PLUMULE_SOAK is set, as
// run.sh does.
inline int soakTimes(int few, int many)
{
    return std::getenv("PLUMULE_SOAK") == nullptr ? few : many;
}

// A line of figures on standard output.
inline void sayFigures(const std::string& line)
{
    std::printf("[  FIGURES ] %s\n", line.c_str());
    std::fflush(stdout);
}

} // namespace plumule
