#include "tests/bench/life/tables.h"

#include <cstdio>
#include <fmt/format.h>
#include <fstream>
#include <nlohmann/json.hpp>

namespace plumule::bench {
namespace {

std::string load()
{
    std::ifstream file("/proc/loadavg");
    std::string one;
    file >> one;
    return one;
}

std::string orNothing(double ms)
{
    return ms > 0 ? fmt::format("{:.2f}", ms) : "–";
}

} // namespace

void tell(const std::string& what, const std::vector<Measured>& works,
          const std::filesystem::path& json)
{
    fmt::print("\n{}; CPU ms, medians, load {}\n\n| work | ms | bare limit | aim | reached |\n"
               "| --- | --- | --- | --- | --- |\n",
               what, load());
    nlohmann::ordered_json told{{"what", what}, {"load", load()}};
    for (const Measured& work : works) {
        const char* reached = work.isReached ? "yes" : "no";
        fmt::print("| {} | {:.2f} | {} | {} | {} |\n", work.name, work.ms, orNothing(work.limitMs),
                   orNothing(work.aimMs), work.aimMs > 0 ? reached : "–");
        told["works"].push_back({{"name", work.name},
                                 {"ms", work.ms},
                                 {"limit_ms", work.limitMs},
                                 {"aim_ms", work.aimMs}});
    }
    std::fflush(stdout);
    std::ofstream(json) << told.dump(2) << '\n';
}

} // namespace plumule::bench
