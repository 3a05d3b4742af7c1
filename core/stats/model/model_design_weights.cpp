// Part of core/stats/model/model_design.h: the weights of a marginal mean.
#include "core/stats/model/model_design.h"

#include <algorithm>
#include <cassert>

namespace plumule::stats {

namespace {

// Which dummy of one factor a column of the product of several factors has: the first runs fastest.
std::size_t dummyOf(const std::vector<const DesignFactor*>& parts, const DesignFactor& of,
                    std::size_t column)
{
    for (const DesignFactor* part : parts) {
        const std::size_t count = part->levels.size() - 1;
        if (part == &of) {
            return column % count;
        }
        column /= count;
    }
    assert(false);
    return 0;
}

} // namespace

// The average over a full grid of levels of a product of dummies is the product of their averages,
// so no grid is ever made.
std::vector<double>
ModelDesign::termWeights(const DesignTerm& term,
                         const std::vector<std::vector<double>>& levelWeights) const
{
    std::vector<double> weights(term.columnCount, 1.0);
    for (std::size_t column = 0; column < term.columnCount; ++column) {
        const auto parts = factorsOf(term);
        for (const DesignFactor* part : parts) {
            const auto place = static_cast<std::size_t>(part - m_factors.data());
            weights[column] *= levelWeights[place][dummyOf(parts, *part, column) + 1];
        }
        for (const std::size_t k : covariatesOf(term)) {
            const DesignCovariate& covariate = m_covariates[k];
            weights[column] *= (covariate.mean - covariate.shift) / covariate.scale;
        }
    }
    return weights;
}

std::vector<double> ModelDesign::meanWeights(const DesignFactor& of, std::size_t level) const
{
    std::vector<std::vector<double>> levelWeights;
    for (const DesignFactor& known : m_factors) {
        const std::size_t count = known.levels.size();
        levelWeights.emplace_back(count, 1.0 / static_cast<double>(count));
        if (known.name == of.name) {
            std::fill(levelWeights.back().begin(), levelWeights.back().end(), 0.0);
            levelWeights.back()[level] = 1;
        }
    }
    std::vector<double> weights(columns(), 0.0);
    weights[0] = 1;
    for (const DesignTerm& term : m_terms) {
        const std::vector<double> part = termWeights(term, levelWeights);
        std::copy(part.begin(), part.end(),
                  weights.begin() + static_cast<std::ptrdiff_t>(term.firstColumn));
    }
    return weights;
}

double ModelDesign::columnScale(std::size_t column) const
{
    double scale = 1;
    for (const DesignTerm& term : m_terms) {
        if (column >= term.firstColumn && column < term.firstColumn + term.columnCount) {
            for (const std::size_t k : covariatesOf(term)) {
                scale *= m_covariates[k].scale;
            }
        }
    }
    return scale;
}

// A sum-to-zero column of a factor, in dummies d with base level 0, is d_j - d_0, that is
// d_j + sum(d_k) - 1; of an interaction the product of these, multiplied out over which factors
// keep their dummies and which give the -1.
void ModelDesign::addSumColumn(const DesignTerm& term, std::size_t column,
                               std::vector<double>& into) const
{
    const auto parts = factorsOf(term);
    double* const out = into.data() + (term.firstColumn + column) * columns();
    for (std::size_t kept = 0; kept < (std::size_t{1} << parts.size()); ++kept) {
        TermColumns names;
        for (const std::size_t k : covariatesOf(term)) {
            names.push_back(m_covariates[k].name);
        }
        double sign = 1;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if ((kept >> i & 1) != 0) {
                names.push_back(parts[i]->name);
            } else {
                sign = -sign;
            }
        }
        if (names.empty()) {
            out[0] += sign;
            continue;
        }
        const DesignTerm* part = termOf(names);
        assert(part != nullptr);
        for (std::size_t c = 0; c < part->columnCount; ++c) {
            double value = sign;
            for (const DesignFactor* of : factorsOf(*part)) {
                value *= dummyOf(parts, *of, column) == dummyOf(factorsOf(*part), *of, c) ? 2 : 1;
            }
            out[part->firstColumn + c] += value;
        }
    }
}

std::vector<double> ModelDesign::toSumToZero() const
{
    std::vector<double> transform(columns() * columns(), 0.0);
    transform[0] = 1;
    for (const DesignTerm& term : m_terms) {
        for (std::size_t column = 0; column < term.columnCount; ++column) {
            addSumColumn(term, column, transform);
        }
    }
    return transform;
}

} // namespace plumule::stats
