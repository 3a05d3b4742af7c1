#include "core/review/comparison/comparison.h"
#include "core/review/season/medium_costs.h"
#include "tests/core/review/facts/season_samples.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <ctime>
#include <random>
#include <vector>

namespace plumule::bench {
namespace {

constexpr int kTraysOfASowing = 40;

// Invented trays of two media in sowings of forty, each a trial: more trays are more sowings.
SeasonSamples roomOf(int trays)
{
    SeasonSamples room;
    room.priceAsInTheHandbook(0.75);
    std::mt19937 lot(20'261'128);
    std::normal_distribution<double> spread(200, 15);
    room.facts.trays.reserve(static_cast<std::size_t>(trays));
    for (int i = 0; i < trays; ++i) {
        SeasonRecord& record = room.add("T" + std::to_string(i), i % 2 == 0 ? kMix : kMesh,
                                        std::max(20.0, spread(lot)));
        const TrialId trial{100 + i / kTraysOfASowing};
        record.tray.trial = trial;
        record.trialSownOn = record.tray.sownOn;
        room.facts.trials[trial] = "T" + std::to_string(trial.value);
    }
    priceTrays(room.facts);
    return room;
}

template <class Work>
double cpuMilliseconds(Work work)
{
    const std::clock_t before = std::clock();
    work();
    return 1e3 * static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
}

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// What four times the trays take over what the trays take, both in the same run: 4 is linear, 16 is
// quadratic.
template <class Work>
void compareSizes(benchmark::State& state, Work work)
{
    const int trays = static_cast<int>(state.range(0));
    const SeasonSamples small = roomOf(trays);
    const SeasonSamples large = roomOf(4 * trays);
    std::vector<double> ratios;
    std::vector<double> times;
    for (auto _ : state) {
        const double one = cpuMilliseconds([&] { work(small); });
        times.push_back(cpuMilliseconds([&] { work(large); }));
        ratios.push_back(times.back() / std::max(one, 1e-3));
    }
    state.counters["ratio"] = median(ratios);
    state.counters["ms_of_large"] = median(times);
}

void CostComparisonOfFourTimesTheTrays(benchmark::State& state)
{
    compareSizes(state, [](const SeasonSamples& room) {
        ComparisonAsk ask;
        ask.response = Response::CostPerGram;
        benchmark::DoNotOptimize(comparisonOf(room.facts, room.filter, Series(), ask).n);
    });
}

void CostPartsOfFourTimesTheTrays(benchmark::State& state)
{
    compareSizes(state, [](const SeasonSamples& room) {
        benchmark::DoNotOptimize(mediumCosts(room.facts, room.filter).size());
    });
}

BENCHMARK(CostComparisonOfFourTimesTheTrays)->Arg(2'500)->Arg(10'000)->Iterations(3);
BENCHMARK(CostPartsOfFourTimesTheTrays)->Arg(10'000)->Iterations(5);

} // namespace
} // namespace plumule::bench
