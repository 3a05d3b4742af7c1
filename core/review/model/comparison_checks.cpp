#include "core/review/model/comparison_checks.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/samples/checks.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

constexpr double kPointedAt = 0.05;

std::vector<std::vector<double>> byMedium(const ComparedTrays& trays,
                                          const std::function<double(std::size_t row)>& valueOf)
{
    std::vector<std::vector<double>> groups(trays.media.size());
    for (std::size_t row = 0; row < trays.trays.size(); ++row) {
        groups[trays.trays[row].medium].push_back(valueOf(row));
    }
    return groups;
}

OddTray oddTray(const ComparedTrays& trays, std::size_t row, double residual, double p)
{
    const ComparedTray& tray = trays.trays[row];
    OddTray odd;
    odd.tray = tray.record->tray.id;
    odd.code = tray.record->tray.code;
    odd.medium = tray.medium;
    odd.value = tray.value;
    odd.expected = tray.value - residual;
    odd.p = p;
    return odd;
}

// With equal values on all trays but one the studentized residual is infinite and missing; such a
// tray shows in the check of normality only.
std::vector<OddTray> oddByStudentized(const ComparisonFit& fit, const ComparedTrays& trays)
{
    std::vector<OddTray> odd;
    const double df = fit.residualDf.value_or(0) - 1;
    if (df < 1) {
        return odd;
    }
    const auto n = static_cast<double>(trays.trays.size());
    for (std::size_t row = 0; row < fit.studentized.size(); ++row) {
        if (!fit.studentized[row]) {
            continue;
        }
        const double p = std::min(1.0, n * stats::tTwoSided(*fit.studentized[row], df));
        if (p < kPointedAt) {
            odd.push_back(oddTray(trays, row, fit.residuals[row], p));
        }
    }
    return odd;
}

std::vector<OddTray> oddByGrubbs(const ComparisonFit& fit, const ComparedTrays& trays)
{
    const auto stray = stats::grubbs(fit.residuals);
    if (!stray || stray->pTwoSided >= kPointedAt) {
        return {};
    }
    return {oddTray(trays, stray->index, fit.residuals[stray->index], stray->pTwoSided)};
}

} // namespace

DataChecks checksOf(const ComparisonFit& fit, const ComparedTrays& trays)
{
    DataChecks checks;
    if (fit.hasNoSpread) {
        return checks;
    }
    const auto left = byMedium(trays, [&](std::size_t row) { return fit.residuals[row]; });
    if (const auto test = stats::brownForsythe(left)) {
        checks.spread =
            CheckOfSpread{test->f, test->df1, test->df2, test->p, test->p >= kPointedAt};
    }
    if (const auto test = stats::shapiroWilk(fit.residuals)) {
        checks.normality = CheckOfNormality{test->w, test->p, test->p >= kPointedAt};
    }
    checks.oddTrays =
        fit.studentized.empty() ? oddByGrubbs(fit, trays) : oddByStudentized(fit, trays);
    std::sort(checks.oddTrays.begin(), checks.oddTrays.end(),
              [](const OddTray& a, const OddTray& b) { return a.p < b.p; });
    const bool isMediumAlone =
        std::all_of(fit.model.terms.begin(), fit.model.terms.end(), [](const ModelTerm& term) {
            return term.part == ModelPart::Medium || term.place == TermPlace::LeftOut;
        });
    if (isMediumAlone) {
        const auto values =
            byMedium(trays, [&](std::size_t row) { return trays.trays[row].value; });
        if (const auto welch = stats::welchAnova(values)) {
            checks.pWelch = welch->p;
        }
    }
    return checks;
}

} // namespace plumule
