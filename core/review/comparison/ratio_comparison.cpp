#include "core/review/comparison/ratio_comparison.h"

#include "core/review/comparison/pair_verdict.h"
#include "core/stats/samples/bootstrap.h"
#include "core/stats/samples/samples.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

constexpr double kFamilyRisk = 0.05;
constexpr std::size_t kMostResamples = 5000;
constexpr std::size_t kFewestResamples = 1000;
constexpr std::size_t kMostDraws = 2'000'000; // of trays, for one interval

using Stratum = std::pair<VarietyId, TrialId>;
using RowsOfTrays = std::vector<const ComparedTray*>;

Stratum stratumOf(const ComparedTray& tray)
{
    return {tray.record->tray.variety, tray.record->tray.trial.value_or(TrialId())};
}

stats::BootstrapPlan planFor(std::size_t rows, double level, const Progress& progress)
{
    stats::BootstrapPlan plan;
    plan.progress = progress;
    plan.level = level;
    plan.resamples =
        std::clamp(kMostDraws / std::max<std::size_t>(rows, 1), kFewestResamples, kMostResamples);
    return plan;
}

// Sums of one medium in one stratum.
struct RatioSums
{
    double cost = 0;
    double grams = 0;
    double trays = 0;
};

// The trays of two media in the strata they share, cell by cell: a's and b's in turn.
class SharedStrata
{
public:
    SharedStrata(const ComparedTrays& trays, std::size_t a, std::size_t b)
    {
        std::map<Stratum, std::pair<RowsOfTrays, RowsOfTrays>> strata;
        for (const ComparedTray& tray : trays.trays) {
            if (tray.medium == a) {
                strata[stratumOf(tray)].first.push_back(&tray);
            } else if (tray.medium == b) {
                strata[stratumOf(tray)].second.push_back(&tray);
            }
        }
        for (const auto& [stratum, both] : strata) {
            m_isShared = m_isShared || (!both.first.empty() && !both.second.empty());
            if (both.first.size() >= 2 && both.second.size() >= 2) {
                m_nA += addCell(both.first);
                m_nB += addCell(both.second);
            }
        }
    }

    [[nodiscard]] bool isShared() const { return m_isShared; }
    [[nodiscard]] int nA() const { return m_nA; }
    [[nodiscard]] int nB() const { return m_nB; }

    [[nodiscard]] Result<stats::BootstrapInterval> difference(double level,
                                                              const Progress& progress) const;

private:
    int addCell(const RowsOfTrays& rows)
    {
        for (const ComparedTray* tray : rows) {
            m_rows.push_back(tray);
            m_cells.push_back(m_cellCount);
        }
        ++m_cellCount;
        return static_cast<int>(rows.size());
    }

    [[nodiscard]] double differenceOf(std::span<const std::size_t> rows,
                                      std::vector<RatioSums>& sums) const;

    RowsOfTrays m_rows;
    std::vector<std::size_t> m_cells; // of each row
    std::size_t m_cellCount = 0;
    int m_nA = 0;
    int m_nB = 0;
    bool m_isShared = false;
};

double SharedStrata::differenceOf(std::span<const std::size_t> rows,
                                  std::vector<RatioSums>& sums) const
{
    sums.assign(m_cellCount, {});
    for (const std::size_t row : rows) {
        RatioSums& cell = sums[m_cells[row]];
        cell.cost += m_rows[row]->cost;
        cell.grams += inGrams(m_rows[row]->record->yield);
        cell.trays += 1;
    }
    double above = 0;
    double below = 0;
    for (std::size_t cell = 0; cell + 1 < m_cellCount; cell += 2) {
        const RatioSums& a = sums[cell];
        const RatioSums& b = sums[cell + 1];
        const double weight = a.trays * b.trays / (a.trays + b.trays);
        above += weight * (a.cost / a.grams - b.cost / b.grams);
        below += weight;
    }
    return above / below;
}

Result<stats::BootstrapInterval> SharedStrata::difference(double level,
                                                          const Progress& progress) const
{
    stats::BootstrapPlan plan = planFor(m_rows.size(), level, progress);
    plan.groups = m_cells;
    std::vector<RatioSums> sums;
    return stats::bootstrapInterval(
        m_rows.size(), [&](std::span<const std::size_t> rows) { return differenceOf(rows, sums); },
        plan);
}

AdjustedMean ratioOf(const ComparedTrays& trays, std::size_t medium, const Progress& progress)
{
    std::vector<double> costs;
    std::vector<double> grams;
    for (const ComparedTray& tray : trays.trays) {
        if (tray.medium == medium) {
            costs.push_back(tray.cost);
            grams.push_back(inGrams(tray.record->yield));
        }
    }
    AdjustedMean mean;
    mean.medium = *trays.media[medium];
    mean.n = static_cast<int>(costs.size());
    mean.isEstimable = true;
    double cost = 0;
    double gram = 0;
    for (std::size_t i = 0; i < costs.size(); ++i) {
        cost += costs[i];
        gram += grams[i];
    }
    mean.mean = cost / gram;
    if (const auto interval =
            stats::bootstrapRatio(costs, grams, planFor(costs.size(), 1 - kFamilyRisk, progress))) {
        mean.se = interval->se;
        mean.lower = interval->lower;
        mean.upper = interval->upper;
    }
    return mean;
}

MediaPair ratioPair(const ComparedTrays& trays, std::size_t a, std::size_t b, double margin,
                    double level, const Progress& progress)
{
    const SharedStrata strata(trays, a, b);
    MediaPair pair;
    pair.a = a;
    pair.b = b;
    pair.nA = strata.nA();
    pair.nB = strata.nB();
    VerdictGround ground;
    ground.nA = trays.countOf(a);
    ground.nB = trays.countOf(b);
    ground.isComparable = strata.isShared();
    if (const auto interval = strata.difference(level, progress)) {
        pair.difference = interval->estimate;
        pair.se = interval->se;
        // Costs that are the same on every tray give no interval to judge by.
        if (interval->se > 1e-12 * std::abs(interval->estimate)) {
            pair.lower = interval->lower;
            pair.upper = interval->upper;
            ground.isWithinMargin = interval->lower > -margin && interval->upper < margin;
        }
    }
    ground.lower = pair.lower;
    ground.upper = pair.upper;
    pair.verdict = verdictOf(ground);
    if (pair.verdict == PairVerdict::NoVerdict) {
        const bool oneTray = std::min(ground.nA, ground.nB) < 2;
        pair.why = oneTray           ? WhyNoVerdict::OneTray
                   : pair.difference ? WhyNoVerdict::NoSpread
                                     : WhyNoVerdict::TooFewTrays;
    }
    return pair;
}

// Between trays of one medium, variety and trial.
void addSpread(RatioComparison& result, const ComparedTrays& trays)
{
    std::map<std::pair<std::size_t, Stratum>, std::vector<double>> cells;
    for (const ComparedTray& tray : trays.trays) {
        cells[{tray.medium, stratumOf(tray)}].push_back(tray.value);
    }
    std::vector<std::vector<double>> groups;
    for (auto& [cell, values] : cells) {
        groups.push_back(std::move(values));
    }
    const auto sums = stats::sumGroups(groups);
    if (sums && sums->dfWithin() > 0) {
        result.sd = std::sqrt(sums->within / sums->dfWithin());
        result.df = sums->dfWithin();
    }
}

} // namespace

RatioComparison compareRatios(const ComparedTrays& trays, double margin, const Progress& progress)
{
    RatioComparison result;
    const std::size_t media = trays.media.size();
    const double pairs = static_cast<double>(media * (media - 1)) / 2;
    const double intervals = static_cast<double>(media) + pairs;
    double done = 0;
    const auto nextPart = [&] {
        const double from = done++;
        return progress.part(from / intervals, done / intervals);
    };
    for (std::size_t medium = 0; medium < media; ++medium) {
        result.means.push_back(ratioOf(trays, medium, nextPart()));
    }
    for (std::size_t b = 0; b < media; ++b) {
        for (std::size_t a = b + 1; a < media; ++a) {
            result.pairs.push_back(
                ratioPair(trays, a, b, margin, 1 - kFamilyRisk / pairs, nextPart()));
        }
    }
    addSpread(result, trays);
    return result;
}

} // namespace plumule
