#include "core/stats/samples/regression.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <stdexcept>

namespace plumule::stats::reference {

namespace {

void coverCertifiedLine(CaseCheck& check, const LineFit& line)
{
    const Tolerance tolerance = check.tolerance("certified");
    check.number("/certified/b0", line.intercept, tolerance);
    check.number("/certified/b0_se", line.interceptSe, tolerance);
    check.number("/certified/b1", line.slope, tolerance);
    check.number("/certified/b1_se", line.slopeSe, tolerance);
    check.number("/certified/residual_sd", line.residualSd, tolerance);
    check.number("/certified/r_squared", line.rSquared, tolerance);
    check.number("/certified/F", line.f, tolerance);
    check.notOurs("/lre_R", "how many digits R reached");
}

void coverLine(CaseCheck& check, const LineFit& line)
{
    const Tolerance tight = check.tolerance();
    const Tolerance intervals = check.tolerance("p_and_ci_adjusted");
    check.number("/intercept", line.intercept, tight);
    check.number("/intercept_se", line.interceptSe, tight);
    check.number("/slope", line.slope, tight);
    check.number("/slope_se", line.slopeSe, tight);
    check.number("/slope_t", line.slopeT, tight);
    check.number("/slope_p", line.slopeP, tight);
    check.number("/slope_ci_lo", line.slopeLower, intervals);
    check.number("/slope_ci_hi", line.slopeUpper, intervals);
    check.number("/residual_sd", line.residualSd, tight);
    check.number("/r_squared", line.rSquared, tight);
    check.number("/F", line.f, tight);
}

void coverRegression(CaseCheck& check)
{
    const auto& data = check.data();
    const Table table(data.at("file"));
    const auto x = table.numbers(data.value("x", table.names().at(0)));
    const auto y = table.numbers(data.value("y", table.names().at(1)));
    const auto line = fitLine(x, y);
    const auto robust = theilSen(x, y);
    const auto together = correlations(x, y);
    if (!line || !robust || !together)
        throw std::runtime_error("a line was refused");
    if (check.has("/certified"))
        coverCertifiedLine(check, *line);
    coverLine(check, *line);
    const Tolerance tight = check.tolerance();
    check.number("/pearson_r", together->pearson, tight);
    check.number("/spearman_rho", together->spearman, tight);
    check.number("/kendall_tau_b", together->kendallTauB, tight);
    check.number("/theil_sen_slope", robust->slope, tight);
    check.number("/theil_sen_intercept_median_residual", robust->intercept, tight);
    check.number("/theil_sen_n_slopes", static_cast<double>(robust->slopes), tight);
}

const Registered kRegression{"linear regression", coverRegression};

} // namespace

} // namespace plumule::stats::reference
