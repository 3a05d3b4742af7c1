#include "core/stats/model/model_design.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace plumule::stats {

namespace {

std::string joinedName(const TermColumns& columns)
{
    std::string name;
    for (const std::string& column : columns) {
        name += (name.empty() ? "" : ":") + column;
    }
    return name;
}

TermColumns sortedParts(TermColumns columns)
{
    std::sort(columns.begin(), columns.end());
    return columns;
}

// All columns a model needs, each once, or the one that is not there.
Result<std::vector<std::string>> neededColumns(const DataTable& table,
                                               const ModelDescription& model)
{
    std::vector<std::string> needed{model.response};
    for (const auto* group : {&model.terms, &model.randomIntercepts}) {
        for (const TermColumns& columns : *group) {
            needed.insert(needed.end(), columns.begin(), columns.end());
        }
    }
    if (table.numbers(model.response) == nullptr) {
        return fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, model.response);
    }
    for (const std::string& name : needed) {
        if (table.numbers(name) == nullptr && table.factor(name) == nullptr) {
            return fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, name);
        }
    }
    return needed;
}

std::vector<std::size_t> completeRows(const DataTable& table, const std::vector<std::string>& names)
{
    std::vector<bool> complete(table.rows(), true);
    for (const std::string& name : names) {
        const NumberColumn* numbers = table.numbers(name);
        const FactorColumn* factor = table.factor(name);
        for (std::size_t row = 0; row < table.rows(); ++row) {
            const bool present = numbers != nullptr ? numbers->values[row].has_value()
                                                    : factor->codes[row].has_value();
            complete[row] = complete[row] && present;
        }
    }
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < complete.size(); ++row) {
        if (complete[row]) {
            rows.push_back(row);
        }
    }
    return rows;
}

std::vector<double> presentValues(const NumberColumn& column)
{
    std::vector<double> values;
    values.reserve(column.values.size());
    for (const auto& value : column.values) {
        values.push_back(*value);
    }
    return values;
}

// The mean by way of the first value, so that digits far below the mean are kept.
double steadyMean(const std::vector<double>& values)
{
    double sum = 0;
    for (const double value : values) {
        sum += value - values.front();
    }
    return values.front() + sum / static_cast<double>(values.size());
}

DesignFactor designFactor(const FactorColumn& column)
{
    DesignFactor factor{column.name, column.levels, {}};
    factor.codes.reserve(column.codes.size());
    for (const auto& code : column.codes) {
        factor.codes.push_back(*code);
    }
    return factor;
}

} // namespace

Result<ModelDesign> ModelDesign::make(const DataTable& table, const ModelDescription& model)
{
    const auto needed = neededColumns(table, model);
    if (!needed) {
        return tl::unexpected(needed.error());
    }
    ModelDesign design;
    design.m_usedRows = completeRows(table, *needed);
    if (design.m_usedRows.size() < 2) {
        return fail(ErrorKind::TooFew, ModelReason::TooFewRows);
    }
    const DataTable used = table.withRows(design.m_usedRows);
    const bool onlyMainEffects = std::all_of(model.terms.begin(), model.terms.end(),
                                             [](const auto& t) { return t.size() == 1; });
    const Centring centring = onlyMainEffects ? Centring::AtMean : Centring::AtZero;
    Done done = design.takeResponse(used, model.response);
    for (std::size_t i = 0; done && i < model.terms.size(); ++i) {
        done = design.addTerm(used, model.terms[i], centring);
    }
    for (std::size_t i = 0; done && i < model.randomIntercepts.size(); ++i) {
        done = design.addRandom(used, model.randomIntercepts[i]);
    }
    if (done) {
        done = design.checkParts();
    }
    if (!done) {
        return tl::unexpected(done.error());
    }
    design.fillMatrix(used);
    return design;
}

Done ModelDesign::takeResponse(const DataTable& table, const std::string& name)
{
    m_response = presentValues(*table.numbers(name));
    m_responseShift = steadyMean(m_response);
    // Two steps: the difference from the first value is exact where values agree in most digits.
    const double first = m_response.front();
    const double rest = m_responseShift - first;
    for (double& value : m_response) {
        value = (value - first) - rest;
    }
    return {};
}

Done ModelDesign::addVariable(const DataTable& table, const std::string& name, Centring centring)
{
    if (const FactorColumn* column = table.factor(name)) {
        if (factor(name) != nullptr) {
            return {};
        }
        if (column->levels.size() < 2) {
            return fail(ErrorKind::TooFew, ModelReason::OneLevel, name);
        }
        m_factors.push_back(designFactor(*column));
        return {};
    }
    for (const DesignCovariate& known : m_covariates) {
        if (known.name == name) {
            return {};
        }
    }
    const std::vector<double> values = presentValues(*table.numbers(name));
    DesignCovariate covariate{name, steadyMean(values), 0, 1};
    covariate.shift = centring == Centring::AtMean ? covariate.mean : 0;
    double squares = 0;
    double largest = 0;
    for (const double value : values) {
        squares += (value - covariate.shift) * (value - covariate.shift);
        largest = std::max(largest, std::abs(value));
    }
    const double spread = std::sqrt(squares / static_cast<double>(values.size()));
    // A constant column stays a column of (nearly) nothing instead of being blown up.
    covariate.scale = spread > 1e-13 * largest ? spread : std::max(largest, 1.0);
    m_covariates.push_back(covariate);
    return {};
}

Done ModelDesign::addTerm(const DataTable& table, const TermColumns& columns, Centring centring)
{
    DesignTerm term{joinedName(columns), columns, m_columns, 1};
    if (columns.empty()) {
        return fail(ErrorKind::Missing, ModelReason::TermEmpty);
    }
    if (termOf(columns) != nullptr) {
        return fail(ErrorKind::Duplicate, ModelReason::TermTwice, term.name);
    }
    const TermColumns parts = sortedParts(columns);
    if (std::adjacent_find(parts.begin(), parts.end()) != parts.end()) {
        return fail(ErrorKind::Duplicate, ModelReason::TermTwice, term.name);
    }
    for (const std::string& name : columns) {
        if (auto done = addVariable(table, name, centring); !done) {
            return done;
        }
    }
    for (const DesignFactor* part : factorsOf(term)) {
        term.columnCount *= part->levels.size() - 1;
    }
    m_columns += term.columnCount;
    m_terms.push_back(std::move(term));
    return {};
}

Done ModelDesign::addRandom(const DataTable& table, const TermColumns& columns)
{
    for (const std::string& name : columns) {
        if (table.factor(name) == nullptr) {
            return fail(ErrorKind::Invalid, ModelReason::NotCategories, name);
        }
    }
    const auto crossed = table.crossed(columns);
    if (!crossed) {
        return tl::unexpected(crossed.error());
    }
    if (crossed->levels.size() < 2) {
        return fail(ErrorKind::TooFew, ModelReason::OneLevel, crossed->name);
    }
    m_random.push_back(designFactor(*crossed));
    return {};
}

// Without its parts an interaction would mean another model in each coding.
Done ModelDesign::checkParts() const
{
    for (const DesignTerm& term : m_terms) {
        for (std::size_t left = 0; term.columns.size() > 1 && left < term.columns.size(); ++left) {
            TermColumns part = term.columns;
            part.erase(part.begin() + static_cast<std::ptrdiff_t>(left));
            if (termOf(part) == nullptr) {
                return fail(ErrorKind::Invalid, ModelReason::TermPartMissing, term.name,
                            joinedName(part));
            }
        }
    }
    return {};
}

void ModelDesign::fillMatrix(const DataTable& table)
{
    m_matrix.assign(rows() * columns(), 0);
    std::fill_n(m_matrix.begin(), rows(), 1.0);
    std::vector<std::vector<double>> covariateValues;
    for (const DesignCovariate& covariate : m_covariates) {
        covariateValues.push_back(presentValues(*table.numbers(covariate.name)));
        for (double& value : covariateValues.back()) {
            value = (value - covariate.shift) / covariate.scale;
        }
    }
    for (const DesignTerm& term : m_terms) {
        fillTerm(term, covariateValues);
    }
}

void ModelDesign::fillTerm(const DesignTerm& term,
                           const std::vector<std::vector<double>>& covariateValues)
{
    const auto parts = factorsOf(term);
    const auto numbers = covariatesOf(term);
    for (std::size_t row = 0; row < rows(); ++row) {
        std::size_t column = 0;
        std::size_t stride = 1;
        bool base = false;
        for (const DesignFactor* part : parts) {
            base = base || part->codes[row] == 0;
            column += base ? 0 : (part->codes[row] - 1) * stride;
            stride *= part->levels.size() - 1;
        }
        if (base) {
            continue;
        }
        double value = 1;
        for (const std::size_t k : numbers) {
            value *= covariateValues[k][row];
        }
        m_matrix[(term.firstColumn + column) * rows() + row] = value;
    }
}

const DesignFactor* ModelDesign::factor(std::string_view name) const
{
    const auto found = std::find_if(m_factors.begin(), m_factors.end(),
                                    [&](const auto& f) { return f.name == name; });
    return found == m_factors.end() ? nullptr : &*found;
}

const DesignTerm* ModelDesign::termOf(const TermColumns& columns) const
{
    const TermColumns wanted = sortedParts(columns);
    const auto found = std::find_if(m_terms.begin(), m_terms.end(), [&](const auto& term) {
        return sortedParts(term.columns) == wanted;
    });
    return found == m_terms.end() ? nullptr : &*found;
}

std::vector<const DesignFactor*> ModelDesign::factorsOf(const DesignTerm& term) const
{
    std::vector<const DesignFactor*> parts;
    for (const std::string& name : term.columns) {
        if (const DesignFactor* part = factor(name)) {
            parts.push_back(part);
        }
    }
    return parts;
}

std::vector<std::size_t> ModelDesign::covariatesOf(const DesignTerm& term) const
{
    std::vector<std::size_t> numbers;
    for (std::size_t k = 0; k < m_covariates.size(); ++k) {
        if (std::find(term.columns.begin(), term.columns.end(), m_covariates[k].name) !=
            term.columns.end()) {
            numbers.push_back(k);
        }
    }
    return numbers;
}

bool ModelDesign::contains(const DesignTerm& whole, const DesignTerm& part)
{
    const TermColumns outer = sortedParts(whole.columns);
    const TermColumns inner = sortedParts(part.columns);
    return outer.size() > inner.size() &&
           std::includes(outer.begin(), outer.end(), inner.begin(), inner.end());
}

} // namespace plumule::stats
