// Part of core/stats/model/mixed_fit.h: Kenward and Roger.
#include "core/stats/model/mixed_fit.h"

namespace plumule::stats {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Sparse = MixedModel::Fit::Sparse;

// Products of the inverse covariance V^-1 = (I - Z M Z') / s2 with Q1 and Z, none of them as long
// as the data. G_0 is the identity, G_i the Z Z' of the i-th component above 0.
class InverseProducts
{
public:
    explicit InverseProducts(const MixedModel::Fit& fit)
        : m_fit(fit)
    {
        const double s2 = fit.solution.residualVariance;
        const Index q = fit.offsets.back();
        Sparse kept(q, q);
        kept.setIdentity();
        kept -= fit.inner * fit.randomCross;
        m_once = fit.fixedRandom * kept / s2;
        m_middle = MatrixXd(fit.randomCross * kept) / s2;
        const Sparse turned = kept.transpose();
        m_twice = turned * (turned * fit.fixedRandom.transpose()) / (s2 * s2);
    }

    // Q1' V^-1 G_i V^-1 Q1
    [[nodiscard]] MatrixXd single(std::size_t i) const
    {
        if (i == 0) {
            return identityPower(2);
        }
        return onceOf(i) * onceOf(i).transpose();
    }

    // Q1' V^-1 G_i V^-1 G_j V^-1 Q1
    [[nodiscard]] MatrixXd both(std::size_t i, std::size_t j) const
    {
        if (i == 0 && j == 0) {
            return identityPower(3);
        }
        if (i == 0) {
            return both(j, i).transpose();
        }
        if (j == 0) {
            return onceOf(i) * m_twice.middleRows(first(i), levels(i));
        }
        return onceOf(i) * m_middle.block(first(i), first(j), levels(i), levels(j)) *
               onceOf(j).transpose();
    }

private:
    [[nodiscard]] Index first(std::size_t i) const { return m_fit.offsets[m_fit.active[i - 1]]; }
    [[nodiscard]] Index levels(std::size_t i) const { return m_fit.levels(m_fit.active[i - 1]); }
    [[nodiscard]] MatrixXd onceOf(std::size_t i) const
    {
        return m_once.middleCols(first(i), levels(i));
    }

    // Q1' V^-power Q1 by the binomial sum in Z M Z'.
    [[nodiscard]] MatrixXd identityPower(int power) const
    {
        const Sparse& m = m_fit.inner;
        const Sparse squared = m * m_fit.randomCross * m;
        Sparse sum = 2 * m - squared;
        if (power == 3) {
            sum = 3 * m - 3 * squared + Sparse(squared * m_fit.randomCross * m);
        }
        const Index rank = m_fit.fixedRandom.rows();
        const MatrixXd halfway = m_fit.fixedRandom * sum;
        MatrixXd result = MatrixXd::Identity(rank, rank) - halfway * m_fit.fixedRandom.transpose();
        for (int i = 0; i < power; ++i) {
            result /= m_fit.solution.residualVariance;
        }
        return result;
    }

    const MixedModel::Fit& m_fit;
    MatrixXd m_once;   // Q1' V^-1 Z
    MatrixXd m_middle; // Z' V^-1 Z
    MatrixXd m_twice;  // Z' V^-2 Q1
};

} // namespace

// Kenward and Roger 1997, with V linear in the variances.
FixedSpread fixedSpread(const MixedModel::Fit& fit)
{
    FixedSpread spread{fit.covariance, fit.covariance, {}, {}};
    const InverseProducts products(fit);
    std::vector<MatrixXd> single;
    for (std::size_t i = 0; i <= fit.active.size(); ++i) {
        single.push_back(products.single(i));
        spread.slope.push_back(fit.covariance * single[i] * fit.covariance);
    }
    spread.varianceOfVariances =
        2 * expectedInformation(fit.problem, fit.solution, fit.active).inverse();
    MatrixXd correction = MatrixXd::Zero(fit.covariance.rows(), fit.covariance.cols());
    for (std::size_t i = 0; i < single.size(); ++i) {
        for (std::size_t j = 0; j < single.size(); ++j) {
            correction += spread.varianceOfVariances(static_cast<Index>(i), static_cast<Index>(j)) *
                          (products.both(i, j) - single[i] * fit.covariance * single[j]);
        }
    }
    spread.adjusted += 2 * fit.covariance * correction * fit.covariance;
    spread.adjusted = (0.5 * (spread.adjusted + spread.adjusted.transpose())).eval();
    return spread;
}

} // namespace plumule::stats
