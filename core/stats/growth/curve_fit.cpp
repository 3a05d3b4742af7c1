#include "core/stats/growth/curve_fit.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/plain_checks.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>
#include <unsupported/Eigen/NonLinearOptimization>

namespace plumule::stats {

namespace {

constexpr std::size_t kMostParameters = 12;
// Smaller than this, the scaled Jacobian's last pivot says that a parameter hangs on the others.
constexpr double kUndetermined = 1e-7;
// The relative offset of Bates and Watts (1981, Technometrics 23:179) below which the residuals are
// at a right angle to the curve's tangent plane, that is, at a minimum.
constexpr double kOffset = 1e-6;
// Below this the estimates are right to their last digits already.
constexpr double kSharpOffset = 1e-11;

// What the solver asks for: residuals and their derivatives at given parameters.
struct CurveResiduals
{
    const CurveModel& model;
    std::span<const double> x;
    std::span<const double> y;
    Eigen::Index parameters;

    [[nodiscard]] Eigen::Index values() const { return static_cast<Eigen::Index>(x.size()); }

    int operator()(const Eigen::VectorXd& p, Eigen::VectorXd& residuals) const
    {
        for (std::size_t i = 0; i < x.size(); ++i) {
            residuals[static_cast<Eigen::Index>(i)] =
                model.value(x[i], {p.data(), static_cast<std::size_t>(p.size())}, {}) - y[i];
        }
        return 0;
    }

    int df(const Eigen::VectorXd& p, Eigen::MatrixXd& jacobian) const
    {
        std::array<double, kMostParameters> buffer{};
        const std::span<double> gradient(buffer.data(), static_cast<std::size_t>(p.size()));
        for (std::size_t i = 0; i < x.size(); ++i) {
            model.value(x[i], {p.data(), gradient.size()}, gradient);
            for (std::size_t j = 0; j < gradient.size(); ++j) {
                jacobian(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = gradient[j];
            }
        }
        return 0;
    }
};

// The normal equations as a system to solve: the last digits, which the sum of squares is too flat
// to show, come from its root. Parameters are counted in standard errors from where the fit ended.
struct NormalEquations
{
    const CurveResiduals& residuals;
    Eigen::VectorXd centre;
    Eigen::VectorXd unit;
    mutable Eigen::VectorXd left{};
    mutable Eigen::MatrixXd jacobian{};

    int operator()(const Eigen::VectorXd& step, Eigen::VectorXd& gradient) const
    {
        const Eigen::VectorXd p = centre + unit.cwiseProduct(step);
        left.resize(residuals.values());
        jacobian.resize(residuals.values(), p.size());
        residuals(p, left);
        residuals.df(p, jacobian);
        gradient = unit.cwiseProduct(jacobian.transpose() * left);
        return gradient.allFinite() ? 0 : -1;
    }
};

// Where a run of the solver ended.
struct Ending
{
    Eigen::VectorXd p;
    Eigen::MatrixXd inverse; // (JᵀJ)⁻¹
    double rss = 0;
    bool atMinimum = false;
    bool sharp = false;
    bool determined = false;
};

// False where a parameter could change by its own size without moving the curve: the steepness of a
// step from one reading to the next, for one.
bool matters(const Eigen::VectorXd& norms, const Eigen::VectorXd& p, double size)
{
    for (Eigen::Index j = 0; j < p.size(); ++j) {
        const double reach = std::abs(p[j]) > 1e-6 ? std::abs(p[j]) : 1;
        if (!(norms[j] > 0) || norms[j] * reach < 1e-8 * size) {
            return false;
        }
    }
    return true;
}

Ending look(const CurveResiduals& residuals, Eigen::VectorXd p)
{
    const Eigen::Index n = residuals.values();
    const Eigen::Index k = p.size();
    Eigen::VectorXd left(n);
    Eigen::MatrixXd jacobian(n, k);
    residuals(p, left);
    residuals.df(p, jacobian);
    Ending ending;
    ending.rss = left.squaredNorm();
    ending.p = std::move(p);
    if (!jacobian.allFinite() || !left.allFinite() || !ending.p.allFinite()) {
        return ending;
    }
    double size = 0;
    for (const double y : residuals.y) {
        size += y * y;
    }
    const Eigen::VectorXd norms = jacobian.colwise().norm().transpose();
    if (!matters(norms, ending.p, std::sqrt(size))) {
        return ending;
    }
    const Eigen::VectorXd unit = norms.cwiseInverse();
    const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(jacobian * unit.asDiagonal());
    const Eigen::MatrixXd r = qr.matrixR().topRows(k).triangularView<Eigen::Upper>();
    ending.determined = std::abs(r(k - 1, k - 1)) > kUndetermined * std::abs(r(0, 0));
    if (!ending.determined) {
        return ending;
    }
    const Eigen::VectorXd rotated = qr.householderQ().adjoint() * left;
    const double along = rotated.head(k).squaredNorm() / static_cast<double>(k);
    const double across = rotated.tail(n - k).squaredNorm() / static_cast<double>(n - k);
    ending.sharp = along <= kSharpOffset * kSharpOffset * across;
    ending.atMinimum = along <= kOffset * kOffset * across || ending.rss <= 1e-24 * size;
    const Eigen::MatrixXd inverseR =
        r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(k, k));
    const Eigen::MatrixXd half = unit.asDiagonal() * (qr.colsPermutation() * inverseR);
    ending.inverse = half * half.transpose();
    return ending;
}

Eigen::VectorXd polished(const CurveResiduals& residuals, const Ending& ending)
{
    const double s2 = ending.rss / static_cast<double>(residuals.values() - ending.p.size());
    NormalEquations equations{residuals, ending.p,
                              (ending.inverse.diagonal() * std::max(s2, 1e-300)).cwiseSqrt()};
    Eigen::HybridNonLinearSolver<NormalEquations> solver(equations);
    Eigen::VectorXd step = Eigen::VectorXd::Zero(ending.p.size());
    solver.hybrd1(step, 1e-12);
    if (!step.allFinite() || step.norm() > 1e-2) {
        return ending.p;
    }
    return ending.p + equations.unit.cwiseProduct(step);
}

Ending minimise(const CurveResiduals& residuals, const std::vector<double>& start, double reach)
{
    CurveResiduals functor = residuals;
    Eigen::LevenbergMarquardt<CurveResiduals> solver(functor);
    solver.parameters.factor = reach;
    solver.parameters.maxfev = 200;
    solver.parameters.ftol = 1e-12;
    solver.parameters.xtol = 1e-10;
    Eigen::VectorXd p = Eigen::Map<const Eigen::VectorXd>(start.data(), residuals.parameters);
    solver.minimize(p);
    return look(residuals, std::move(p));
}

Done checkPoints(const CurveModel& model, std::span<const double> x, std::span<const double> y)
{
    if (x.size() != y.size()) {
        return fail(ErrorKind::Invalid, CurveReason::Lengths);
    }
    if (!allFinite(x) || !allFinite(y)) {
        return fail(ErrorKind::Invalid, CurveReason::NotFinite);
    }
    const std::size_t parameters = model.parameterNames.size();
    assert(parameters > 0 && parameters <= kMostParameters);
    if (x.size() <= parameters) {
        return fail(ErrorKind::TooFew, CurveReason::TooFewReadings, x.size(), parameters + 1);
    }
    const std::set<double> distinct(x.begin(), x.end());
    if (distinct.size() < parameters) {
        return fail(ErrorKind::TooFew, CurveReason::TooFewPlaces, distinct.size(), parameters);
    }
    return {};
}

CurveFit described(const CurveModelPtr& model, const Ending& ending, std::size_t n)
{
    CurveFit fit;
    fit.model = model;
    fit.estimates.assign(ending.p.begin(), ending.p.end());
    fit.n = n;
    fit.df = static_cast<int>(n - fit.estimates.size());
    fit.rss = ending.rss;
    const double s2 = fit.rss / fit.df;
    fit.residualSd = std::sqrt(s2);
    const Eigen::MatrixXd covariance = s2 * ending.inverse;
    fit.covariance.assign(covariance.data(), covariance.data() + covariance.size());
    if (fit.rss > 0) {
        const auto count = static_cast<double>(n);
        const auto counted = static_cast<double>(fit.estimates.size() + 1);
        const double aic =
            count * (std::log(2 * std::numbers::pi * fit.rss / count) + 1) + 2 * counted;
        if (count - counted - 1 > 0) {
            fit.aicc = aic + 2 * counted * (counted + 1) / (count - counted - 1);
        }
    }
    return fit;
}

// Half the width of the interval of an estimate with that standard error.
double reachOf(const CurveFit& fit, double se, double level)
{
    return se * tQuantile(0.5 + level / 2, fit.df);
}

double deltaVariance(const CurveFit& fit, std::span<const double> gradient)
{
    double variance = 0;
    for (std::size_t a = 0; a < gradient.size(); ++a) {
        for (std::size_t b = 0; b < gradient.size(); ++b) {
            variance += gradient[a] * gradient[b] * fit.covarianceOf(a, b);
        }
    }
    return std::max(variance, 0.0);
}

Result<CurveEstimate> derived(const CurveFit& fit, double estimate,
                              std::span<const double> gradient, double level)
{
    const double se = std::sqrt(deltaVariance(fit, gradient));
    if (!std::isfinite(estimate) || !std::isfinite(se)) {
        return fail(ErrorKind::NotEstimable, CurveReason::NoFullHeight, fit.model->name);
    }
    const double reach = reachOf(fit, se, level);
    return CurveEstimate{estimate, se, estimate - reach, estimate + reach};
}

struct Search
{
    std::optional<Ending> best;
    bool undetermined = false; // some end could not tell the parameters apart
};

Search searchMinimum(const CurveResiduals& residuals, std::span<const std::vector<double>> starts,
                     StartsTried tried)
{
    Search search;
    // The first stride of the solver: from generous to timid, for starts far from the answer.
    for (const double reach : {100.0, 1.0, 0.1}) {
        for (const std::vector<double>& start : starts) {
            assert(start.size() == static_cast<std::size_t>(residuals.parameters));
            Ending ending = minimise(residuals, start, reach);
            search.undetermined = search.undetermined || !ending.determined;
            if (!ending.determined || !ending.atMinimum) {
                continue;
            }
            if (!search.best || ending.rss < search.best->rss) {
                search.best = std::move(ending);
            }
            if (tried == StartsTried::UntilOneEnds) {
                break;
            }
        }
        if (search.best) {
            break;
        }
    }
    return search;
}

} // namespace

double CurveFit::covarianceOf(std::size_t a, std::size_t b) const
{
    return covariance[a * estimates.size() + b];
}

double CurveFit::se(std::size_t parameter) const
{
    return std::sqrt(covarianceOf(parameter, parameter));
}

Result<CurveFit> fitCurve(const CurveModelPtr& model, std::span<const double> x,
                          std::span<const double> y, std::span<const std::vector<double>> starts,
                          StartsTried tried)
{
    if (const Done checked = checkPoints(*model, x, y); !checked) {
        return tl::unexpected(checked.error());
    }
    const CurveResiduals residuals{*model, x, y,
                                   static_cast<Eigen::Index>(model->parameterNames.size())};
    const Search search = searchMinimum(residuals, starts, tried);
    if (!search.best) {
        return fail(ErrorKind::NoConvergence,
                    search.undetermined ? CurveReason::Undetermined : CurveReason::Stalled,
                    model->name);
    }
    const Ending& best = *search.best;
    if (best.sharp) {
        return described(model, best, x.size());
    }
    const Ending sharp = look(residuals, polished(residuals, best));
    const bool kept = sharp.atMinimum && sharp.rss <= best.rss * (1 + 1e-9);
    return described(model, kept ? sharp : best, x.size());
}

CurveEstimate parameterEstimate(const CurveFit& fit, std::size_t parameter, double level)
{
    const double estimate = fit.estimates[parameter];
    const double reach = reachOf(fit, fit.se(parameter), level);
    return {estimate, fit.se(parameter), estimate - reach, estimate + reach};
}

CurvePoint curveAt(const CurveFit& fit, double x, double level)
{
    std::vector<double> gradient(fit.estimates.size());
    CurvePoint point;
    point.x = x;
    point.fit = fit.model->value(x, fit.estimates, gradient);
    point.se = std::sqrt(deltaVariance(fit, gradient));
    const double reach = reachOf(fit, point.se, level);
    point.lower = point.fit - reach;
    point.upper = point.fit + reach;
    return point;
}

Result<CurveEstimate> topRate(const CurveFit& fit, double level)
{
    std::vector<double> gradient(fit.estimates.size());
    const double rate = fit.model->topRate(fit.estimates, gradient);
    return derived(fit, rate, gradient, level);
}

Result<CurveEstimate> xAtFraction(const CurveFit& fit, double fraction, double level)
{
    if (!(fraction > 0 && fraction < 1)) {
        return fail(ErrorKind::Invalid, CurveReason::Fraction);
    }
    std::vector<double> gradient(fit.estimates.size());
    const double x = fit.model->xAtFraction(fraction, fit.estimates, gradient);
    return derived(fit, x, gradient, level);
}

Result<CurveEstimate> xAtHeight(const CurveFit& fit, double y, double level)
{
    const CurveModel& model = *fit.model;
    const double fraction = y / fit.estimates.front();
    if (!(fraction > 0 && fraction < 1)) {
        return fail(ErrorKind::NotEstimable, CurveReason::HeightNotReached);
    }
    const double x = model.xAtFraction(fraction, fit.estimates, {});
    std::vector<double> gradient(fit.estimates.size());
    model.value(x, fit.estimates, gradient);
    // By the implicit function: the curve at x is held at y while the parameters move.
    const double slope = model.slope(x, fit.estimates);
    for (double& derivative : gradient) {
        derivative /= -slope;
    }
    return derived(fit, x, gradient, level);
}

} // namespace plumule::stats
