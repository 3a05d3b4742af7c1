#include "core/stats/model/mixed_model.h"

#include "core/stats/model/mixed_fit.h"
#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

class MixedEstimator final : public Estimator
{
public:
    explicit MixedEstimator(std::shared_ptr<const MixedModel::Fit> fit)
        : m_fit(std::move(fit))
        , m_spread(fixedSpread(*m_fit))
    {}

    [[nodiscard]] const ModelDesign& design() const override { return *m_fit->design; }

    [[nodiscard]] bool isEstimable(std::span<const double> weights) const override
    {
        return m_fit->squares.isEstimable(weights);
    }

    [[nodiscard]] Estimate estimate(std::span<const double> weights) const override
    {
        const VectorXd row = m_fit->squares.reduced(weights);
        return {row.dot(m_fit->gamma) + weights[0] * design().responseShift(),
                std::sqrt(row.dot(m_spread.adjusted * row)), freedom(row)};
    }

    [[nodiscard]] double covariance(std::span<const double> a,
                                    std::span<const double> b) const override
    {
        return m_fit->squares.reduced(a).dot(m_spread.adjusted * m_fit->squares.reduced(b));
    }

    // Rows of weights in the coordinates of gamma, linearly independent.
    [[nodiscard]] FTest test(const MatrixXd& rows) const
    {
        const VectorXd value = rows * m_fit->gamma;
        const MatrixXd spread = rows * m_spread.adjusted * rows.transpose();
        const auto q = static_cast<double>(rows.rows());
        const double f = value.dot(spread.ldlt().solve(value)) / q;
        FTest result{f, q, 0, 1};
        scaleKenwardRoger(rows, result);
        result.p = fUpper(result.f, q, result.df2);
        return result;
    }

private:
    // 2 v^2 over the variance of v, the variance of the estimate.
    [[nodiscard]] double freedom(const VectorXd& row) const
    {
        const auto count = static_cast<Index>(m_spread.slope.size());
        VectorXd slope(count);
        for (Index i = 0; i < count; ++i) {
            slope[i] = row.dot(m_spread.slope[static_cast<std::size_t>(i)] * row);
        }
        const double v = row.dot(m_spread.plain * row);
        return 2 * v * v / slope.dot(m_spread.varianceOfVariances * slope);
    }

    void scaleKenwardRoger(const MatrixXd& rows, FTest& result) const;

    std::shared_ptr<const MixedModel::Fit> m_fit;
    FixedSpread m_spread;
};

// Kenward and Roger 1997, section 3: the scale and the df that match the first two moments of F.
void MixedEstimator::scaleKenwardRoger(const MatrixXd& rows, FTest& result) const
{
    const double q = result.df1;
    const Eigen::LDLT<MatrixXd> plain((rows * m_spread.plain * rows.transpose()).eval());
    std::vector<MatrixXd> shares;
    for (const MatrixXd& slope : m_spread.slope) {
        shares.push_back(plain.solve(rows * slope * rows.transpose()));
    }
    double a1 = 0;
    double a2 = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        for (std::size_t j = 0; j < shares.size(); ++j) {
            const double w =
                m_spread.varianceOfVariances(static_cast<Index>(i), static_cast<Index>(j));
            a1 += w * shares[i].trace() * shares[j].trace();
            a2 += w * (shares[i] * shares[j]).trace();
        }
    }
    const double b = (a1 + 6 * a2) / (2 * q);
    const double g = ((q + 1) * a1 - (q + 4) * a2) / ((q + 2) * a2);
    const double denominator = 3 * q + 2 * (1 - g);
    const double c1 = g / denominator;
    const double c2 = (q - g) / denominator;
    const double c3 = (q + 2 - g) / denominator;
    const double mean = 1 / (1 - a2 / q);
    const double spread = 1 - c2 * b;
    const double variance = 2 / q * (1 + c1 * b) / (spread * spread * (1 - c3 * b));
    const double rho = variance / (2 * mean * mean);
    const double df2 = 4 + (q + 2) / (q * rho - 1);
    result.df2 = df2;
    // At df 2 the scale would divide by nothing.
    if (std::abs(df2 - 2) > 1e-2) {
        result.f *= df2 / (mean * (df2 - 2));
    }
}

// The rows of a term in sum-to-zero coding, and of these the combinations the data can see.
MatrixXd estimableRows(const MixedModel::Fit& fit, const DesignTerm& term)
{
    const ModelDesign& design = *fit.design;
    const auto size = static_cast<Index>(design.columns());
    const auto first = static_cast<Index>(term.firstColumn);
    const auto count = static_cast<Index>(term.columnCount);
    const std::vector<double> transform = design.toSumToZero();
    const MatrixXd inverse = Eigen::Map<const MatrixXd>(transform.data(), size, size).inverse();
    MatrixXd rows = inverse.middleRows(first, count);
    const MatrixXd unseen = (rows * fit.squares.nullSpace).transpose();
    if (unseen.rows() > 0 && unseen.cwiseAbs().maxCoeff() > 1e-8) {
        Eigen::FullPivLU<MatrixXd> lu(unseen);
        lu.setThreshold(1e-8);
        if (lu.dimensionOfKernel() == 0) {
            return MatrixXd(0, fit.squares.rank);
        }
        rows = (lu.kernel().transpose() * rows).eval();
    }
    return rows * fit.squares.spread;
}

} // namespace

MixedModel::MixedModel(std::shared_ptr<const Fit> fit)
    : m_fit(std::move(fit))
{}

Result<MixedModel> MixedModel::fit(const DataTable& table, const ModelDescription& model)
{
    auto design = ModelDesign::make(table, model);
    if (!design) {
        return tl::unexpected(design.error());
    }
    return fit(std::make_shared<const ModelDesign>(std::move(*design)));
}

Result<MixedModel> MixedModel::fit(std::shared_ptr<const ModelDesign> design)
{
    if (design->randomFactors().empty()) {
        return fail(ErrorKind::Missing, ModelReason::RandomMissing);
    }
    auto fitted = std::make_shared<Fit>(std::move(design));
    if (auto solved = fitted->solve(); !solved) {
        return tl::unexpected(solved.error());
    }
    return MixedModel(std::move(fitted));
}

const ModelDesign& MixedModel::design() const
{
    return *m_fit->design;
}

const std::vector<VarianceComponent>& MixedModel::components() const
{
    return m_fit->components;
}

double MixedModel::residualVariance() const
{
    return m_fit->solution.residualVariance;
}

double MixedModel::remlCriterion() const
{
    return m_fit->solution.deviance + m_fit->logCrossDeterminant();
}

bool MixedModel::isSingular() const
{
    return m_fit->active.size() < m_fit->components.size();
}

std::vector<RandomEffect> MixedModel::predictedEffects(std::size_t component) const
{
    const VectorXd residual = m_fit->randomResponse - m_fit->fixedRandom.transpose() * m_fit->gamma;
    const VectorXd seen = residual - m_fit->randomCross * (m_fit->inner * residual);
    const double ratio = m_fit->solution.ratios[static_cast<Index>(component)];
    std::vector<RandomEffect> effects;
    const auto& levels = design().randomFactors()[component].levels;
    for (std::size_t level = 0; level < levels.size(); ++level) {
        effects.push_back(
            {levels[level], ratio * seen[m_fit->offsets[component] + static_cast<Index>(level)]});
    }
    return effects;
}

std::vector<double> MixedModel::residuals() const
{
    const auto rows = static_cast<Index>(design().rows());
    const Eigen::Map<const MatrixXd> matrix(design().matrix().data(), rows,
                                            static_cast<Index>(design().columns()));
    const VectorXd fitted = matrix * (m_fit->squares.spread * m_fit->gamma);
    std::vector<double> left = design().response();
    for (std::size_t row = 0; row < left.size(); ++row) {
        left[row] -= fitted[static_cast<Index>(row)];
    }
    for (std::size_t k = 0; k < components().size(); ++k) {
        const std::vector<RandomEffect> effects = predictedEffects(k);
        const auto& codes = design().randomFactors()[k].codes;
        for (std::size_t row = 0; row < left.size(); ++row) {
            left[row] -= effects[codes[row]].value;
        }
    }
    return left;
}

std::unique_ptr<Estimator> MixedModel::estimator() const
{
    return std::make_unique<MixedEstimator>(m_fit);
}

Result<FTest> MixedModel::termTest(const std::string& term) const
{
    const auto& terms = design().terms();
    const auto found =
        std::find_if(terms.begin(), terms.end(), [&](const auto& t) { return t.name == term; });
    if (found == terms.end()) {
        return fail(ErrorKind::NotFound, ModelReason::TermUnknown, term);
    }
    const MatrixXd rows = estimableRows(*m_fit, *found);
    if (rows.rows() == 0) {
        return fail(ErrorKind::NotEstimable, ModelReason::Inseparable, term);
    }
    return MixedEstimator(m_fit).test(rows);
}

} // namespace plumule::stats
