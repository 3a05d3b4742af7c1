#include "core/stats/model/compare_table.h"
#include "core/stats/samples/checks.h"
#include "core/stats/samples/oneway.h"
#include "tests/core/stats/reference/reference_linear.h"

#include <cmath>
#include <map>
#include <numbers>

// One-way cases of the references, as the comparison of any table answers them: R datasets and the
// certified NIST sets. And Grubbs' test on their values.
namespace plumule::stats::reference {

namespace {

using Column = std::vector<std::optional<double>>;
using Columns = std::map<std::string, Column>;

constexpr const char* kUnanswered = "no answer of the program holds it";

struct OneWayCase
{
    std::vector<std::string> levels;
    std::vector<std::vector<double>> values;
};

OneWayCase readOneWay(CaseCheck& check)
{
    const auto& data = check.data();
    const Grouped read = grouped(Table(data.at("file")), data.at("response"), data.at("factor"));
    OneWayCase layout;
    layout.levels =
        data.contains("levels") ? data.at("levels").get<std::vector<std::string>>() : read.levels;
    for (const std::string& level : layout.levels) {
        layout.values.push_back(read.of(level));
    }
    return layout;
}

// Groups one after another, so that levels keep the case's order.
DataTable tableOfGroups(const OneWayCase& layout)
{
    std::vector<std::string> levels;
    std::vector<std::optional<double>> values;
    for (std::size_t group = 0; group < layout.levels.size(); ++group) {
        for (const double value : layout.values[group]) {
            levels.push_back(layout.levels[group]);
            values.emplace_back(value);
        }
    }
    DataTable table;
    if (!table.addFactor("group", levels) || !table.addNumbers("value", values)) {
        throw std::runtime_error("a table was refused");
    }
    return table;
}

CompareRequest requestFor(CaseCheck& check)
{
    CompareRequest request;
    request.response = "value";
    request.medium = "group";
    if (check.has("/dunnett")) {
        request.control = check.at("/dunnett/control");
        check.given("/dunnett/control");
        check.given("/dunnett/conf_level");
    }
    if (check.has("/custom_contrast")) {
        LevelWeights weights;
        for (const auto& [level, weight] : check.at("/custom_contrast/weights").items()) {
            weights.emplace_back(level, weight);
        }
        request.contrasts = {weights};
        check.given("/custom_contrast/weights");
        check.given("/custom_contrast/conf_level");
    }
    check.given("/pairwise/conf_level");
    for (const char* level : {"/pairwise/conf_level", "/dunnett/conf_level"}) {
        if (check.has(level) && check.at(level) != request.level) {
            throw std::runtime_error("another level");
        }
    }
    return request;
}

void compareColumns(CaseCheck& check, const std::string& under, const Columns& columns,
                    Tolerance tolerance)
{
    for (const auto& [name, column] : columns) {
        check.column(under + "/" + name, column, tolerance);
    }
}

void leaveToNobody(CaseCheck& check, const std::string& under,
                   std::initializer_list<const char*> names)
{
    for (const char* name : names) {
        if (check.has(under + name)) {
            check.notOurs(under + name, kUnanswered);
        }
    }
}

void coverGroups(CaseCheck& check, const OneWayCase& layout, const TableComparison& comparison)
{
    Columns columns;
    for (std::size_t group = 0; group < layout.levels.size(); ++group) {
        columns["n"].emplace_back(static_cast<double>(comparison.means[group].n));
        columns["mean"].push_back(comparison.means[group].mean);
        columns["sd"].push_back(summarize(layout.values[group]).value().sd);
        columns["median"].emplace_back(medianOf(layout.values[group]));
    }
    check.texts("/groups/level", layout.levels);
    compareColumns(check, "/groups", columns, check.tolerance());
}

void coverAnova(CaseCheck& check, const TableComparison& comparison)
{
    const AnovaRow& row = comparison.termsType1.front();
    const ResidualPart& rest = comparison.residual;
    const Tolerance tolerance = check.tolerance();
    check.number("/anova/ss_between", row.ss, tolerance);
    check.number("/anova/ss_within", rest.ss, tolerance);
    check.number("/anova/df_between", row.df, tolerance);
    check.number("/anova/df_within", rest.df, tolerance);
    check.number("/anova/ms_between", row.ms, tolerance);
    check.number("/anova/ms_within", rest.sd * rest.sd, tolerance);
    check.number("/anova/F", row.f, tolerance);
    check.number("/anova/p", row.p, tolerance);
    check.number("/anova/residual_sd", rest.sd, tolerance);
    check.number("/anova/eta2", comparison.rSquared, tolerance);
    leaveToNobody(check, "/anova", {"/omega2", "/epsilon2", "/cohens_f"});
}

void coverRatio(CaseCheck& check, const std::string& under,
                const std::optional<VarianceRatio>& ratio)
{
    check.number(under + "/F", ratio.value().f, check.tolerance());
    check.number(under + "/df1", ratio->df1, check.tolerance());
    check.number(under + "/df2", ratio->df2, check.tolerance());
    check.number(under + "/p", ratio->p, check.tolerance());
}

void coverChecks(CaseCheck& check, const TableComparison& comparison)
{
    coverRatio(check, "/welch_anova", comparison.welch);
    coverRatio(check, "/brown_forsythe_median", comparison.spreadCheck);
    check.number("/shapiro_residuals/W", comparison.normality.value().w,
                 check.tolerance("shapiro_residuals"));
    check.number("/shapiro_residuals/p", comparison.normality->p,
                 check.tolerance("shapiro_residuals"));
    check.number("/kruskal/H", comparison.kruskal.value().h, check.tolerance());
    check.number("/kruskal/df", comparison.kruskal->df, check.tolerance());
    check.number("/kruskal/p", comparison.kruskal->p, check.tolerance());
    leaveToNobody(check, "", {"/levene_mean", "/bartlett", "/kruskal/epsilon2", "/dunn"});
}

// The critical value that an interval was made with.
std::optional<double> criticalOf(const ContrastTest& raw, std::optional<double> upper)
{
    return (upper.value() - raw.estimate.value()) / raw.se.value();
}

void addRaw(Columns& columns, const ContrastTest& raw)
{
    columns["diff"].push_back(raw.estimate);
    columns["se"].push_back(raw.se);
    columns["t"].push_back(raw.t);
    columns["df"].push_back(raw.df);
}

void coverLetters(CaseCheck& check, const OneWayCase& layout, const TableComparison& comparison)
{
    if (!check.has("/pairwise/letters_tukey_05")) {
        return;
    }
    std::vector<std::string> wanted;
    for (const std::string& level : layout.levels) {
        wanted.push_back(check.at("/pairwise/letters_tukey_05/" + level));
    }
    if (!sameGrouping(wanted, comparison.letters)) {
        check.fault("/pairwise/letters_tukey_05: the letters group otherwise");
    }
    check.given("/pairwise/letters_tukey_05");
}

void coverPairs(CaseCheck& check, const OneWayCase& layout, const TableComparison& comparison)
{
    std::vector<std::string> first;
    std::vector<std::string> second;
    Columns exact;
    Columns family;
    for (const ComparedPair& pair : comparison.pairs) {
        first.push_back(pair.b);
        second.push_back(pair.a);
        addRaw(exact, pair.numbers.raw);
        exact["p_raw"].push_back(pair.numbers.raw.p);
        exact["ci_lo_raw"].push_back(pair.numbers.raw.lower);
        exact["ci_hi_raw"].push_back(pair.numbers.raw.upper);
        exact["p_holm"].push_back(pair.numbers.pHolm);
        family["p_tukey"].push_back(pair.numbers.pTukey);
        family["ci_lo_tukey"].push_back(pair.numbers.lowerTukey);
        family["ci_hi_tukey"].push_back(pair.numbers.upperTukey);
    }
    const Tolerance adjusted = check.tolerance("p_and_ci_adjusted");
    const PairComparison& any = comparison.pairs.front().numbers;
    check.number("/pairwise/tukey_crit_q",
                 *criticalOf(any.raw, any.upperTukey) * std::numbers::sqrt2, adjusted);
    check.texts("/pairwise/pairs/i", first);
    check.texts("/pairwise/pairs/j", second);
    compareColumns(check, "/pairwise/pairs", exact, check.tolerance());
    compareColumns(check, "/pairwise/pairs", family, adjusted);
    leaveToNobody(check, "/pairwise/pairs",
                  {"/welch_se", "/welch_t", "/welch_df", "/welch_p", "/welch_ci_lo", "/welch_ci_hi",
                   "/welch_p_holm", "/games_howell_p", "/games_howell_ci_lo", "/games_howell_ci_hi",
                   "/cohens_d", "/hedges_g", "/p_bonferroni", "/p_bh"});
    coverLetters(check, layout, comparison);
}

void coverDunnett(CaseCheck& check, const CompareRequest& request,
                  const TableComparison& comparison)
{
    const Tolerance adjusted = check.tolerance("p_and_ci_adjusted");
    std::vector<std::string> treatments;
    Columns exact;
    Columns family;
    for (const ComparedToControl& one : comparison.againstControl) {
        treatments.push_back(one.level);
        addRaw(exact, one.numbers.raw);
        family["p_dunnett"].push_back(one.numbers.pDunnett);
        family["ci_lo"].push_back(one.numbers.lowerDunnett);
        family["ci_hi"].push_back(one.numbers.upperDunnett);
    }
    const ControlComparison& any = comparison.againstControl.front().numbers;
    check.number("/dunnett/crit_two_sided", criticalOf(any.raw, any.upperDunnett), adjusted);
    check.texts("/dunnett/comparisons/treatment", treatments);
    check.texts("/dunnett/comparisons/control",
                std::vector<std::string>(treatments.size(), request.control.value()));
    compareColumns(check, "/dunnett/comparisons", exact, check.tolerance());
    compareColumns(check, "/dunnett/comparisons", family, adjusted);
    leaveToNobody(check, "/dunnett", {"/crit_one_sided", "/comparisons/p_dunnett_greater"});
}

void coverContrast(CaseCheck& check, const ContrastTest& test)
{
    const Tolerance tolerance = check.tolerance();
    check.number("/custom_contrast/estimate", test.estimate, tolerance);
    check.number("/custom_contrast/se", test.se, tolerance);
    check.number("/custom_contrast/df", test.df, tolerance);
    check.number("/custom_contrast/t", test.t, tolerance);
    check.number("/custom_contrast/p", test.p, tolerance);
    check.number("/custom_contrast/ci_lo", test.lower, tolerance);
    check.number("/custom_contrast/ci_hi", test.upper, tolerance);
}

void coverOneWay(CaseCheck& check)
{
    const OneWayCase layout = readOneWay(check);
    const CompareRequest request = requestFor(check);
    const TableComparison comparison = granted(compareTable(tableOfGroups(layout), request));
    coverGroups(check, layout, comparison);
    coverAnova(check, comparison);
    coverChecks(check, comparison);
    coverPairs(check, layout, comparison);
    if (check.has("/dunnett")) {
        coverDunnett(check, request, comparison);
    }
    if (check.has("/custom_contrast")) {
        coverContrast(check, comparison.contrasts.front());
    }
    leaveToNobody(check, "", {"/ratio_to_control"});
}

void coverNistTable(CaseCheck& check, const std::string& under, const OneWayAnova& anova,
                    Tolerance tolerance)
{
    const std::map<std::string, double> values = {
        {"ss_between", anova.ssBetween},
        {"ss_within", anova.ssWithin},
        {"ms_between", anova.msBetween},
        {"ms_within", anova.msWithin},
        {"df_between", anova.dfBetween},
        {"df_within", anova.dfWithin},
        {"F", anova.f},
        {"r_squared", anova.ssBetween / (anova.ssBetween + anova.ssWithin)},
        {"residual_sd", std::sqrt(anova.msWithin)}};
    for (const auto& [name, value] : values) {
        if (check.has(under + "/" + name)) {
            check.number(under + "/" + name, value, tolerance);
        }
    }
}

void coverNistAnova(CaseCheck& check)
{
    const OneWayAnova anova = oneWayAnova(readOneWay(check).values).value();
    coverNistTable(check, "/certified", anova, check.tolerance("F_vs_certified"));
    coverNistTable(check, "/exact_on_double_rounded_data", anova,
                   check.tolerance("F_vs_exact_on_double"));
    check.notOurs("/lre_R", "how many digits another program reached");
    check.notOurs("/lre_best_possible_with_doubles", "how far the rounded data are off");
}

void coverGrubbsOn(CaseCheck& check, const std::string& under, const std::vector<double>& values)
{
    const StrayValue stray = grubbs(values).value();
    check.number(under + "/n", static_cast<double>(values.size()), check.tolerance());
    check.number(under + "/index_1based", static_cast<double>(stray.index) + 1, check.tolerance());
    check.number(under + "/value", stray.value, check.tolerance());
    check.number(under + "/G", stray.g, check.tolerance());
    check.number(under + "/p_two_sided", stray.pTwoSided, check.tolerance());
    leaveToNobody(check, under,
                  {"/crit_two_sided_01", "/crit_two_sided_05", "/crit_two_sided_10",
                   "/crit_one_sided_01", "/crit_one_sided_05", "/crit_one_sided_10"});
}

// Names such as spray_D (insect counts of the case's file) and plantgrowth_trt1.
void coverGrubbsData(CaseCheck& check)
{
    for (const auto& [name, unused] : check.expected().items()) {
        const std::size_t split = name.find('_');
        const std::string level = name.substr(split + 1);
        const bool plants = name.starts_with("plantgrowth_");
        const Grouped groups =
            plants ? grouped(Table("plantgrowth.csv"), "weight", "group")
                   : grouped(Table(check.data().at("file")), "count", name.substr(0, split));
        coverGrubbsOn(check, "/" + name, groups.of(level));
    }
}

const Registered kOneWayHandler{"one-way: ", coverOneWay};
const Registered kNistAnovaHandler{"one-way ANOVA, NIST", coverNistAnova};
const Registered kGrubbsDataHandler{"Grubbs test on data", coverGrubbsData};

} // namespace

} // namespace plumule::stats::reference
