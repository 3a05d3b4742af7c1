#pragma once

#include "core/stats/model/estimator.h"

#include <memory>

namespace plumule::stats {

// Type I takes the terms in their order, II each after all that do not contain it, III each after
// all others in sum-to-zero coding.
enum class SumOfSquares
{
    TypeI,
    TypeII,
    TypeIII,
};

// ms, f and p are missing where the data leave the term no degree of freedom, f and p also where
// the fit has no rest. ss is missing in the tests of a mixed model.
struct AnovaRow
{
    std::string term;
    double df = 0;
    std::optional<double> ss;
    std::optional<double> ms;
    std::optional<double> f;
    std::optional<double> p;
};

// Both missing where the column cannot be told apart from others.
struct Coefficient
{
    std::string name;
    std::optional<double> estimate;
    std::optional<double> se;
};

// One row's part in the fit. Studentized residuals are missing where the row has a parameter of its
// own (leverage 1); external leaves the row itself out of the spread.
struct Influence
{
    double fitted = 0;
    double residual = 0;
    double leverage = 0;
    std::optional<double> internal;
    std::optional<double> external;
};

struct EffectSize
{
    double partialEta2 = 0;
    double partialOmega2 = 0;
};

// Least squares by one rank-revealing QR. Copies share the fit.
class LinearModel final : public Estimator
{
public:
    // Errors of ModelDesign::make; TooFew "residual" when no degree of freedom is left for spread.
    [[nodiscard]] static Result<LinearModel> fit(const DataTable& table,
                                                 const ModelDescription& model);
    [[nodiscard]] static Result<LinearModel> fit(std::shared_ptr<const ModelDesign> design);

    [[nodiscard]] const ModelDesign& design() const override;
    [[nodiscard]] bool isEstimable(std::span<const double> weights) const override;
    [[nodiscard]] Estimate estimate(std::span<const double> weights) const override;
    [[nodiscard]] double covariance(std::span<const double> a,
                                    std::span<const double> b) const override;

    [[nodiscard]] std::size_t rank() const;
    [[nodiscard]] double residualDf() const;
    [[nodiscard]] double residualSs() const;
    [[nodiscard]] double residualSd() const;
    // True when nothing but rounding is left over: there is no spread to test against.
    [[nodiscard]] bool isPerfect() const;
    // Missing when the response does not vary.
    [[nodiscard]] std::optional<double> rSquared() const;
    // In treatment coding and the covariates' own units.
    [[nodiscard]] std::vector<Coefficient> coefficients() const;
    [[nodiscard]] std::vector<AnovaRow> anova(SumOfSquares type) const;
    // Of a row of anova(): ss / (ss + SSE), and (ss - df MSE) / (ss + (n - df) MSE).
    [[nodiscard]] EffectSize effectSize(const AnovaRow& row) const;
    // In the order of design().usedRows().
    [[nodiscard]] std::vector<Influence> influence() const;

private:
    struct Fit;
    explicit LinearModel(std::shared_ptr<const Fit> fit);

    std::shared_ptr<const Fit> m_fit;
};

// What blocks gained over a completely random layout,
// [(r-1) MSB + r (t-1) MSE] / [(rt-1) MSE], r blocks and t treatments (Gomez & Gomez 1984).
[[nodiscard]] double relativeEfficiencyOfBlocks(double blockMs, double residualMs,
                                                std::size_t blocks, std::size_t treatments);

} // namespace plumule::stats
