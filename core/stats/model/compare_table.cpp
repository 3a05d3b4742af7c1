#include "core/stats/model/compare_table.h"

#include "core/stats/samples/letter_display.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

std::vector<std::string> mainTerms(const CompareRequest& request)
{
    if (!request.order.empty()) {
        return request.order;
    }
    std::vector<std::string> names;
    if (std::find(request.factors.begin(), request.factors.end(), request.medium) ==
        request.factors.end()) {
        names.push_back(request.medium);
    }
    names.insert(names.end(), request.factors.begin(), request.factors.end());
    names.insert(names.end(), request.covariates.begin(), request.covariates.end());
    return names;
}

ModelDescription modelOf(const CompareRequest& request)
{
    ModelDescription model;
    model.response = request.response;
    for (const std::string& name : mainTerms(request)) {
        model.terms.push_back({name});
    }
    model.randomIntercepts = request.random;
    return model;
}

Done checkRequest(const DataTable& table, const CompareRequest& request)
{
    if (!(request.level > 0 && request.level < 1)) {
        return fail(ErrorKind::Invalid, ModelReason::ConfidenceLevel);
    }
    if (request.margin && !(*request.margin > 0 && std::isfinite(*request.margin))) {
        return fail(ErrorKind::Invalid, ModelReason::Margin);
    }
    if (table.factor(request.medium) == nullptr) {
        return fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, request.medium);
    }
    for (const TermColumns& columns : request.random) {
        const bool fixed =
            columns.size() == 1 && (columns.front() == request.medium ||
                                    std::find(request.factors.begin(), request.factors.end(),
                                              columns.front()) != request.factors.end());
        if (fixed) {
            return fail(ErrorKind::Duplicate, ModelReason::FixedAndRandom, columns.front());
        }
    }
    return {};
}

class Comparison
{
public:
    Comparison(const CompareRequest& request, std::shared_ptr<const ModelDesign> design)
        : m_request(request)
        , m_design(std::move(design))
        , m_levels(m_design->factor(request.medium)->levels)
    {
        m_result.n = m_design->rows();
    }

    Done fitFixed();
    Done fitMixed();
    Done compareMeans(const Estimator& fit);
    void lookAtGroups();
    void countRows(const DataTable& table);
    TableComparison take() { return std::move(m_result); }

private:
    void warn(CompareNote note, std::string subject, std::size_t count = 1)
    {
        m_result.warnings.push_back({note, std::move(subject), count});
    }
    [[nodiscard]] std::optional<std::size_t> levelNumber(const std::string& level) const;
    void checkTerms(const std::vector<AnovaRow>& rows);
    void checkNormality(const std::vector<double>& residuals);
    Done comparePairs(const Estimator& fit);
    void letterMeans();
    Done compareControl(const Estimator& fit);
    Done compareContrasts(const Estimator& fit);

    const CompareRequest& m_request;
    std::shared_ptr<const ModelDesign> m_design;
    const std::vector<std::string>& m_levels;
    TableComparison m_result;
};

std::optional<std::size_t> Comparison::levelNumber(const std::string& level) const
{
    const auto found = std::find(m_levels.begin(), m_levels.end(), level);
    if (found == m_levels.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - m_levels.begin());
}

Done Comparison::fitFixed()
{
    const auto fit = LinearModel::fit(m_design);
    if (!fit) {
        return tl::unexpected(fit.error());
    }
    m_result.termsType1 = fit->anova(SumOfSquares::TypeI);
    m_result.termsType2 = fit->anova(SumOfSquares::TypeII);
    m_result.termsType3 = fit->anova(SumOfSquares::TypeIII);
    m_result.residual = {fit->residualDf(), fit->residualSs(), fit->residualSd()};
    m_result.rSquared = fit->rSquared();
    checkTerms(m_result.termsType3);
    if (fit->isPerfect()) {
        warn(CompareNote::NoSpread, m_request.response);
    }
    std::vector<double> residuals;
    for (const Influence& row : fit->influence()) {
        residuals.push_back(row.residual);
    }
    if (!fit->isPerfect()) {
        checkNormality(residuals);
    }
    return compareMeans(*fit);
}

Done Comparison::fitMixed()
{
    const auto fit = MixedModel::fit(m_design);
    if (!fit) {
        return tl::unexpected(fit.error());
    }
    m_result.random = RandomPart{fit->components(), fit->residualVariance(), fit->remlCriterion(),
                                 fit->isSingular()};
    for (const VarianceComponent& component : fit->components()) {
        if (component.singular) {
            warn(CompareNote::RandomSingular, component.group, component.levels);
        }
    }
    m_result.residual.sd = std::sqrt(fit->residualVariance());
    for (const DesignTerm& term : m_design->terms()) {
        AnovaRow row{term.name, 0, std::nullopt, {}, {}, {}};
        if (const auto test = fit->termTest(term.name)) {
            row.df = test->df1;
            row.f = test->f;
            row.p = test->p;
            if (term.name == m_request.medium) {
                m_result.kenwardRoger = *test;
            }
        }
        m_result.termsType3.push_back(row);
    }
    checkTerms(m_result.termsType3);
    checkNormality(fit->residuals());
    return compareMeans(*fit->estimator());
}

void Comparison::checkTerms(const std::vector<AnovaRow>& rows)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::size_t columns = m_design->terms()[i].columnCount;
        if (rows[i].df == 0) {
            warn(CompareNote::TermWithoutDf, rows[i].term, columns);
        } else if (rows[i].df < static_cast<double>(columns)) {
            warn(CompareNote::TermPartlyEstimable, rows[i].term,
                 columns - static_cast<std::size_t>(rows[i].df));
        }
    }
}

Done Comparison::compareMeans(const Estimator& fit)
{
    auto means = marginalMeans(fit, m_request.medium, m_request.level);
    if (!means) {
        return tl::unexpected(means.error());
    }
    m_result.means = std::move(*means);
    for (const MarginalMean& mean : m_result.means) {
        if (!mean.estimable) {
            warn(CompareNote::MeanNotEstimable, mean.level);
        }
        if (mean.n == 1) {
            warn(CompareNote::SingleRowLevels, mean.level);
        }
    }
    if (auto done = comparePairs(fit); !done) {
        return done;
    }
    if (auto done = compareControl(fit); !done) {
        return done;
    }
    return compareContrasts(fit);
}

Done Comparison::comparePairs(const Estimator& fit)
{
    const auto pairs = allPairs(fit, m_result.means, m_request.level);
    if (!pairs) {
        return tl::unexpected(pairs.error());
    }
    for (const PairComparison& pair : *pairs) {
        ComparedPair named{m_levels[pair.a], m_levels[pair.b], pair, {}};
        if (m_request.margin) {
            const auto p = equivalenceP(pair.raw, *m_request.margin);
            if (!p) {
                return tl::unexpected(p.error());
            }
            named.pEquivalence = *p;
        }
        if (!pair.raw.estimable) {
            warn(CompareNote::PairNotEstimable, named.a + " - " + named.b);
        }
        m_result.pairs.push_back(std::move(named));
    }
    letterMeans();
    return {};
}

void Comparison::letterMeans()
{
    std::vector<std::pair<std::size_t, std::size_t>> differing;
    for (const ComparedPair& pair : m_result.pairs) {
        if (!pair.numbers.pTukey) {
            return;
        }
        if (*pair.numbers.lowerTukey > 0 || *pair.numbers.upperTukey < 0) {
            differing.emplace_back(pair.numbers.a, pair.numbers.b);
        }
    }
    std::vector<double> means;
    for (const MarginalMean& mean : m_result.means) {
        if (!mean.mean) {
            return;
        }
        means.push_back(*mean.mean);
    }
    m_result.letters = letterDisplay(means, differing);
}

Done Comparison::compareControl(const Estimator& fit)
{
    if (!m_request.control) {
        return {};
    }
    const auto control = levelNumber(*m_request.control);
    if (!control) {
        return fail(ErrorKind::NotFound, ModelReason::LevelUnknown, *m_request.control,
                    m_request.medium);
    }
    const auto found = againstControl(fit, m_result.means, *control, m_request.level);
    if (!found) {
        return tl::unexpected(found.error());
    }
    for (const ControlComparison& one : *found) {
        m_result.againstControl.push_back({m_levels[one.level], one});
    }
    return {};
}

Done Comparison::compareContrasts(const Estimator& fit)
{
    for (const LevelWeights& named : m_request.contrasts) {
        std::vector<double> weights(m_levels.size(), 0.0);
        for (const auto& [level, weight] : named) {
            const auto number = levelNumber(level);
            if (!number) {
                return fail(ErrorKind::NotFound, ModelReason::LevelUnknown, level,
                            m_request.medium);
            }
            weights[*number] += weight;
        }
        const auto test = meansContrast(fit, m_result.means, weights, m_request.level);
        if (!test) {
            return tl::unexpected(test.error());
        }
        m_result.contrasts.push_back(*test);
        if (!test->estimable) {
            warn(CompareNote::ContrastNotEstimable, std::to_string(m_result.contrasts.size()));
        }
    }
    return {};
}

void Comparison::checkNormality(const std::vector<double>& residuals)
{
    if (const auto test = shapiroWilk(residuals)) {
        m_result.normality = *test;
    }
}

void Comparison::lookAtGroups()
{
    std::vector<std::vector<double>> groups(m_levels.size());
    const auto& codes = m_design->factor(m_request.medium)->codes;
    for (std::size_t row = 0; row < codes.size(); ++row) {
        groups[codes[row]].push_back(m_design->response()[row]);
    }
    if (const auto welch = welchAnova(groups)) {
        m_result.welch = *welch;
    }
    if (const auto ranks = kruskalWallis(groups)) {
        m_result.kruskal = *ranks;
    }
    if (const auto spread = brownForsythe(groups)) {
        m_result.spreadCheck = *spread;
    }
}

void Comparison::countRows(const DataTable& table)
{
    const auto& values = table.numbers(m_request.response)->values;
    const auto empty =
        static_cast<std::size_t>(std::count(values.begin(), values.end(), std::nullopt));
    const std::size_t gaps = table.rows() - empty - m_design->rows();
    if (empty > 0) {
        warn(CompareNote::RowsWithoutResponse, m_request.response, empty);
    }
    if (gaps > 0) {
        warn(CompareNote::RowsWithGaps, "", gaps);
    }
}

} // namespace

Result<TableComparison> compareTable(const DataTable& table, const CompareRequest& request)
{
    if (auto done = checkRequest(table, request); !done) {
        return tl::unexpected(done.error());
    }
    auto design = ModelDesign::make(table, modelOf(request));
    if (!design) {
        return tl::unexpected(design.error());
    }
    Comparison comparison(request, std::make_shared<const ModelDesign>(std::move(*design)));
    comparison.countRows(table);
    const Done done = request.random.empty() ? comparison.fitFixed() : comparison.fitMixed();
    if (!done) {
        return tl::unexpected(done.error());
    }
    comparison.lookAtGroups();
    return comparison.take();
}

} // namespace plumule::stats
