#include "core/stats/model/linear_model.h"
#include "core/stats/model/mixed_model.h"
#include "tests/bench/invented_table.h"

#include <Eigen/QR>
#include <benchmark/benchmark.h>

#include <memory>

namespace plumule::bench {
namespace {

constexpr std::size_t kRows = 600;

std::shared_ptr<const stats::ModelDesign> designOf(const stats::ModelDescription& model)
{
    return std::make_shared<const stats::ModelDesign>(
        stats::ModelDesign::make(inventedTable(kRows), model).value());
}

const stats::ModelDescription kFixed{"yield", {{"trial"}, {"variety"}, {"medium"}}, {}};
const stats::ModelDescription kMixed{"yield", {{"variety"}, {"medium"}}, {{"trial"}}};

stats::CompareRequest requestOf(bool isMixed)
{
    stats::CompareRequest request;
    request.response = "yield";
    request.medium = "medium";
    request.factors = {"variety"};
    if (isMixed) {
        request.random = {{"trial"}};
    } else {
        request.factors.emplace_back("trial");
    }
    return request;
}

// The fit is aimed at no more than twice this: the bare factorisation of its own matrix.
void BareFactorisation(benchmark::State& state)
{
    const auto design = designOf(kFixed);
    const Eigen::Map<const Eigen::MatrixXd> matrix(design->matrix().data(),
                                                   static_cast<Eigen::Index>(design->rows()),
                                                   static_cast<Eigen::Index>(design->columns()));
    for (auto _ : state) {
        const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(matrix);
        benchmark::DoNotOptimize(qr.rank());
    }
}

void Fit(benchmark::State& state)
{
    const auto design = designOf(kFixed);
    for (auto _ : state) {
        const auto fit = stats::LinearModel::fit(design);
        benchmark::DoNotOptimize(fit->residualSs());
    }
}

void MixedFit(benchmark::State& state)
{
    const auto design = designOf(kMixed);
    for (auto _ : state) {
        const auto fit = stats::MixedModel::fit(design);
        benchmark::DoNotOptimize(fit->residualVariance());
    }
}

// From the table to all pairs, with every kind of sum of squares and all checks.
void Compare(benchmark::State& state)
{
    const stats::DataTable table = inventedTable(kRows);
    const stats::CompareRequest request = requestOf(state.range(0) != 0);
    for (auto _ : state) {
        const auto comparison = stats::compareTable(table, request);
        benchmark::DoNotOptimize(comparison->pairs.back().numbers.pTukey);
    }
    state.SetLabel(request.random.empty() ? "trial fixed" : "trial random");
}

BENCHMARK(BareFactorisation)->Unit(benchmark::kMillisecond);
BENCHMARK(Fit)->Unit(benchmark::kMillisecond);
BENCHMARK(MixedFit)->Unit(benchmark::kMillisecond);
BENCHMARK(Compare)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plumule::bench
