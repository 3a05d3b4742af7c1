#include "core/stats/model/mixed_model.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>

namespace plumule::stats::reference {

namespace {

constexpr const char* kOtherMethod = "errors and degrees of freedom are by Kenward and Roger alone";

void checkTest(CaseCheck& check, const std::string& pointer, const FTest& test, Tolerance tolerance)
{
    check.number(pointer + "/F", test.f, tolerance);
    check.number(pointer + "/df1", test.df1, tolerance);
    check.number(pointer + "/df2", test.df2, tolerance);
    check.number(pointer + "/p", test.p, tolerance);
}

void checkVariances(CaseCheck& check, const MixedModel& fit)
{
    const Tolerance tolerance = check.tolerance();
    const VarianceComponent& group = fit.components().front();
    const double residual = fit.residualVariance();
    check.given("/formula");
    check.text("/method", "REML");
    check.number("/n", static_cast<double>(fit.design().rows()), tolerance);
    check.number("/groups", static_cast<double>(group.levels), tolerance);
    check.number("/var_group", group.variance, tolerance);
    check.number("/var_residual", residual, tolerance);
    check.number("/sd_group", std::sqrt(group.variance), tolerance);
    check.number("/sd_residual", std::sqrt(residual), tolerance);
    check.number("/icc", group.variance / (group.variance + residual), tolerance);
    check.number("/reml_criterion_minus2logL", fit.remlCriterion(), tolerance);
    check.truth("/singular", fit.isSingular());
}

// The estimates of the columns in treatment coding: the cases have no covariate.
void checkEffects(CaseCheck& check, const MixedModel& fit)
{
    const Tolerance tolerance = check.tolerance();
    const auto estimator = fit.estimator();
    std::vector<double> estimates;
    for (std::size_t column = 0; column < fit.design().columns(); ++column) {
        std::vector<double> weights(fit.design().columns(), 0.0);
        weights[column] = 1;
        estimates.push_back(estimator->estimate(weights).value);
    }
    check.given("/fixed_effects_treatment_coding/term");
    check.column("/fixed_effects_treatment_coding/estimate", estimates, tolerance);
    check.notOurs("/fixed_effects_treatment_coding/se", kOtherMethod);
    std::vector<std::string> names;
    std::vector<double> values;
    for (const RandomEffect& one : fit.predictedEffects(0)) {
        names.push_back(one.level);
        values.push_back(one.value);
    }
    check.texts("/blup/level", names);
    check.column("/blup/value", values, tolerance);
}

void checkKenwardRoger(CaseCheck& check, const MixedModel& fit)
{
    const std::string focal = check.data().at("focal");
    const Tolerance tolerance = check.tolerance("kenward_roger");
    if (check.has("/F_focal_kenward_roger")) {
        checkTest(check, "/F_focal_kenward_roger", granted(fit.termTest(focal)), tolerance);
    }
    if (!check.has("/kenward_roger")) {
        return;
    }
    const auto estimator = fit.estimator();
    checkMeans(check, "/kenward_roger/emmeans", *estimator, focal, tolerance);
    checkPairs(check, "/kenward_roger/pairs", *estimator, focal, tolerance, tolerance);
    if (check.has("/kenward_roger/custom_contrast")) {
        checkContrast(check, "/kenward_roger/custom_contrast", *estimator, focal, tolerance);
    }
}

// The singular fit: the means of the linear model without the group.
void checkPoints(CaseCheck& check, const MixedModel& fit)
{
    const auto plain = fit.estimator();
    std::vector<std::string> names;
    std::vector<double> means;
    std::vector<double> errors;
    for (const MarginalMean& mean : granted(marginalMeans(*plain, check.data().at("focal")))) {
        names.push_back(mean.level);
        means.push_back(mean.mean.value());
        errors.push_back(mean.se.value());
    }
    check.texts("/emmeans_point/level", names);
    check.column("/emmeans_point/emmean", means, check.tolerance());
    check.column("/emmeans_point/se_naive", errors, check.tolerance());
}

void coverMixed(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const MixedModel fit = granted(MixedModel::fit(tableOf(check, formula), formula.model));
    checkVariances(check, fit);
    checkEffects(check, fit);
    checkKenwardRoger(check, fit);
    if (check.has("/emmeans_point")) {
        checkPoints(check, fit);
    }
    for (const char* other : {"/F_focal_satterthwaite", "/satterthwaite", "/asymptotic"}) {
        if (check.has(other)) {
            check.notOurs(other, kOtherMethod);
        }
    }
}

void checkNestedVariances(CaseCheck& check, const MixedModel& fit, Tolerance tolerance)
{
    check.given("/variance_components/group");
    std::vector<std::optional<double>> variances;
    for (const std::string& group : check.textsAt("/variance_components/group")) {
        variances.emplace_back();
        if (group == "Residual") {
            variances.back() = fit.residualVariance();
        }
        for (const VarianceComponent& component : fit.components()) {
            if (component.group == group) {
                variances.back() = component.variance;
            }
        }
    }
    check.column("/variance_components/variance", variances, tolerance);
}

void checkNestedTerms(CaseCheck& check, const MixedModel& fit, Tolerance tolerance)
{
    std::vector<double> f;
    std::vector<double> df1;
    std::vector<std::optional<double>> df2;
    std::vector<double> p;
    check.given("/F_kenward_roger/term");
    for (const std::string& term : check.textsAt("/F_kenward_roger/term")) {
        const FTest test = granted(fit.termTest(term));
        f.push_back(test.f);
        df1.push_back(test.df1);
        df2.push_back(test.df2);
        p.push_back(test.p);
    }
    check.column("/F_kenward_roger/F", f, tolerance);
    check.column("/F_kenward_roger/df1", df1, tolerance);
    check.column("/F_kenward_roger/df2", df2, tolerance);
    check.column("/F_kenward_roger/p", p, tolerance);
}

void coverNested(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const MixedModel fit = granted(MixedModel::fit(tableOf(check, formula), formula.model));
    const Tolerance tolerance = check.tolerance();
    check.given("/formula");
    check.number("/reml_criterion", fit.remlCriterion(), tolerance);
    checkNestedVariances(check, fit, tolerance);
    checkNestedTerms(check, fit, tolerance);
    // The means of the pairs are of the first fixed factor.
    const std::string focal = formula.model.terms.front().front();
    const auto estimator = fit.estimator();
    checkMeans(check, "/emmeans_kenward_roger", *estimator, focal, tolerance);
    checkPairs(check, "/pairs_kenward_roger", *estimator, focal, tolerance, tolerance);
}

const Registered kMixed{"linear mixed model (REML), one random intercept", coverMixed};
const Registered kNested{"linear mixed model, two nested random intercepts", coverNested};

} // namespace

} // namespace plumule::stats::reference
