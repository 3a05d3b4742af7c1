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
    if (!gradient.empty())
        std::copy(derivatives.begin(), derivatives.end(), gradient.begin());
}

double zero(Parameters)
{
    return 0;
}

double first(Parameters p)
{
    return p[0];
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
    model.lowerLevel = zero;
    model.upperLevel = first;
    return model;
}

CurveModel richards()
{
    CurveModel model;
    model.name = "richards";
    model.parameterNames = {"A", "b", "c", "d"};
    // log(1+exp(z)) is kept as such, so that a steep foot neither overflows nor loses digits.
    model.value = [](double x, Parameters p, Gradient gradient) {
        if (!(p[3] > 0))
            return kNone;
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
    model.lowerLevel = zero;
    model.upperLevel = first;
    return model;
}

CurveModel logisticByRate()
{
    CurveModel model;
    model.name = "logistic by rate";
    model.parameterNames = {"A", "b", "c"};
    model.value = [](double x, Parameters p, Gradient gradient) {
        const auto [share, fall] = logisticStep(p[1] - p[2] * x);
        fill(gradient, {share, -p[0] * fall, p[0] * fall * x});
        return p[0] * share;
    };
    model.slope = [](double x, Parameters p) {
        return p[0] * p[2] * logisticStep(p[1] - p[2] * x).fall;
    };
    model.topRate = [](Parameters p, Gradient gradient) {
        fill(gradient, {p[2] / 4, 0, p[0] / 4});
        return p[0] * p[2] / 4;
    };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        const double x = (p[1] + logOdds(fraction)) / p[2];
        fill(gradient, {0, 1 / p[2], -x / p[2]});
        return x;
    };
    model.lowerLevel = zero;
    model.upperLevel = first;
    return model;
}

CurveModel gompertzByRate()
{
    CurveModel model;
    model.name = "gompertz by rate";
    model.parameterNames = {"A", "k", "ti"};
    model.value = [](double x, Parameters p, Gradient gradient) {
        const auto [share, fall] = gompertzStep(-p[1] * (x - p[2]));
        fill(gradient, {share, p[0] * fall * (x - p[2]), -p[0] * fall * p[1]});
        return p[0] * share;
    };
    model.slope = [](double x, Parameters p) {
        return p[0] * p[1] * gompertzStep(-p[1] * (x - p[2])).fall;
    };
    model.topRate = [](Parameters p, Gradient gradient) {
        fill(gradient, {p[1] / std::numbers::e, p[0] / std::numbers::e, 0});
        return p[0] * p[1] / std::numbers::e;
    };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        const double odds = gompertzOdds(fraction);
        fill(gradient, {0, -odds / (p[1] * p[1]), 1});
        return p[2] + odds / p[1];
    };
    model.lowerLevel = zero;
    model.upperLevel = first;
    return model;
}

CurveModel saturation()
{
    CurveModel model;
    model.name = "saturation";
    model.parameterNames = {"A", "k"};
    model.value = [](double x, Parameters p, Gradient gradient) {
        const double grown = -std::expm1(-p[1] * x);
        fill(gradient, {grown, p[0] * x * std::exp(-p[1] * x)});
        return p[0] * grown;
    };
    model.slope = [](double x, Parameters p) { return p[0] * p[1] * std::exp(-p[1] * x); };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        const double x = -std::log1p(-fraction) / p[1];
        fill(gradient, {0, -x / p[1]});
        return x;
    };
    model.lowerLevel = zero;
    model.upperLevel = first;
    return model;
}

CurveModel fourParameterLogistic()
{
    CurveModel model;
    model.name = "four-parameter logistic";
    model.parameterNames = {"A", "B", "xmid", "scal"};
    model.value = [](double x, Parameters p, Gradient gradient) {
        const double z = (p[2] - x) / p[3];
        const auto [share, fall] = logisticStep(z);
        const double byZ = -(p[1] - p[0]) * fall;
        fill(gradient, {1 - share, share, byZ / p[3], -byZ * z / p[3]});
        return p[0] + (p[1] - p[0]) * share;
    };
    model.slope = [](double x, Parameters p) {
        return (p[1] - p[0]) * logisticStep((p[2] - x) / p[3]).fall / p[3];
    };
    model.topRate = [](Parameters p, Gradient gradient) {
        const double rate = (p[1] - p[0]) / (4 * p[3]);
        fill(gradient, {-1 / (4 * p[3]), 1 / (4 * p[3]), 0, -rate / p[3]});
        return rate;
    };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        fill(gradient, {0, 0, 1, logOdds(fraction)});
        return p[2] + p[3] * logOdds(fraction);
    };
    model.lowerLevel = first;
    model.upperLevel = [](Parameters p) { return p[1]; };
    return model;
}

double chapmanRichardsValue(double x, Parameters p, Gradient gradient)
{
    const double grown = -std::expm1(-p[1] * x);
    if (grown == 0 && p[2] > 0) {
        fill(gradient, {0, 0, 0});
        return 0;
    }
    const double share = std::pow(grown, p[2]);
    fill(gradient, {share, p[0] * p[2] * share / grown * x * std::exp(-p[1] * x),
                    p[0] * share * std::log(grown)});
    return p[0] * share;
}

CurveModel chapmanRichards()
{
    CurveModel model;
    model.name = "chapman-richards";
    model.parameterNames = {"A", "k", "p"};
    model.value = chapmanRichardsValue;
    model.slope = [](double x, Parameters p) {
        const double grown = -std::expm1(-p[1] * x);
        return p[0] * p[1] * p[2] * std::pow(grown, p[2] - 1) * std::exp(-p[1] * x);
    };
    model.topRate = [](Parameters p, Gradient gradient) {
        if (!(p[2] > 1))
            return kNone;
        const double shape = std::pow(1 - 1 / p[2], p[2] - 1);
        const double byP = std::log1p(-1 / p[2]) + 1 / p[2];
        fill(gradient, {p[1] * shape, p[0] * shape, p[0] * p[1] * shape * byP});
        return p[0] * p[1] * shape;
    };
    model.xAtFraction = [](double fraction, Parameters p, Gradient gradient) {
        const double grown = std::pow(fraction, 1 / p[2]);
        const double x = -std::log1p(-grown) / p[1];
        const double grownByP = -grown * std::log(fraction) / (p[2] * p[2]);
        fill(gradient, {0, -x / p[1], grownByP / ((1 - grown) * p[1])});
        return x;
    };
    model.lowerLevel = zero;
    model.upperLevel = first;
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

const CurveModelPtr& logisticCurveByRate()
{
    static const CurveModelPtr model = shared(logisticByRate());
    return model;
}

const CurveModelPtr& gompertzCurveByRate()
{
    static const CurveModelPtr model = shared(gompertzByRate());
    return model;
}

const CurveModelPtr& saturationCurve()
{
    static const CurveModelPtr model = shared(saturation());
    return model;
}

const CurveModelPtr& fourParameterLogisticCurve()
{
    static const CurveModelPtr model = shared(fourParameterLogistic());
    return model;
}

const CurveModelPtr& chapmanRichardsCurve()
{
    static const CurveModelPtr model = shared(chapmanRichards());
    return model;
}

} // namespace plumule::stats
