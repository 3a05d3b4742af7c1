#include "core/stats/model/linear_model.h"

#include "core/stats/model/least_squares.h"
#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

using Eigen::Index;

Eigen::Map<const Eigen::MatrixXd> matrixOf(const ModelDesign& design)
{
    return {design.matrix().data(), static_cast<Index>(design.rows()),
            static_cast<Index>(design.columns())};
}

Eigen::Map<const Eigen::VectorXd> responseOf(const ModelDesign& design)
{
    return {design.response().data(), static_cast<Index>(design.rows())};
}

using ColumnNumbers = std::vector<Index>;

void appendColumns(const DesignTerm& term, ColumnNumbers& numbers)
{
    for (std::size_t c = 0; c < term.columnCount; ++c) {
        numbers.push_back(static_cast<Index>(term.firstColumn + c));
    }
}

// The columns a term is taken after.
ColumnNumbers columnsBefore(const ModelDesign& design, std::size_t term, SumOfSquares type)
{
    ColumnNumbers numbers{0};
    for (std::size_t other = 0; other < design.terms().size(); ++other) {
        const bool before = type == SumOfSquares::TypeI ? other < term
                            : type == SumOfSquares::TypeII
                                ? other != term && !ModelDesign::contains(design.terms()[other],
                                                                          design.terms()[term])
                                : other != term;
        if (before) {
            appendColumns(design.terms()[other], numbers);
        }
    }
    return numbers;
}

} // namespace

struct LinearModel::Fit
{
    std::shared_ptr<const ModelDesign> design;
    LeastSquares squares;
    double df = 0;
    double totalSs = 0;

    // A residual of pure rounding says nothing about spread.
    [[nodiscard]] bool isPerfect() const { return squares.residualSs <= 1e-26 * totalSs; }
    [[nodiscard]] double meanSquare() const { return isPerfect() ? 0 : squares.residualSs / df; }
};

LinearModel::LinearModel(std::shared_ptr<const Fit> fit)
    : m_fit(std::move(fit))
{}

Result<LinearModel> LinearModel::fit(const DataTable& table, const ModelDescription& model)
{
    auto design = ModelDesign::make(table, model);
    if (!design) {
        return tl::unexpected(design.error());
    }
    return fit(std::make_shared<const ModelDesign>(std::move(*design)));
}

Result<LinearModel> LinearModel::fit(const std::shared_ptr<const ModelDesign>& design)
{
    const auto y = responseOf(*design);
    auto fitted = std::make_shared<Fit>(Fit{design, LeastSquares(matrixOf(*design), y), 0, 0});
    fitted->df = static_cast<double>(y.size() - fitted->squares.rank);
    fitted->totalSs = (y.array() - y.mean()).square().sum();
    if (fitted->df < 1) {
        return fail(ErrorKind::TooFew, ModelReason::NoRowsToRest);
    }
    return LinearModel(std::move(fitted));
}

const ModelDesign& LinearModel::design() const
{
    return *m_fit->design;
}

bool LinearModel::isEstimable(std::span<const double> weights) const
{
    return m_fit->squares.isEstimable(weights);
}

Estimate LinearModel::estimate(std::span<const double> weights) const
{
    const LeastSquares& squares = m_fit->squares;
    const Eigen::VectorXd reduced = squares.reduced(weights);
    return {reduced.dot(squares.rotated.head(squares.rank)) + weights[0] * design().responseShift(),
            residualSd() * reduced.norm(), m_fit->df};
}

double LinearModel::covariance(std::span<const double> a, std::span<const double> b) const
{
    const LeastSquares& squares = m_fit->squares;
    return m_fit->meanSquare() * squares.reduced(a).dot(squares.reduced(b));
}

double LinearModel::residualDf() const
{
    return m_fit->df;
}
double LinearModel::residualSs() const
{
    return m_fit->squares.residualSs;
}
double LinearModel::residualSd() const
{
    return std::sqrt(m_fit->meanSquare());
}

bool LinearModel::isPerfect() const
{
    return m_fit->isPerfect();
}

std::optional<double> LinearModel::rSquared() const
{
    if (m_fit->totalSs <= 0) {
        return std::nullopt;
    }
    return 1 - residualSs() / m_fit->totalSs;
}

// The whole table is worked out on the small triangle, not on the rows again.
std::vector<AnovaRow> LinearModel::anova(SumOfSquares type) const
{
    const LeastSquares& squares = m_fit->squares;
    Eigen::MatrixXd triangle = squares.triangle();
    const Eigen::VectorXd explained = squares.rotated.head(squares.rank);
    if (type == SumOfSquares::TypeIII) {
        const std::vector<double> transform = design().toSumToZero();
        const auto size = static_cast<Index>(design().columns());
        triangle *= Eigen::Map<const Eigen::MatrixXd>(transform.data(), size, size);
    }
    std::vector<AnovaRow> rows;
    for (std::size_t term = 0; term < design().terms().size(); ++term) {
        ColumnNumbers own;
        appendColumns(design().terms()[term], own);
        const Explained part =
            explainedBeyond(pickColumns(triangle, columnsBefore(design(), term, type)),
                            pickColumns(triangle, own), explained);
        AnovaRow row{
            design().terms()[term].name, static_cast<double>(part.df), part.ss, {}, {}, {}};
        if (part.df > 0) {
            row.ms = part.ss / row.df;
        }
        if (part.df > 0 && !m_fit->isPerfect()) {
            row.f = *row.ms / m_fit->meanSquare();
            row.p = fUpper(*row.f, row.df, m_fit->df);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Influence> LinearModel::influence() const
{
    const LeastSquares& squares = m_fit->squares;
    const Eigen::MatrixXd basis = matrixOf(design()) * squares.spread;
    const Eigen::VectorXd fitted = basis * squares.rotated.head(squares.rank);
    const Eigen::VectorXd leverage = basis.rowwise().squaredNorm();
    std::vector<Influence> rows;
    for (Index i = 0; i < fitted.size(); ++i) {
        Influence one{fitted[i] + design().responseShift(),
                      responseOf(design())[i] - fitted[i],
                      std::min(leverage[i], 1.0),
                      {},
                      {}};
        const double free = 1 - one.leverage;
        if (free > 1e-12 && !m_fit->isPerfect()) {
            one.internal = one.residual / (residualSd() * std::sqrt(free));
            const double rest = m_fit->df - *one.internal * *one.internal;
            if (m_fit->df > 1 && rest > 1e-12 * m_fit->df) {
                one.external = *one.internal * std::sqrt((m_fit->df - 1) / rest);
            }
        }
        rows.push_back(one);
    }
    return rows;
}

} // namespace plumule::stats
