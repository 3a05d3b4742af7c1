#include "tests/bench/life/daily_works.h"
#include "tests/bench/life/large_works.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>
#include <unistd.h>

namespace plumule::bench {
namespace {

namespace fs = std::filesystem;

double residentMb()
{
    std::ifstream status("/proc/self/statm");
    double pages = 0;
    double resident = 0;
    status >> pages >> resident;
    return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

std::string load()
{
    std::ifstream file("/proc/loadavg");
    std::string one;
    file >> one;
    return one;
}

nlohmann::ordered_json jsonOf(const RoomSize& size, const std::vector<Measured>& rows)
{
    nlohmann::ordered_json json;
    json["room"] = size.name;
    json["trays"] = size.trays;
    json["years"] = size.years;
    json["load"] = load();
    for (const Measured& row : rows) {
        json["works"].push_back(
            {{"name", row.name}, {"ms", row.ms}, {"limit_ms", row.limitMs}, {"aim_ms", row.aimMs}});
    }
    return json;
}

void print(const RoomSize& size, const std::vector<Measured>& rows)
{
    fmt::print("\n{} trays, {} years; CPU ms, medians, load {}\n\n| work | ms | bare limit | aim | "
               "reached |\n| --- | --- | --- | --- | --- |\n",
               size.trays, size.years, load());
    for (const Measured& row : rows) {
        const bool hasAim = row.aimMs > 0;
        fmt::print("| {} | {:.2f} | {} | {} | {} |\n", row.name, row.ms,
                   row.limitMs > 0 ? fmt::format("{:.2f}", row.limitMs) : "–",
                   hasAim ? fmt::format("{:.2f}", row.aimMs) : "–",
                   !hasAim         ? "–"
                   : row.isReached ? "yes"
                                   : "no");
    }
    std::fflush(stdout);
}

std::vector<Measured> measureRoom(const RoomSize& size, const fs::path& folder)
{
    const fs::path journal = folder / (std::string(size.name) + ".plumule");
    std::cerr << "making " << size.name << " …\n";
    const RoomOfYears room = makeRoomOfYears(journal, size);
    std::vector<Measured> rows;
    for (auto* works : {&dailyWorks, &largeWorks}) {
        for (const Work& work : works(journal, room)) {
            std::cerr << work.name << " …\n";
            rows.push_back(measure(work));
        }
    }
    std::cerr << fmt::format("{:.0f} MB resident, the journal {:.0f} MB\n", residentMb(),
                             static_cast<double>(fs::file_size(journal)) / 1e6);
    return rows;
}

} // namespace
} // namespace plumule::bench

// plumule_life_bench FOLDER room|farm|giant…: makes the rooms in the folder, which is left empty,
// and writes FOLDER/bench_<room>.json.
int main(int count, char** words)
{
    using namespace plumule::bench;
    if (count < 3) {
        std::cerr << "plumule_life_bench FOLDER room|farm|giant…\n";
        return EXIT_FAILURE;
    }
    const fs::path folder = words[1];
    fs::create_directories(folder);
    for (int i = 2; i < count; ++i) {
        for (const RoomSize& size : {kRoom, kFarm, kGiant}) {
            if (std::string(words[i]) != size.name) {
                continue;
            }
            const auto rows = measureRoom(size, folder);
            print(size, rows);
            std::ofstream(folder / ("bench_" + std::string(size.name) + ".json"))
                << jsonOf(size, rows).dump(2) << '\n';
        }
    }
    return EXIT_SUCCESS;
}
