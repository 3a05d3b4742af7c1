#include "tests/core/stats/reference/reference_linear.h"

#include "core/stats/model/linear_model.h"
#include "core/stats/samples/checks.h"
#include "core/stats/samples/letter_display.h"

#include <algorithm>
#include <cmath>
#include <regex>

namespace plumule::stats::reference {

namespace {

constexpr const char* kNoLogs = "a table is compared on the scale that it is given";

std::string withoutSpaces(std::string text)
{
    text.erase(std::remove(text.begin(), text.end(), ' '), text.end());
    return text;
}

std::vector<std::string> split(const std::string& text, char mark)
{
    std::vector<std::string> parts(1);
    for (const char c : text) {
        if (c == mark) {
            parts.emplace_back();
        } else {
            parts.back() += c;
        }
    }
    return parts;
}

// A field of a table is compared where the reference has it.
template <class Get>
void checkColumn(CaseCheck& check, const std::string& pointer, std::size_t rows,
                 Tolerance tolerance, const Get& get)
{
    if (!check.has(pointer)) {
        return;
    }
    std::vector<std::optional<double>> got;
    for (std::size_t row = 0; row < rows; ++row) {
        got.push_back(get(row));
    }
    check.column(pointer, got, tolerance);
}

std::vector<std::string> textColumn(const CaseCheck& check, const std::string& pointer)
{
    if (check.at(pointer).is_array()) {
        return check.textsAt(pointer);
    }
    return {check.at(pointer).get<std::string>()};
}

std::size_t levelNumber(const std::vector<MarginalMean>& means, const std::string& level)
{
    for (std::size_t i = 0; i < means.size(); ++i) {
        if (means[i].level == level) {
            return i;
        }
    }
    throw std::runtime_error("no level " + level);
}

void checkAnova(CaseCheck& check, const LinearModel& fit, SumOfSquares type,
                const std::string& pointer)
{
    const Tolerance tolerance = check.tolerance();
    auto rows = fit.anova(type);
    rows.push_back({"Residuals", fit.residualDf(), fit.residualSs(), {}, {}, {}});
    std::vector<std::string> names;
    for (const AnovaRow& row : rows) {
        names.push_back(row.term);
    }
    check.texts(pointer + "/term", names);
    const auto column = [&](const std::string& name, auto get) {
        checkColumn(check, pointer + "/" + name, rows.size(), tolerance,
                    [&](std::size_t i) { return std::optional<double>(get(rows[i])); });
    };
    column("ss", [](const AnovaRow& row) { return row.ss; });
    column("df", [](const AnovaRow& row) { return row.df; });
    column("F", [](const AnovaRow& row) { return row.f; });
    column("p", [](const AnovaRow& row) { return row.p; });
}

void checkResiduals(CaseCheck& check, const LinearModel& fit)
{
    const Tolerance tolerance = check.tolerance();
    double leverage = 0;
    double studentized = 0;
    std::vector<double> residuals;
    for (const Influence& row : fit.influence()) {
        leverage = std::max(leverage, row.leverage);
        studentized = std::max(studentized, std::abs(row.external.value()));
        residuals.push_back(row.residual);
    }
    const auto normality = granted(shapiroWilk(residuals));
    check.number("/shapiro_residuals/W", normality.w, check.tolerance("shapiro_residuals"));
    check.number("/shapiro_residuals/p", normality.p, check.tolerance("shapiro_residuals"));
    check.number("/leverage_max", leverage, tolerance);
    check.number("/max_abs_studentized_residual", studentized, tolerance);
    check.notOurs("/partial_eta2_focal", "no answer of the program holds effect sizes");
    check.notOurs("/partial_omega2_focal", "no answer of the program holds effect sizes");
}

void checkLetters(CaseCheck& check, const LinearModel& fit, const std::string& focal)
{
    const auto means = granted(marginalMeans(fit, focal));
    std::vector<std::pair<std::size_t, std::size_t>> differing;
    for (const PairComparison& pair : granted(allPairs(fit, means))) {
        if (pair.pTukey.value() < 0.05) {
            differing.emplace_back(pair.a, pair.b);
        }
    }
    std::vector<double> values;
    std::vector<std::string> expected;
    for (const MarginalMean& mean : means) {
        values.push_back(*mean.mean);
        expected.push_back(check.at("/letters_tukey_05/" + mean.level).get<std::string>());
    }
    check.given("/letters_tukey_05");
    if (!sameGrouping(letterDisplay(values, differing), expected)) {
        check.fault("/letters_tukey_05: another grouping");
    }
}

void checkDunnett(CaseCheck& check, const LinearModel& fit, const std::string& focal)
{
    const Tolerance tolerance = check.tolerance();
    const Tolerance dunnett = check.tolerance("dunnett");
    const auto means = granted(marginalMeans(fit, focal));
    const std::string control = check.at("/dunnett/control").get<std::string>();
    check.given("/dunnett/control");
    const auto rows = granted(againstControl(fit, means, levelNumber(means, control)));
    const ControlComparison& any = rows.front();
    check.number("/dunnett/crit_two_sided", (*any.upperDunnett - *any.raw.estimate) / *any.raw.se,
                 dunnett);
    std::vector<std::string> names;
    for (const ControlComparison& row : rows) {
        names.push_back(means[row.level].level);
    }
    check.texts("/dunnett/comparisons/treatment", names);
    const auto column = [&](const std::string& name, Tolerance allowed, auto get) {
        checkColumn(check, "/dunnett/comparisons/" + name, rows.size(), allowed,
                    [&](std::size_t i) { return get(rows[i]); });
    };
    column("diff", tolerance, [](const auto& row) { return row.raw.estimate; });
    column("se", tolerance, [](const auto& row) { return row.raw.se; });
    column("df", tolerance, [](const auto& row) { return row.raw.df; });
    column("t", tolerance, [](const auto& row) { return row.raw.t; });
    column("p_dunnett", dunnett, [](const auto& row) { return row.pDunnett; });
    if (check.has("/dunnett/comparisons/p_holm")) {
        check.notOurs("/dunnett/comparisons/p_holm", "the control is compared by Dunnett alone");
    }
    column("ci_lo", dunnett, [](const auto& row) { return row.lowerDunnett; });
    column("ci_hi", dunnett, [](const auto& row) { return row.upperDunnett; });
}

void coverLinear(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const std::string focal = check.data().at("focal");
    const LinearModel fit = granted(LinearModel::fit(tableOf(check, formula), formula.model));
    const Tolerance tolerance = check.tolerance();
    check.given("/formula");
    check.number("/n", static_cast<double>(fit.design().rows()), tolerance);
    check.number("/residual_df", fit.residualDf(), tolerance);
    check.number("/residual_sd", fit.residualSd(), tolerance);
    check.number("/r_squared", fit.rSquared(), tolerance);
    checkAnova(check, fit, SumOfSquares::TypeI, "/anova_type1");
    checkAnova(check, fit, SumOfSquares::TypeII, "/anova_type2");
    checkAnova(check, fit, SumOfSquares::TypeIII, "/anova_type3");
    checkResiduals(check, fit);
    checkMeans(check, "/emmeans", fit, focal, tolerance);
    checkPairs(check, "/pairs", fit, focal, tolerance, check.tolerance("p_and_ci_adjusted"));
    checkLetters(check, fit, focal);
    if (check.has("/dunnett")) {
        checkDunnett(check, fit, focal);
    }
    if (check.has("/custom_contrast")) {
        checkContrast(check, "/custom_contrast", fit, focal, tolerance);
    }
    if (check.has("/emmeans_back_transformed")) {
        check.notOurs("/emmeans_back_transformed", kNoLogs);
    }
}

// Differences by name, "B - A": those that the rows cannot tell have no numbers.
void checkNamedPairs(CaseCheck& check, const LinearModel& fit,
                     const std::vector<MarginalMean>& means)
{
    const Tolerance tolerance = check.tolerance();
    const auto names = check.textsAt("/pairs/contrast_j_minus_i");
    check.given("/pairs/contrast_j_minus_i");
    check.given("/pairs/estimable");
    std::vector<ContrastTest> rows;
    for (const std::string& name : names) {
        const auto sides = split(withoutSpaces(name), '-');
        std::vector<double> weights(means.size(), 0.0);
        weights[levelNumber(means, sides[0])] = 1;
        weights[levelNumber(means, sides[1])] = -1;
        rows.push_back(granted(meansContrast(fit, means, weights)));
        if (rows.back().estimable != check.at("/pairs/estimable").at(rows.size() - 1).get<bool>()) {
            check.fault("/pairs/estimable: " + name);
        }
    }
    const auto column = [&](const std::string& name, auto get) {
        checkColumn(check, "/pairs/" + name, rows.size(), tolerance,
                    [&](std::size_t i) { return get(rows[i]); });
    };
    column("diff", [](const auto& row) { return row.estimate; });
    column("se", [](const auto& row) { return row.se; });
    column("t", [](const auto& row) { return row.t; });
    column("df", [](const auto& row) { return row.df; });
    column("p_raw", [](const auto& row) { return row.p; });
}

void coverRankDeficient(CaseCheck& check)
{
    const Formula formula = formulaOf(check);
    const std::string focal = check.data().at("focal");
    const LinearModel fit = granted(LinearModel::fit(tableOf(check, formula), formula.model));
    const Tolerance tolerance = check.tolerance();
    check.number("/rank", static_cast<double>(fit.design().rows()) - fit.residualDf(), tolerance);
    check.number("/n_columns", static_cast<double>(fit.design().columns()), tolerance);
    check.number("/residual_df", fit.residualDf(), tolerance);
    check.number("/residual_sd", fit.residualSd(), tolerance);
    const auto means = granted(marginalMeans(fit, focal));
    const auto levels = check.textsAt("/emmeans_estimable/level");
    check.given("/emmeans_estimable/level");
    check.given("/emmeans_estimable/estimable");
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const MarginalMean& mean = means[levelNumber(means, levels[i])];
        if (mean.estimable != check.at("/emmeans_estimable/estimable").at(i).get<bool>() ||
            mean.mean.has_value() != mean.estimable) {
            check.fault("/emmeans_estimable: " + levels[i]);
        }
    }
    checkNamedPairs(check, fit, means);
}

const Registered kLinear{"linear model, several factors", coverLinear};
const Registered kRankDeficient{"rank-deficient design", coverRankDeficient};

} // namespace

Formula formulaOf(const CaseCheck& check)
{
    Formula formula;
    const auto& data = check.data();
    const std::string call = check.testCase().at("source").value("r_call", "");
    std::smatch found;
    if (data.contains("response")) {
        formula.response = data.at("response");
    } else if (std::regex_search(call, found, std::regex(R"(\((\w+)~)"))) {
        formula.response = found[1];
    }
    formula.logarithm = call.find("log(" + formula.response + ")") != std::string::npos;
    formula.model.response = formula.response;
    if (!check.has("/formula")) {
        for (const auto& factor : data.at("factors")) {
            formula.model.terms.push_back({factor.get<std::string>()});
        }
        return formula;
    }
    const std::string text = withoutSpaces(check.at("/formula").get<std::string>());
    for (std::string part : split(text, '+')) {
        if (part.starts_with("(1|")) {
            formula.model.randomIntercepts.push_back(split(part.substr(3, part.size() - 4), ':'));
        } else {
            formula.model.terms.push_back(split(part, ':'));
        }
    }
    return formula;
}

DataTable tableOf(const CaseCheck& check, const Formula& formula)
{
    const Table file(check.data().at("file").get<std::string>());
    DataTable table;
    auto response = file.maybeNumbers(formula.response);
    for (auto& value : response) {
        if (value && formula.logarithm) {
            value = std::log(*value);
        }
    }
    if (!table.addNumbers(formula.response, response)) {
        throw std::runtime_error("no response");
    }
    std::vector<std::string> covariates;
    if (check.data().contains("covariates") && !check.data().at("covariates").is_null()) {
        const auto& listed = check.data().at("covariates");
        covariates = listed.is_array() ? listed.get<std::vector<std::string>>()
                                       : std::vector{listed.get<std::string>()};
    }
    for (const auto* group : {&formula.model.terms, &formula.model.randomIntercepts}) {
        for (const TermColumns& term : *group) {
            for (const std::string& name : term) {
                if (table.factor(name) != nullptr || table.numbers(name) != nullptr) {
                    continue;
                }
                const bool number =
                    std::find(covariates.begin(), covariates.end(), name) != covariates.end();
                const Done added = number ? table.addNumbersFromText(name, file.texts(name))
                                          : table.addFactor(name, file.texts(name));
                if (!added) {
                    throw std::runtime_error("no column " + name);
                }
            }
        }
    }
    return table;
}

void checkMeans(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                const std::string& focal, Tolerance tolerance)
{
    const auto means = granted(marginalMeans(fit, focal));
    std::vector<std::string> names;
    for (const MarginalMean& mean : means) {
        names.push_back(mean.level);
    }
    check.texts(pointer + "/level", names);
    const auto column = [&](const std::string& name, auto get) {
        checkColumn(check, pointer + "/" + name, means.size(), tolerance,
                    [&](std::size_t i) { return get(means[i]); });
    };
    column("emmean", [](const auto& mean) { return mean.mean; });
    column("se", [](const auto& mean) { return mean.se; });
    column("df", [](const auto& mean) { return mean.df; });
    column("ci_lo", [](const auto& mean) { return mean.lower; });
    column("ci_hi", [](const auto& mean) { return mean.upper; });
}

// As the reference has them.
std::vector<PairComparison> pairsInOrder(CaseCheck& check, const std::string& pointer,
                                         const std::vector<MarginalMean>& means,
                                         const std::vector<PairComparison>& all)
{
    const auto i = textColumn(check, pointer + "/i");
    const auto j = textColumn(check, pointer + "/j");
    check.given(pointer + "/i");
    check.given(pointer + "/j");
    std::vector<PairComparison> pairs;
    for (std::size_t row = 0; row < i.size(); ++row) {
        const auto found = std::find_if(all.begin(), all.end(), [&](const auto& pair) {
            return means[pair.b].level == i[row] && means[pair.a].level == j[row];
        });
        if (found == all.end()) {
            throw std::runtime_error("no pair " + i[row] + " " + j[row]);
        }
        pairs.push_back(*found);
    }
    return pairs;
}

void checkPairs(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                const std::string& focal, Tolerance tolerance, Tolerance adjusted)
{
    const auto means = granted(marginalMeans(fit, focal));
    const auto all = granted(allPairs(fit, means));
    const std::vector<PairComparison> pairs = pairsInOrder(check, pointer, means, all);
    if (pairs.size() != all.size()) {
        check.fault(pointer + ": not all pairs");
    }
    const auto column = [&](const std::string& name, Tolerance allowed, auto get) {
        checkColumn(check, pointer + "/" + name, pairs.size(), allowed,
                    [&](std::size_t row) { return get(pairs[row]); });
    };
    column("diff", tolerance, [](const auto& pair) { return pair.raw.estimate; });
    column("se", tolerance, [](const auto& pair) { return pair.raw.se; });
    column("df", tolerance, [](const auto& pair) { return pair.raw.df; });
    column("t", tolerance, [](const auto& pair) { return pair.raw.t; });
    column("p_raw", tolerance, [](const auto& pair) { return pair.raw.p; });
    column("ci_lo_raw", tolerance, [](const auto& pair) { return pair.raw.lower; });
    column("ci_hi_raw", tolerance, [](const auto& pair) { return pair.raw.upper; });
    column("p_holm", tolerance, [](const auto& pair) { return pair.pHolm; });
    column("p_tukey", adjusted, [](const auto& pair) { return pair.pTukey; });
    column("ci_lo_tukey", adjusted, [](const auto& pair) { return pair.lowerTukey; });
    column("ci_hi_tukey", adjusted, [](const auto& pair) { return pair.upperTukey; });
    for (const char* name : {"/ratio", "/ratio_ci_lo_tukey", "/ratio_ci_hi_tukey"}) {
        if (check.has(pointer + name)) {
            check.notOurs(pointer + name, kNoLogs);
        }
    }
}

void checkContrast(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                   const std::string& focal, Tolerance tolerance)
{
    const auto means = granted(marginalMeans(fit, focal));
    std::vector<double> weights(means.size(), 0.0);
    check.given(pointer + "/weights");
    for (const auto& [level, weight] : check.at(pointer + "/weights").items()) {
        weights[levelNumber(means, level)] = weight;
    }
    const ContrastTest test = granted(meansContrast(fit, means, weights));
    check.number(pointer + "/estimate", test.estimate, tolerance);
    check.number(pointer + "/se", test.se, tolerance);
    check.number(pointer + "/df", test.df, tolerance);
    if (check.has(pointer + "/t")) {
        check.number(pointer + "/t", test.t, tolerance);
    }
    check.number(pointer + "/p", test.p, tolerance);
    check.number(pointer + "/ci_lo", test.lower, tolerance);
    check.number(pointer + "/ci_hi", test.upper, tolerance);
}

} // namespace plumule::stats::reference
