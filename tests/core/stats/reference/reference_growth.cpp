#include "core/stats/growth/growth_report.h"
#include "tests/core/stats/growth/other_curves.h"
#include "tests/core/stats/reference/reference_cases.h"
#include "tests/support/told.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <regex>
#include <stdexcept>

namespace plumule::stats::reference {

namespace {

using Texts = std::vector<std::string>;

// A curve with its formula as a case may write it; #0, #1... are the parameters.
struct KnownCurve
{
    std::string formula;
    const CurveModelPtr& (*model)();
    // The report's curve where it is the same family, with its parameters from this form's.
    std::optional<GrowthCurve> grown;
    std::vector<double> (*asGrown)(const std::vector<double>&);
};

std::vector<double> unchanged(const std::vector<double>& p)
{
    return p;
}

std::vector<double> fromOdds(const std::vector<double>& p)
{
    return {p[0], p[1] / p[2], 1 / p[2]};
}

std::vector<double> fromRate(const std::vector<double>& p)
{
    return {p[0], p[2], 1 / p[1]};
}

const std::vector<KnownCurve>& knownCurves()
{
    static const std::vector<KnownCurve> curves = {
        {"#0/(1+exp((#1-x)/#2))", logisticCurve, GrowthCurve::Logistic, unchanged},
        {"#0/(1+exp(-(x-#1)/#2))", logisticCurve, GrowthCurve::Logistic, unchanged},
        {"#0/(1+exp(#1-#2*x))", logisticCurveByRate, GrowthCurve::Logistic, fromOdds},
        {"#0*exp(-exp((#1-x)/#2))", gompertzCurve, GrowthCurve::Gompertz, unchanged},
        {"#0*exp(-exp(-(x-#1)/#2))", gompertzCurve, GrowthCurve::Gompertz, unchanged},
        {"#0*exp(-exp(-#1*(x-#2)))", gompertzCurveByRate, GrowthCurve::Gompertz, fromRate},
        {"#0/(1+exp(#1-#2*x))^(1/#3)", richardsCurve, GrowthCurve::Richards, unchanged},
        {"#0/((1+exp(#1-#2*x))^(1/#3))", richardsCurve, GrowthCurve::Richards, unchanged},
        {"#0*(1-exp(-#1*x))", saturationCurve, std::nullopt, nullptr},
        {"#0+(#1-#0)/(1+exp((#2-x)/#3))", fourParameterLogisticCurve, std::nullopt, nullptr},
        {"#0*(1-exp(-#1*x))^#2", chapmanRichardsCurve, std::nullopt, nullptr},
    };
    return curves;
}

std::string plainFormula(std::string formula, const Texts& names)
{
    std::erase(formula, ' ');
    formula = std::regex_replace(formula, std::regex("^y="), "");
    formula = std::regex_replace(formula, std::regex("\\*\\*"), "^");
    std::replace(formula.begin(), formula.end(), '[', '(');
    std::replace(formula.begin(), formula.end(), ']', ')');
    for (std::size_t i = 0; i < names.size(); ++i) {
        formula = std::regex_replace(formula, std::regex("\\b" + names[i] + "\\b"),
                                     "#" + std::to_string(i));
    }
    return formula;
}

// The case's curve and where each of its parameters stands in the case's list.
struct Recognised
{
    const KnownCurve* curve;
    std::vector<std::size_t> places;

    [[nodiscard]] std::vector<double> ours(const std::vector<double>& theirs) const
    {
        std::vector<double> values;
        for (const std::size_t place : places) {
            values.push_back(theirs.at(place));
        }
        return values;
    }
};

Recognised recognise(const std::string& formula, const Texts& names)
{
    std::vector<std::size_t> places(names.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        places[i] = i;
    }
    do {
        Texts ordered;
        for (const std::size_t place : places) {
            ordered.push_back(names[place]);
        }
        const std::string plain = plainFormula(formula, ordered);
        for (const KnownCurve& curve : knownCurves()) {
            if (curve.formula == plain) {
                return {&curve, places};
            }
        }
    } while (std::next_permutation(places.begin(), places.end()));
    throw std::runtime_error("no curve of the house is written " + formula);
}

struct Readings
{
    std::vector<double> x;
    std::vector<double> y;
};

Readings readingsOf(const nlohmann::json& data)
{
    const Table table(data.at("file"));
    const auto x = table.numbers(data.at("x"));
    const auto y = table.numbers(data.at("y"));
    Readings readings;
    for (std::size_t row = 0; row < x.size(); ++row) {
        if (!data.contains("filter_column") ||
            table.texts(data.at("filter_column"))[row] == data.at("filter_value")) {
            readings.x.push_back(x[row]);
            readings.y.push_back(y[row]);
        }
    }
    return readings;
}

std::vector<double> startAt(const CaseCheck& check, const std::string& pointer, const Texts& names)
{
    const auto& start = check.at(pointer);
    if (start.is_array()) {
        return start.get<std::vector<double>>();
    }
    std::vector<double> values;
    for (const std::string& name : names) {
        values.push_back(start.at(name));
    }
    return values;
}

CurveFit fitted(const Result<CurveFit>& fit, const std::string& from)
{
    if (!fit) {
        throw std::runtime_error("no fit from " + from + ": " + told(fit.error()));
    }
    return *fit;
}

// A fit from every start the case names must end in the same place; the last is handed on.
CurveFit fitFromStarts(CaseCheck& check, const Recognised& known, const Readings& readings,
                       const Texts& names, const std::string& parameters)
{
    std::optional<CurveFit> last;
    const std::vector<double> expected = known.ours(check.numbersAt(parameters + "/estimate"));
    for (const std::string pointer : {"/start", "/start1", "/start2"}) {
        if (!check.has(pointer)) {
            continue;
        }
        check.given(pointer);
        const std::vector<std::vector<double>> starts = {
            known.ours(startAt(check, pointer, names))};
        last = fitted(fitCurve(known.curve->model(), readings.x, readings.y, starts), pointer);
        for (std::size_t i = 0; i < expected.size(); ++i) {
            if (std::abs(last->estimates[i] - expected[i]) > 1e-8 * std::abs(expected[i])) {
                check.fault("another minimum from " + pointer);
            }
        }
    }
    if (!last) {
        throw std::runtime_error("the case has no start");
    }
    return *last;
}

void coverParameters(CaseCheck& check, const std::string& at, const CurveFit& fit,
                     const Recognised& known, Tolerance estimates, Tolerance rest)
{
    std::array<std::vector<double>, 4> columns;
    for (auto& column : columns) {
        column.resize(known.places.size());
    }
    for (std::size_t i = 0; i < known.places.size(); ++i) {
        const CurveEstimate value = parameterEstimate(fit, i);
        const std::size_t place = known.places[i];
        columns[0][place] = value.estimate;
        columns[1][place] = value.se;
        columns[2][place] = value.lower;
        columns[3][place] = value.upper;
    }
    check.given(at + "/name");
    check.column(at + "/estimate", columns[0], estimates);
    check.column(at + "/se", columns[1], rest);
    if (check.has(at + "/ci_lo_wald_t")) {
        check.column(at + "/ci_lo_wald_t", columns[2], rest);
        check.column(at + "/ci_hi_wald_t", columns[3], rest);
    }
}

void coverCorrelation(CaseCheck& check, const CurveFit& fit, const Recognised& known,
                      Tolerance tolerance)
{
    const std::size_t size = known.places.size();
    std::vector<std::vector<double>> rows(size, std::vector<double>(size));
    for (std::size_t a = 0; a < size; ++a) {
        for (std::size_t b = 0; b < size; ++b) {
            rows[known.places[a]][known.places[b]] =
                fit.covarianceOf(a, b) / (fit.se(a) * fit.se(b));
        }
    }
    for (std::size_t row = 0; row < size; ++row) {
        check.column("/correlation/" + std::to_string(row), rows[row], tolerance);
    }
}

void coverPoints(CaseCheck& check, const std::vector<CurvePoint>& points, Tolerance tolerance)
{
    std::array<std::vector<double>, 4> columns;
    for (const CurvePoint& point : points) {
        columns[0].push_back(point.fit);
        columns[1].push_back(point.se);
        columns[2].push_back(point.lower);
        columns[3].push_back(point.upper);
    }
    check.column("/mean_curve/fit", columns[0], tolerance);
    check.column("/mean_curve/se", columns[1], tolerance);
    check.column("/mean_curve/ci_lo", columns[2], tolerance);
    check.column("/mean_curve/ci_hi", columns[3], tolerance);
    for (const char* name : {"/mean_curve/pred_lo", "/mean_curve/pred_hi"}) {
        check.notOurs(name, "the band told is that of the mean");
    }
}

CurveEstimate derivedNumber(const CurveFit& fit, const std::string& name)
{
    static const std::regex fraction("x_at_([0-9.]+)pct");
    std::smatch match;
    const auto value = std::regex_match(name, match, fraction)
                           ? xAtFraction(fit, std::stod(match[1]) / 100)
                           : topRate(fit);
    if (!value || (match.empty() && name != "max_growth_rate")) {
        throw std::runtime_error("cannot derive " + name);
    }
    return *value;
}

void coverDerived(CaseCheck& check, const CurveFit& fit, Tolerance tolerance)
{
    std::array<std::vector<double>, 4> columns;
    for (const std::string& name : check.textsAt("/derived/name")) {
        const CurveEstimate value = derivedNumber(fit, name);
        columns[0].push_back(value.estimate);
        columns[1].push_back(value.se);
        columns[2].push_back(value.lower);
        columns[3].push_back(value.upper);
    }
    check.given("/derived/name");
    check.given("/derived/definition");
    check.column("/derived/estimate", columns[0], tolerance);
    check.column("/derived/se", columns[1], tolerance);
    check.column("/derived/ci_lo", columns[2], tolerance);
    check.column("/derived/ci_hi", columns[3], tolerance);
}

// The report finds the same curve without being told a start, and says the same of it.
void coverReport(CaseCheck& check, const Recognised& known, const Readings& readings,
                 const CurveFit& fit, Tolerance tolerance)
{
    const auto report = growthReport(readings.x, readings.y,
                                     {known.curve->grown, check.numbersAt("/mean_curve/x"), {}});
    if (!report) {
        throw std::runtime_error("no report: " + told(report.error()));
    }
    const std::vector<double> expected = known.curve->asGrown(fit.estimates);
    for (std::size_t i = 0; i < expected.size(); ++i) {
        if (std::abs(report->parameters[i].value.estimate - expected[i]) >
            1e-8 * std::abs(expected[i])) {
            check.fault("the report has another " + report->parameters[i].name);
        }
    }
    coverPoints(check, report->at, tolerance);
    if (!check.has("/derived")) {
        return;
    }
    const Texts names = check.textsAt("/derived/name");
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string row = "/" + std::to_string(i);
        if (names[i] != "max_growth_rate" && names[i] != "x_at_90pct") {
            continue;
        }
        const CurveEstimate& value = names[i] == "x_at_90pct" ? report->xAt90pct : report->topRate;
        check.number("/derived/estimate" + row, value.estimate, tolerance);
        check.number("/derived/se" + row, value.se, tolerance);
        check.number("/derived/ci_lo" + row, value.lower, tolerance);
        check.number("/derived/ci_hi" + row, value.upper, tolerance);
    }
}

void coverFit(CaseCheck& check, const std::string& at, const CurveFit& fit, Tolerance tolerance)
{
    if (check.has(at + "/n")) {
        check.number(at + "/n", static_cast<double>(fit.n), tolerance);
    }
    check.number(at + "/df", fit.df, tolerance);
    check.number(at + "/rss", fit.rss, tolerance);
    check.number(at + "/residual_sd", fit.residualSd, tolerance);
}

// Without the small-sample correction.
std::optional<double> aicOf(const CurveFit& fit)
{
    const auto counted = static_cast<double>(fit.estimates.size() + 1);
    const double correction =
        2 * counted * (counted + 1) / (static_cast<double>(fit.n) - counted - 1);
    return fit.aicc ? std::optional(*fit.aicc - correction) : std::nullopt;
}

// NIST prints eleven digits; nine of them are asked of the estimates whatever the case allows.
Tolerance estimateTolerance(CaseCheck& check, bool certified)
{
    if (certified) {
        return {std::min(1e-9, check.tolerance("certified").rel), 0};
    }
    return check.tolerance("estimates_goal");
}

void coverGrowth(CaseCheck& check)
{
    const bool certified = check.has("/certified");
    const std::string at = certified ? "/certified" : "";
    const Tolerance tolerance = check.tolerance(certified ? "certified" : "default");
    const Tolerance curve = check.tolerance(certified ? "mean_curve" : "default");
    const Texts names = check.textsAt(at + "/parameters/name");
    const Recognised known = recognise(check.at("/model"), names);
    const Readings readings = readingsOf(check.data());
    check.given("/model");
    const CurveFit fit = fitFromStarts(check, known, readings, names, at + "/parameters");
    coverFit(check, at, fit, tolerance);
    coverParameters(check, at + "/parameters", fit, known, estimateTolerance(check, certified),
                    tolerance);
    coverCorrelation(check, fit, known, curve);
    if (check.has("/aic")) {
        check.number("/aic", aicOf(fit), tolerance);
    }
    if (check.has("/lre_R")) {
        check.notOurs("/lre_R", "how many digits R reached");
    }
    check.given("/mean_curve/x");
    std::vector<CurvePoint> points;
    for (const double x : check.numbersAt("/mean_curve/x")) {
        points.push_back(curveAt(fit, x));
    }
    coverPoints(check, points, curve);
    if (check.has("/derived")) {
        const auto grown = fitGrowth(known.curve->grown.value(), readings.x, readings.y);
        coverDerived(check, fitted(grown, "growth"), tolerance);
    }
    if (known.curve->grown) {
        coverReport(check, known, readings, fit, curve);
    }
}

const Registered kGrowth{"nonlinear growth curve", coverGrowth};

} // namespace

} // namespace plumule::stats::reference
