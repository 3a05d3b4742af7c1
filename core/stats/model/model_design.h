#pragma once

#include "core/stats/model/data_table.h"

#include <span>

namespace plumule::stats {

// A term is one column (the main effect of a factor, or a covariate) or several (their
// interaction). An interaction needs all its parts as terms of their own.
using TermColumns = std::vector<std::string>;

// What is fitted: the response on an intercept and the terms, in the order of type I. Random
// intercepts are for the mixed model: a factor, or several crossed ({"block", "variety"}).
struct ModelDescription
{
    std::string response;
    std::vector<TermColumns> terms;
    std::vector<TermColumns> randomIntercepts;
};

struct DesignTerm
{
    std::string name; // parts joined by ":"
    TermColumns columns;
    std::size_t firstColumn = 0;
    std::size_t columnCount = 0;
};

struct DesignFactor
{
    std::string name;
    std::vector<std::string> levels;
    std::vector<std::size_t> codes; // one a row used
};

// A covariate enters as (value - shift) / scale, so that the rank does not hang on its units.
struct DesignCovariate
{
    std::string name;
    double mean = 0;
    double shift = 0;
    double scale = 1;
};

// The matrix of a model in treatment coding (the first level is the base) over the rows in which
// nothing is missing, and the weights on its columns that make marginal means and coefficients.
class ModelDesign
{
public:
    // ColumnUnknown names a missing column, OneLevel a factor with one level only, TermTwice a term
    // given twice, TermPartMissing an interaction without its parts; TooFewRows under two rows.
    [[nodiscard]] static Result<ModelDesign> make(const DataTable& table,
                                                  const ModelDescription& model);

    [[nodiscard]] std::size_t rows() const { return m_usedRows.size(); }
    [[nodiscard]] std::size_t columns() const { return m_columns; }
    // Column by column, rows() x columns().
    [[nodiscard]] const std::vector<double>& matrix() const { return m_matrix; }
    // The response less its mean: the mean is put back into every estimate.
    [[nodiscard]] const std::vector<double>& response() const { return m_response; }
    [[nodiscard]] double responseShift() const { return m_responseShift; }
    [[nodiscard]] const std::vector<DesignTerm>& terms() const { return m_terms; }
    [[nodiscard]] const std::vector<DesignFactor>& factors() const { return m_factors; }
    [[nodiscard]] const std::vector<DesignCovariate>& covariates() const { return m_covariates; }
    [[nodiscard]] const std::vector<DesignFactor>& randomFactors() const { return m_random; }
    [[nodiscard]] const std::vector<std::size_t>& usedRows() const { return m_usedRows; }
    [[nodiscard]] const DesignFactor* factor(std::string_view name) const;

    // Weights of the marginal mean at one level of a factor: equal weights over the levels of the
    // other factors, covariates at their mean.
    [[nodiscard]] std::vector<double> meanWeights(const DesignFactor& of, std::size_t level) const;
    // A column in the covariates' own units is matrix()'s times this.
    [[nodiscard]] double columnScale(std::size_t column) const;
    // The matrix in sum-to-zero coding is matrix() times this, columns() x columns() by column.
    [[nodiscard]] std::vector<double> toSumToZero() const;
    // True when `whole` is an interaction that has all parts of `part` and more.
    [[nodiscard]] static bool contains(const DesignTerm& whole, const DesignTerm& part);

private:
    enum class Centring
    {
        AtMean,
        AtZero, // a slope that depends on a level is told at 0
    };
    Done addTerm(const DataTable& table, const TermColumns& columns, Centring centring);
    Done addVariable(const DataTable& table, const std::string& name, Centring centring);
    Done addRandom(const DataTable& table, const TermColumns& columns);
    Done takeResponse(const DataTable& table, const std::string& name);
    Done checkParts() const;
    void fillMatrix(const DataTable& table);
    void fillTerm(const DesignTerm& term, const std::vector<std::vector<double>>& covariateValues);
    [[nodiscard]] std::vector<double>
    termWeights(const DesignTerm& term, const std::vector<std::vector<double>>& levelWeights) const;
    void addSumColumn(const DesignTerm& term, std::size_t column, std::vector<double>& into) const;
    [[nodiscard]] const DesignTerm* termOf(const TermColumns& columns) const;
    [[nodiscard]] std::vector<const DesignFactor*> factorsOf(const DesignTerm& term) const;
    [[nodiscard]] std::vector<std::size_t> covariatesOf(const DesignTerm& term) const;

    std::vector<std::size_t> m_usedRows;
    std::vector<double> m_matrix;
    std::vector<double> m_response;
    double m_responseShift = 0;
    std::size_t m_columns = 1; // the intercept
    std::vector<DesignTerm> m_terms;
    std::vector<DesignFactor> m_factors;
    std::vector<DesignCovariate> m_covariates;
    std::vector<DesignFactor> m_random;
};

} // namespace plumule::stats
