#include "core/stats/model/mixed_model.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>

namespace plumule::stats::reference {

namespace {

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

void checkEffects(CaseCheck& check, const MixedModel& fit)
{
    const Tolerance tolerance = check.tolerance();
    std::vector<std::string> names;
    std::vector<std::optional<double>> values;
    std::vector<std::optional<double>> errors;
    for (const Coefficient& one : fit.coefficients()) {
        names.push_back(plainName(one.name));
        values.push_back(one.estimate);
        errors.push_back(one.se);
    }
    check.texts("/fixed_effects_treatment_coding/term", names);
    check.column("/fixed_effects_treatment_coding/estimate", values, tolerance);
    check.column("/fixed_effects_treatment_coding/se", errors, tolerance);
    names.clear();
    values.clear();
    for (const RandomEffect& one : fit.predictedEffects(0)) {
        names.push_back(one.level);
        values.emplace_back(one.value);
    }
    check.texts("/blup/level", names);
    check.column("/blup/value", values, tolerance);
}

void checkMethod(CaseCheck& check, const MixedModel& fit, DfMethod method, const std::string& name)
{
    const std::string focal = check.data().at("focal");
    const Tolerance tolerance = check.tolerance(name);
    if (check.has("/F_focal_" + name))
        checkTest(check, "/F_focal_" + name, granted(fit.termTest(focal, method)), tolerance);
    if (!check.has("/" + name))
        return;
    const auto estimator = fit.estimator(method);
    checkMeans(check, "/" + name + "/emmeans", *estimator, focal, tolerance);
    checkPairs(check, "/" + name + "/pairs", *estimator, focal, tolerance, tolerance);
    if (check.has("/" + name + "/custom_contrast"))
        checkContrast(check, "/" + name + "/custom_contrast", *estimator, focal, tolerance);
}

void coverMixed(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const MixedModel fit = granted(MixedModel::fit(tableOf(check, formula), formula.model));
    checkVariances(check, fit);
    checkEffects(check, fit);
    checkMethod(check, fit, DfMethod::KenwardRoger, "kenward_roger");
    checkMethod(check, fit, DfMethod::Satterthwaite, "satterthwaite");
    checkMethod(check, fit, DfMethod::Asymptotic, "asymptotic");
    if (!check.has("/emmeans_point"))
        return;
    const auto plain = fit.estimator(DfMethod::Asymptotic);
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

void coverNested(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const MixedModel fit = granted(MixedModel::fit(tableOf(check, formula), formula.model));
    const Tolerance tolerance = check.tolerance();
    check.given("/formula");
    check.number("/reml_criterion", fit.remlCriterion(), tolerance);
    check.given("/variance_components/group");
    std::vector<std::optional<double>> variances;
    for (const std::string& group : check.textsAt("/variance_components/group")) {
        variances.emplace_back();
        if (group == "Residual")
            variances.back() = fit.residualVariance();
        for (const VarianceComponent& component : fit.components()) {
            if (component.group == group)
                variances.back() = component.variance;
        }
    }
    check.column("/variance_components/variance", variances, tolerance);
    std::vector<double> f;
    std::vector<double> df1;
    std::vector<std::optional<double>> df2;
    std::vector<double> p;
    check.given("/F_kenward_roger/term");
    for (const std::string& term : check.textsAt("/F_kenward_roger/term")) {
        const FTest test = granted(fit.termTest(term, DfMethod::KenwardRoger));
        f.push_back(test.f);
        df1.push_back(test.df1);
        df2.push_back(test.df2);
        p.push_back(test.p);
    }
    check.column("/F_kenward_roger/F", f, tolerance);
    check.column("/F_kenward_roger/df1", df1, tolerance);
    check.column("/F_kenward_roger/df2", df2, tolerance);
    check.column("/F_kenward_roger/p", p, tolerance);
    // The means of the pairs are of the first fixed factor.
    const std::string focal = formula.model.terms.front().front();
    const auto estimator = fit.estimator(DfMethod::KenwardRoger);
    checkMeans(check, "/emmeans_kenward_roger", *estimator, focal, tolerance);
    checkPairs(check, "/pairs_kenward_roger", *estimator, focal, tolerance, tolerance);
}

const Registered kMixed{"linear mixed model (REML), one random intercept", coverMixed};
const Registered kNested{"linear mixed model, two nested random intercepts", coverNested};

} // namespace

} // namespace plumule::stats::reference
