#include "core/stats/model/reml.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

namespace plumule::stats {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// Deviance and, when wanted, its derivatives in the ratios, the residual variance profiled out.
struct ProfilePoint
{
    double deviance = 0;
    double residualVariance = 0;
    VectorXd gradient;
    MatrixXd hessian;
};

Eigen::LLT<MatrixXd> factored(const RemlProblem& problem, const VectorXd& ratios)
{
    const Index size = problem.data.size();
    MatrixXd total = MatrixXd::Identity(size, size);
    for (std::size_t k = 0; k < problem.kernels.size(); ++k) {
        total += ratios[static_cast<Index>(k)] * problem.kernels[k];
    }
    return Eigen::LLT<MatrixXd>(total);
}

double logDeterminant(const Eigen::LLT<MatrixXd>& factor)
{
    return 2 * factor.matrixLLT().diagonal().array().log().sum();
}

ProfilePoint profileValue(const RemlProblem& problem, const Eigen::LLT<MatrixXd>& factor)
{
    const double m = problem.freeRows();
    ProfilePoint point;
    point.residualVariance = (problem.data.dot(factor.solve(problem.data)) + problem.restSs) / m;
    point.deviance =
        logDeterminant(factor) + m * (std::log(2 * std::numbers::pi * point.residualVariance) + 1);
    return point;
}

// The same with a diagonal kernel: sums over its entries.
ProfilePoint diagonalProfile(const RemlProblem& problem, double ratio)
{
    const double m = problem.freeRows();
    const Eigen::ArrayXd inverse = 1 / (1 + ratio * problem.diagonal.array());
    const Eigen::ArrayXd share = inverse * problem.diagonal.array();
    const Eigen::ArrayXd squares = problem.data.array().square();
    const double sum = (squares * inverse).sum() + problem.restSs;
    const double first = (squares * inverse * share).sum();
    const double second = (squares * inverse * share.square()).sum();
    ProfilePoint point;
    point.residualVariance = sum / m;
    point.deviance =
        -inverse.log().sum() + m * (std::log(2 * std::numbers::pi * point.residualVariance) + 1);
    point.gradient = VectorXd::Constant(1, share.sum() - m * first / sum);
    point.hessian = MatrixXd::Constant(
        1, 1, -share.square().sum() + 2 * m * second / sum - m * first * first / (sum * sum));
    return point;
}

double devianceAt(const RemlProblem& problem, const VectorXd& ratios)
{
    if (problem.isDiagonal()) {
        return diagonalProfile(problem, ratios[0]).deviance;
    }
    return profileValue(problem, factored(problem, ratios)).deviance;
}

ProfilePoint profileAt(const RemlProblem& problem, const VectorXd& ratios)
{
    if (problem.isDiagonal()) {
        return diagonalProfile(problem, ratios[0]);
    }
    const auto factor = factored(problem, ratios);
    ProfilePoint point = profileValue(problem, factor);
    const Index count = ratios.size();
    const double m = problem.freeRows();
    const double sum = point.residualVariance * m;
    const VectorXd solved = factor.solve(problem.data);
    std::vector<MatrixXd> spread; // M^-1 G_k
    MatrixXd pushed(problem.data.size(), count);
    VectorXd quadratic(count);
    point.gradient.resize(count);
    point.hessian.resize(count, count);
    for (Index k = 0; k < count; ++k) {
        const MatrixXd& kernel = problem.kernels[static_cast<std::size_t>(k)];
        spread.push_back(factor.solve(kernel));
        pushed.col(k) = kernel * solved;
        quadratic[k] = solved.dot(pushed.col(k));
        point.gradient[k] = spread.back().trace() - m * quadratic[k] / sum;
    }
    const MatrixXd pulled = factor.solve(pushed);
    for (Index j = 0; j < count; ++j) {
        for (Index k = 0; k < count; ++k) {
            const double trace = spread[static_cast<std::size_t>(j)]
                                     .cwiseProduct(spread[static_cast<std::size_t>(k)].transpose())
                                     .sum();
            point.hessian(j, k) = -trace + 2 * m * pushed.col(j).dot(pulled.col(k)) / sum -
                                  m * quadratic[j] * quadratic[k] / (sum * sum);
        }
    }
    return point;
}

// The best of a coarse grid of ratios, in units where the kernels have average eigenvalue 1.
VectorXd coarseStart(const RemlProblem& problem, const VectorXd& unit)
{
    const std::vector<double> steps =
        unit.size() == 1 ? std::vector<double>{0,   1e-4, 1e-3, 3e-3, 0.01, 0.03, 0.1, 0.3,
                                               1.0, 3.0,  10.0, 30,   100,  300,  1e3, 1e5}
                         : std::vector<double>{0, 0.01, 0.1, 0.5, 2, 10, 100};
    std::vector<std::size_t> place(static_cast<std::size_t>(unit.size()), 0);
    VectorXd best = VectorXd::Zero(unit.size());
    double lowest = std::numeric_limits<double>::infinity();
    while (true) {
        VectorXd ratios(unit.size());
        for (Index k = 0; k < unit.size(); ++k) {
            ratios[k] = steps[place[static_cast<std::size_t>(k)]] * unit[k];
        }
        if (const double deviance = devianceAt(problem, ratios); deviance < lowest) {
            lowest = deviance;
            best = ratios;
        }
        std::size_t digit = 0;
        while (digit < place.size() && ++place[digit] == steps.size()) {
            place[digit++] = 0;
        }
        if (digit == place.size()) {
            return best;
        }
    }
}

// Newton's direction over the ratios that may move; where the curvature is of the wrong sign, down
// the gradient in multiples of the ratio itself.
VectorXd descent(const ProfilePoint& point, const VectorXd& ratios, const VectorXd& unit)
{
    std::vector<Index> free;
    for (Index k = 0; k < ratios.size(); ++k) {
        if (ratios[k] > 0 || point.gradient[k] < 0) {
            free.push_back(k);
        }
    }
    VectorXd step = VectorXd::Zero(ratios.size());
    if (free.empty()) {
        return step;
    }
    const MatrixXd hessian = point.hessian(free, free);
    const VectorXd gradient = point.gradient(free);
    const Eigen::LLT<MatrixXd> factor(hessian);
    VectorXd part = -factor.solve(gradient);
    if (factor.info() != Eigen::Success || !part.allFinite()) {
        for (std::size_t i = 0; i < free.size(); ++i) {
            const double reach = std::max(ratios[free[i]], 0.01 * unit[free[i]]);
            part[static_cast<Index>(i)] = gradient[static_cast<Index>(i)] < 0 ? reach : -reach / 2;
        }
    }
    for (std::size_t i = 0; i < free.size(); ++i) {
        step[free[i]] = part[static_cast<Index>(i)];
    }
    return step;
}

// The next point along the step, kept at or above 0; near the end the deviance no longer tells
// neighbours apart, so a rise within rounding is let pass.
std::optional<VectorXd> lineSearch(const RemlProblem& problem, const VectorXd& ratios,
                                   const VectorXd& step, double deviance)
{
    const double slack = 1e-12 * (1 + std::abs(deviance));
    for (double share = 1; share > 1e-10; share /= 2) {
        VectorXd next = (ratios + share * step).cwiseMax(0);
        if (devianceAt(problem, next) <= deviance + slack) {
            return next;
        }
    }
    return std::nullopt;
}

MatrixXd diagonalInformation(const RemlProblem& problem, const RemlSolution& solution, bool active)
{
    const Index count = active ? 2 : 1;
    const double s2 = solution.residualVariance;
    const Eigen::ArrayXd inverse = 1 / (s2 * (1 + solution.ratios[0] * problem.diagonal.array()));
    MatrixXd expected(count, count);
    for (Index j = 0; j < count; ++j) {
        for (Index k = 0; k < count; ++k) {
            const auto power = problem.diagonal.array().pow(static_cast<double>(j + k));
            expected(j, k) = (power * inverse.square()).sum();
        }
    }
    expected(0, 0) += static_cast<double>(problem.restRows) / (s2 * s2);
    return expected;
}

} // namespace

double RemlProblem::trace(Index k) const
{
    return isDiagonal() ? diagonal.sum() : kernels[static_cast<std::size_t>(k)].trace();
}

double RemlProblem::product(Index j, Index k) const
{
    if (isDiagonal()) {
        return diagonal.squaredNorm();
    }
    return kernels[static_cast<std::size_t>(j)]
        .cwiseProduct(kernels[static_cast<std::size_t>(k)])
        .sum();
}

Result<RemlSolution> solveReml(const RemlProblem& problem)
{
    VectorXd unit(problem.factors());
    for (Index k = 0; k < unit.size(); ++k) {
        unit[k] = static_cast<double>(problem.data.size()) / problem.trace(k);
    }
    VectorXd ratios = coarseStart(problem, unit);
    for (int round = 0; round < 200; ++round) {
        const ProfilePoint point = profileAt(problem, ratios);
        const VectorXd step = descent(point, ratios, unit);
        const VectorXd moved = (ratios + step).cwiseMax(0) - ratios;
        const double scale = (ratios + 1e-6 * unit).cwiseInverse().cwiseProduct(moved).norm();
        // Newton doubles the digits, so the step itself ends the search.
        if (scale < 1e-9) {
            const ProfilePoint last = profileAt(problem, ratios + moved);
            return RemlSolution{ratios + moved, last.residualVariance, last.deviance};
        }
        const auto next = lineSearch(problem, ratios, step, point.deviance);
        if (!next || !next->allFinite()) {
            break;
        }
        ratios = *next;
    }
    return fail(ErrorKind::NoConvergence, ModelReason::NotConverged);
}

MatrixXd expectedInformation(const RemlProblem& problem, const RemlSolution& solution,
                             const std::vector<std::size_t>& active)
{
    if (problem.isDiagonal()) {
        return diagonalInformation(problem, solution, !active.empty());
    }
    const double s2 = solution.residualVariance;
    const auto factor = factored(problem, solution.ratios);
    const Index size = problem.data.size();
    std::vector<MatrixXd> spread{factor.solve(MatrixXd::Identity(size, size)) / s2};
    for (const std::size_t k : active) {
        spread.push_back(factor.solve(problem.kernels[k]) / s2);
    }
    const auto count = static_cast<Index>(spread.size());
    MatrixXd expected(count, count);
    for (Index j = 0; j < count; ++j) {
        for (Index k = 0; k < count; ++k) {
            expected(j, k) = spread[static_cast<std::size_t>(j)]
                                 .cwiseProduct(spread[static_cast<std::size_t>(k)].transpose())
                                 .sum();
        }
    }
    expected(0, 0) += static_cast<double>(problem.restRows) / (s2 * s2);
    return expected;
}

} // namespace plumule::stats
