#include "tests/fuzz/fuzz_entries.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <random>
#include <vector>

namespace plumule::fuzz {
namespace {

namespace fs = std::filesystem;

struct Target
{
    const char* seeds;
    void (*tryBytes)(std::string_view bytes);
    int mutants; // of each seed
};

constexpr Target kTargets[] = {{"table", tryTable, 200},
                               {"scale", tryScale, 200},
                               {"journal", tryJournal, 30},
                               {"changeset", tryChangeset, 200}};

std::vector<std::string> seedsOf(const Target& target)
{
    std::vector<std::string> seeds;
    for (const auto& entry :
         fs::directory_iterator(fs::path(PLUMULE_REFERENCES) / "../fuzz/seeds" / target.seeds)) {
        std::ifstream file(entry.path(), std::ios::binary);
        seeds.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    return seeds;
}

// What a fuzzer once found stands among the seeds: they come back from everyday builds and from
// those under the sanitizers too.
TEST(FuzzSeeds, ComeBack)
{
    for (const Target& target : kTargets) {
        const auto seeds = seedsOf(target);
        EXPECT_GE(seeds.size(), 1U) << target.seeds;
        for (const std::string& seed : seeds) {
            target.tryBytes(seed);
        }
    }
}

TEST(FuzzSeeds, ComeBackWithBytesAlteredAndCutOff)
{
    for (const Target& target : kTargets) {
        for (const std::string& seed : seedsOf(target)) {
            std::mt19937 lot(20'261'128);
            for (int i = 0; i < target.mutants && !seed.empty(); ++i) {
                std::string bytes = seed;
                for (unsigned hit = 0; hit <= lot() % 4; ++hit) {
                    bytes[lot() % bytes.size()] = static_cast<char>(lot());
                }
                target.tryBytes(lot() % 4 == 0 ? bytes.substr(0, lot() % bytes.size()) : bytes);
            }
        }
    }
}

} // namespace
} // namespace plumule::fuzz
