#include "core/stats/model/linear_model.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>

// Straight lines: a linear model of one covariate.
namespace plumule::stats::reference {

namespace {

LinearModel lineThrough(const CaseCheck& check)
{
    const auto& data = check.data();
    const Table table(data.at("file"));
    DataTable columns;
    const std::string x = data.value("x", table.names().at(0));
    const std::string y = data.value("y", table.names().at(1));
    if (!columns.addNumbersFromText("x", table.texts(x)) ||
        !columns.addNumbersFromText("y", table.texts(y))) {
        throw std::runtime_error("a column was refused");
    }
    return granted(LinearModel::fit(columns, {"y", {{"x"}}, {}}));
}

// At x = 0 and per unit of x.
ContrastTest interceptOf(const LinearModel& line)
{
    const DesignCovariate& x = line.design().covariates().front();
    return testContrast(line, std::vector<double>{1, -x.shift / x.scale});
}

ContrastTest slopeOf(const LinearModel& line)
{
    return testContrast(line, std::vector<double>{0, 1 / line.design().covariates().front().scale});
}

void coverCertifiedLine(CaseCheck& check, const LinearModel& line)
{
    const Tolerance tolerance = check.tolerance("certified");
    check.number("/certified/b0", interceptOf(line).estimate, tolerance);
    check.number("/certified/b0_se", interceptOf(line).se, tolerance);
    check.number("/certified/b1", slopeOf(line).estimate, tolerance);
    check.number("/certified/b1_se", slopeOf(line).se, tolerance);
    check.number("/certified/residual_sd", line.residualSd(), tolerance);
    check.number("/certified/r_squared", line.rSquared(), tolerance);
    check.number("/certified/F", line.anova(SumOfSquares::TypeI).front().f, tolerance);
    check.notOurs("/lre_R", "how many digits R reached");
}

void coverLine(CaseCheck& check, const LinearModel& line)
{
    const Tolerance tight = check.tolerance();
    const Tolerance intervals = check.tolerance("p_and_ci_adjusted");
    const ContrastTest slope = slopeOf(line);
    check.number("/intercept", interceptOf(line).estimate, tight);
    check.number("/intercept_se", interceptOf(line).se, tight);
    check.number("/slope", slope.estimate, tight);
    check.number("/slope_se", slope.se, tight);
    check.number("/slope_t", slope.t, tight);
    check.number("/slope_p", slope.p, tight);
    check.number("/slope_ci_lo", slope.lower, intervals);
    check.number("/slope_ci_hi", slope.upper, intervals);
    check.number("/residual_sd", line.residualSd(), tight);
    check.number("/r_squared", line.rSquared(), tight);
    check.number("/F", line.anova(SumOfSquares::TypeI).front().f, tight);
}

void coverRegression(CaseCheck& check)
{
    const LinearModel line = lineThrough(check);
    if (check.has("/certified")) {
        coverCertifiedLine(check, line);
    }
    coverLine(check, line);
    for (const char* name : {"/pearson_r", "/spearman_rho", "/kendall_tau_b", "/theil_sen_slope",
                             "/theil_sen_intercept_median_residual", "/theil_sen_n_slopes"}) {
        check.notOurs(name, "no answer of the program holds it");
    }
}

const Registered kRegression{"linear regression", coverRegression};

} // namespace

} // namespace plumule::stats::reference
