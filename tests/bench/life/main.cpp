#include "tests/bench/life/daily_works.h"
#include "tests/bench/life/large_works.h"
#include "tests/bench/life/process.h"
#include "tests/bench/life/tables.h"

#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <iostream>
#include <string>

namespace plumule::bench {
namespace {

namespace fs = std::filesystem;

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

// plumule_life_bench FOLDER room|farm|giant…: makes the rooms in the folder as <room>.plumule, and
// writes bench_<room>.json beside them.
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
            if (std::string(words[i]) == size.name) {
                tell(fmt::format("{}: {} trays, {} years", size.name, size.trays, size.years),
                     measureRoom(size, folder),
                     folder / ("bench_" + std::string(size.name) + ".json"));
            }
        }
    }
    return EXIT_SUCCESS;
}
