#pragma once

#include "core/stats/model/estimator.h"

#include <memory>
#include <optional>

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

// Least squares by one rank-revealing QR. Copies share the fit.
class LinearModel final : public Estimator
{
public:
    // Errors of ModelDesign::make; NoRowsToRest when no degree of freedom is left for spread.
    [[nodiscard]] static Result<LinearModel> fit(const DataTable& table,
                                                 const ModelDescription& model);
    [[nodiscard]] static Result<LinearModel> fit(const std::shared_ptr<const ModelDesign>& design);

    [[nodiscard]] const ModelDesign& design() const override;
    [[nodiscard]] bool isEstimable(std::span<const double> weights) const override;
    [[nodiscard]] Estimate estimate(std::span<const double> weights) const override;
    [[nodiscard]] double covariance(std::span<const double> a,
                                    std::span<const double> b) const override;

    [[nodiscard]] double residualDf() const;
    [[nodiscard]] double residualSs() const;
    [[nodiscard]] double residualSd() const;
    // True when nothing but rounding is left over: there is no spread to test against.
    [[nodiscard]] bool isPerfect() const;
    // Missing when the response does not vary.
    [[nodiscard]] std::optional<double> rSquared() const;
    [[nodiscard]] std::vector<AnovaRow> anova(SumOfSquares type) const;
    // In the order of design().usedRows().
    [[nodiscard]] std::vector<Influence> influence() const;

private:
    struct Fit;
    explicit LinearModel(std::shared_ptr<const Fit> fit);

    std::shared_ptr<const Fit> m_fit;
};

} // namespace plumule::stats
