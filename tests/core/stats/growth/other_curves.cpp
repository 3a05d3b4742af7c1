#include "tests/core/stats/growth/other_curves.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats::reference {

namespace {

using Parameters = CurveModel::Parameters;
using Gradient = CurveModel::Gradient;

void fillGradient(Gradient gradient, std::initializer_list<double> derivatives)
{
    if (!gradient.empty()) {
        std::copy(derivatives.begin(), derivatives.end(), gradient.begin());
    }
}

CurveModelPtr curveOf(std::string name, std::vector<std::string> parameters,
                      double (*value)(double, Parameters, Gradient))
{
    CurveModel model;
    model.name = std::move(name);
    model.parameterNames = std::move(parameters);
    model.value = value;
    return std::make_shared<const CurveModel>(std::move(model));
}

double logisticByRate(double x, Parameters p, Gradient gradient)
{
    const double share = 1 / (1 + std::exp(p[1] - p[2] * x));
    const double fall = share * (1 - share);
    fillGradient(gradient, {share, -p[0] * fall, p[0] * fall * x});
    return p[0] * share;
}

double gompertzByRate(double x, Parameters p, Gradient gradient)
{
    const double inner = std::exp(-p[1] * (x - p[2]));
    const double share = std::exp(-inner);
    const double fall = share * inner;
    fillGradient(gradient, {share, p[0] * fall * (x - p[2]), -p[0] * fall * p[1]});
    return p[0] * share;
}

double saturation(double x, Parameters p, Gradient gradient)
{
    const double grown = -std::expm1(-p[1] * x);
    fillGradient(gradient, {grown, p[0] * x * std::exp(-p[1] * x)});
    return p[0] * grown;
}

double fourParameterLogistic(double x, Parameters p, Gradient gradient)
{
    const double z = (p[2] - x) / p[3];
    const double share = 1 / (1 + std::exp(z));
    const double byZ = -(p[1] - p[0]) * share * (1 - share);
    fillGradient(gradient, {1 - share, share, byZ / p[3], -byZ * z / p[3]});
    return p[0] + (p[1] - p[0]) * share;
}

double chapmanRichards(double x, Parameters p, Gradient gradient)
{
    const double grown = -std::expm1(-p[1] * x);
    const double share = std::pow(grown, p[2]);
    fillGradient(gradient, {share, p[0] * p[2] * share / grown * x * std::exp(-p[1] * x),
                            p[0] * share * std::log(grown)});
    return p[0] * share;
}

} // namespace

const CurveModelPtr& logisticCurveByRate()
{
    static const CurveModelPtr model = curveOf("logistic by rate", {"A", "b", "c"}, logisticByRate);
    return model;
}

const CurveModelPtr& gompertzCurveByRate()
{
    static const CurveModelPtr model =
        curveOf("gompertz by rate", {"A", "k", "ti"}, gompertzByRate);
    return model;
}

const CurveModelPtr& saturationCurve()
{
    static const CurveModelPtr model = curveOf("saturation", {"A", "k"}, saturation);
    return model;
}

const CurveModelPtr& fourParameterLogisticCurve()
{
    static const CurveModelPtr model =
        curveOf("four-parameter logistic", {"A", "B", "xmid", "scal"}, fourParameterLogistic);
    return model;
}

const CurveModelPtr& chapmanRichardsCurve()
{
    static const CurveModelPtr model =
        curveOf("chapman-richards", {"A", "k", "p"}, chapmanRichards);
    return model;
}

} // namespace plumule::stats::reference
