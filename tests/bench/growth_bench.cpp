#include "core/stats/growth/growth_fit.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

namespace plumule::bench {
namespace {

constexpr std::size_t kCurves = 1000;
constexpr std::size_t kPoints = 12;

// Invented heights over twelve days, each curve with a height and pace of its own.
std::vector<std::vector<double>> inventedHeights(const std::vector<double>& days)
{
    std::mt19937 lot(20'260'312);
    std::normal_distribution<double> spread(0, 1.5);
    std::uniform_real_distribution<double> share(0, 1);
    std::vector<std::vector<double>> curves(kCurves);
    for (auto& curve : curves) {
        const double full = 60 + 50 * share(lot);
        const double middle = 4.5 + 2 * share(lot);
        const double pace = 0.9 + 0.8 * share(lot);
        for (const double day : days) {
            curve.push_back(full / (1 + std::exp((middle - day) / pace)) + spread(lot));
        }
    }
    return curves;
}

// A thousand logistic curves of twelve points; aimed at under 50 ms.
void ThousandLogisticFits(benchmark::State& state)
{
    std::vector<double> days;
    for (std::size_t i = 1; i <= kPoints; ++i) {
        days.push_back(static_cast<double>(i));
    }
    const auto curves = inventedHeights(days);
    std::size_t fitted = 0;
    for (auto _ : state) {
        fitted = 0;
        for (const auto& heights : curves) {
            fitted += stats::fitGrowth(stats::GrowthCurve::Logistic, days, heights) ? 1 : 0;
        }
    }
    state.counters["fitted"] = static_cast<double>(fitted);
}

BENCHMARK(ThousandLogisticFits)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plumule::bench
