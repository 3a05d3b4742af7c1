#pragma once

#include "core/stats/model/estimator.h"

#include <memory>

namespace plumule::stats {

// A random intercept's share. `singular`: the likelihood is highest at variance 0; the model is
// then the one without it, and df and covariances are taken from that.
struct VarianceComponent
{
    std::string group;
    std::size_t levels = 0;
    double variance = 0;
    bool singular = false;
};

// Predicted random intercepts (BLUP), one a level.
struct RandomEffect
{
    std::string level;
    double value = 0;
};

// A linear model with one or more random intercepts, by restricted maximum likelihood, profiled on
// the ratios of the variances and solved to rounding. Standard errors and degrees of freedom are by
// Kenward and Roger 1997, Biometrics 53:983. Copies share the fit.
class MixedModel
{
public:
    // Errors of ModelDesign::make; RandomMissing without a random intercept; Inseparable with
    // its name where it cannot be told apart from the fixed effects or from the residual;
    // NotConverged when the search fails.
    [[nodiscard]] static Result<MixedModel> fit(const DataTable& table,
                                                const ModelDescription& model);
    [[nodiscard]] static Result<MixedModel> fit(std::shared_ptr<const ModelDesign> design);

    [[nodiscard]] const ModelDesign& design() const;
    [[nodiscard]] const std::vector<VarianceComponent>& components() const;
    [[nodiscard]] double residualVariance() const;
    // -2 log of the restricted likelihood, with the constant (n - rank) log(2 pi) and without
    // log|X'X| taken off, X in treatment coding: the convention of the usual REML programs.
    [[nodiscard]] double remlCriterion() const;
    [[nodiscard]] bool isSingular() const;
    // Of the component numbered.
    [[nodiscard]] std::vector<RandomEffect> predictedEffects(std::size_t component) const;
    // The response less fixed and predicted random effects, in the order of design().usedRows().
    [[nodiscard]] std::vector<double> residuals() const;
    // For marginal means and comparisons; keeps the fit alive.
    [[nodiscard]] std::unique_ptr<Estimator> estimator() const;
    // F of a fixed term after all others, in sum-to-zero coding, over what is estimable of it.
    // TermUnknown for an unknown term, Inseparable when nothing is left of it.
    [[nodiscard]] Result<FTest> termTest(const std::string& term) const;

    struct Fit; // within core/stats: mixed_fit.h

private:
    explicit MixedModel(std::shared_ptr<const Fit> fit);

    std::shared_ptr<const Fit> m_fit;
};

} // namespace plumule::stats
