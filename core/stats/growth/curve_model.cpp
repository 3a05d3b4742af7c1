#include "core/stats/growth/curve_model.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace plumule::stats {

namespace {

using Parameters = CurveModel::Parameters;
using Gradient = CurveModel::Gradient;

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

void fill(Gradient gradient, std::initializer_list<double> derivatives)
{
    if (!gradient.empty()) {
        std::copy(derivatives.begin(), derivatives.end(), gradient.begin());
    }
}

// 1/(1+exp(z)) and its fall per unit of z, without inf·0 where exp(z) overflows.
struct LogisticStep
{
    double share;
    double fall;
};

LogisticStep logisticStep(double z)
{
    const double e = std::exp(-std::abs(z));
    const double small = e / (1 + e);
    const double large = 1 / (1 + e);
    return {z > 0 ? small : large, small * large};
}

// exp(−exp(z)) and its fall per unit of z.
LogisticStep gompertzStep(double z)
{
    const double inner = std::exp(z);
    return {std::exp(-inner), std::exp(z - inner)};
}

double logOdds(double fraction)
{
    return std::log(fraction / (1 - fraction));
}

double gompertzOdds(double fraction)
{
    return -std::log(-std::log(fraction));
}

// The curves A·share((tm−x)/s).
CurveModel located(std::string name, LogisticStep (*step)(double), double (*odds)(double),
                   double steepest)
{
    CurveModel model;
    model.name = std::move(name);
    model.parameterNames = {"A", "tm", "s"};
    model.value = [step](double x, Parameters p, Gradient gradient) {
        const double z = (p[1] - x) / p[2];
        const auto [share, fall] = step(z);
        fill(gradient, {share, -p[0] * fall / p[2], p[0] * fall * z / p[2]});
        return p[0] * share;
    };
    model.slope = [step](double x, Parameters p) {
        return p[0] * step((p[1] - x) / p[2]).fall / p[2];
    };
    model.topRate = [steepest](Parameters p, Gradient gradient) {
        const double rate = p[0] * steepest / p[2];
        fill(gradient, {steepest / p[2], 0, -rate / p[2]});
        return rate;
    };
    model.xAtFraction = [odds](double fraction, Parameters p, Gradient gradient) {
        fill(gradient, {0, 1, odds(fraction)});
        return p[1] + p[2] * odds(fraction);
    };
    return model;
}

CurveModel richards()
{
    CurveModel model;
    model.name = "richards";
    model.parameterNames = {"A", "b", "c", "d"};
    // log(1+exp(z)) is kept as such, so that a steep foot neither overflows nor loses digits.
    model.value = [](double x, Parameters p, Gradient gradient) {
        if (!(p[3] > 0)) {
            return kNone;
        }
        const double z = p[1] - p[2] * x;
        const double log1pExp = z > 0 ? z + std::log1p(std::exp(-z)) : std::log1p(std::exp(z));
        const double share = std::exp(-log1pExp / p[3]);
        const double byZ = -p[0] * share / p[3] * logisticStep(-z).share;
        fill(gradient, {share, byZ, -byZ * x, p[0] * share * log1pExp / (p[3] * p[3])});
        return p[0] * share;
    };
    model.slope = [](double x, Parameters p) {
        const double z = p[1] - p[2] * x;
        const double log1pExp = z > 0 ? z + std::log1p(std::exp(-z)) : std::log1p(std::exp(z));
        return p[0] * p[2] / p[3] * std::exp(-log1pExp / p[3]) * logisticStep(-z).share;
    };
    // Steepest where exp(b−c·t) = d.
    model.topRate = [](Parameters p, Gradient gradient) {
        const double shape = std::pow(1 + p[3], -(1 + 1 / p[3]));
        const double byD = std::log1p(p[3]) / (p[3] * p[3]) - 1 / p[3];
        fill(gradient, {p[2] * shape, 0, p[0] * shape, p[0] * p[2] * shape * byD});
        return p[0] * p[2] * shape;
    };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        const double grown = -p[3] * std::log(fraction);
        const double odds = std::log(std::expm1(grown));
        const double x = (p[1] - odds) / p[2];
        const double oddsByD = -std::log(fraction) / -std::expm1(-grown);
        fill(gradient, {0, 1 / p[2], -x / p[2], -oddsByD / p[2]});
        return x;
    };
    return model;
}

CurveModelPtr shared(CurveModel model)
{
    return std::make_shared<const CurveModel>(std::move(model));
}

} // namespace

const CurveModelPtr& logisticCurve()
{
    static const CurveModelPtr model = shared(located("logistic", logisticStep, logOdds, 0.25));
    return model;
}

const CurveModelPtr& gompertzCurve()
{
    static const CurveModelPtr model =
        shared(located("gompertz", gompertzStep, gompertzOdds, 1 / std::numbers::e));
    return model;
}

const CurveModelPtr& richardsCurve()
{
    static const CurveModelPtr model = shared(richards());
    return model;
}

} // namespace plumule::stats
