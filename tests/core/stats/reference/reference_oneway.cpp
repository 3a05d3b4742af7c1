#include "core/stats/model/pairwise.h"
#include "core/stats/samples/checks.h"
#include "core/stats/samples/oneway.h"
#include "core/stats/samples/ranks.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <map>

// One-way cases of the references: R datasets and the certified NIST sets.
namespace plumule::stats::reference {

namespace {

using Column = std::vector<std::optional<double>>;
using Columns = std::map<std::string, Column>;

struct OneWayCase
{
    std::vector<std::string> levels;
    std::vector<std::vector<double>> values;

    [[nodiscard]] std::size_t indexOf(const std::string& level) const
    {
        return Grouped{levels, {}}.indexOf(level);
    }
};

OneWayCase readOneWay(CaseCheck& check)
{
    const auto& data = check.data();
    const Grouped read = grouped(Table(data.at("file")), data.at("response"), data.at("factor"));
    OneWayCase layout;
    layout.levels =
        data.contains("levels") ? data.at("levels").get<std::vector<std::string>>() : read.levels;
    for (const std::string& level : layout.levels)
        layout.values.push_back(read.of(level));
    return layout;
}

void compareColumns(CaseCheck& check, const std::string& under, const Columns& columns,
                    Tolerance tolerance)
{
    for (const auto& [name, column] : columns)
        check.column(under + "/" + name, column, tolerance);
}

void coverGroups(CaseCheck& check, const OneWayCase& layout)
{
    Columns columns;
    for (const auto& values : layout.values) {
        const GroupSummary summary = summarize(values).value();
        columns["n"].emplace_back(static_cast<double>(summary.n));
        columns["mean"].emplace_back(summary.mean);
        columns["sd"].push_back(summary.sd);
        columns["median"].emplace_back(summary.median);
    }
    check.texts("/groups/level", layout.levels);
    compareColumns(check, "/groups", columns, check.tolerance());
}

void coverAnova(CaseCheck& check, const OneWayCase& layout)
{
    const OneWayAnova anova = oneWayAnova(layout.values).value();
    const Tolerance tolerance = check.tolerance();
    check.number("/anova/ss_between", anova.ssBetween, tolerance);
    check.number("/anova/ss_within", anova.ssWithin, tolerance);
    check.number("/anova/df_between", anova.dfBetween, tolerance);
    check.number("/anova/df_within", anova.dfWithin, tolerance);
    check.number("/anova/ms_between", anova.msBetween, tolerance);
    check.number("/anova/ms_within", anova.msWithin, tolerance);
    check.number("/anova/F", anova.f, tolerance);
    check.number("/anova/p", anova.p, tolerance);
    check.number("/anova/residual_sd", anova.residualSd, tolerance);
    check.number("/anova/eta2", anova.eta2, tolerance);
    check.number("/anova/omega2", anova.omega2, tolerance);
    check.number("/anova/epsilon2", anova.epsilon2, tolerance);
    check.number("/anova/cohens_f", anova.cohensF, tolerance);
}

void coverRatio(CaseCheck& check, const std::string& under, const VarianceRatio& ratio)
{
    check.number(under + "/F", ratio.f, check.tolerance());
    check.number(under + "/df1", ratio.df1, check.tolerance());
    check.number(under + "/df2", ratio.df2, check.tolerance());
    check.number(under + "/p", ratio.p, check.tolerance());
}

void coverChecks(CaseCheck& check, const OneWayCase& layout)
{
    if (check.has("/welch_anova"))
        coverRatio(check, "/welch_anova", welchAnova(layout.values).value());
    if (check.has("/levene_mean"))
        coverRatio(check, "/levene_mean", levene(layout.values).value());
    if (check.has("/brown_forsythe_median"))
        coverRatio(check, "/brown_forsythe_median", brownForsythe(layout.values).value());
    if (check.has("/bartlett")) {
        const ChiSquareTest spread = bartlett(layout.values).value();
        check.number("/bartlett/K2", spread.statistic, check.tolerance());
        check.number("/bartlett/df", spread.df, check.tolerance());
        check.number("/bartlett/p", spread.p, check.tolerance());
    }
    if (check.has("/shapiro_residuals")) {
        const Normality normal = shapiroWilk(residualsOf(layout.values).value()).value();
        check.number("/shapiro_residuals/W", normal.w, check.tolerance("shapiro_residuals"));
        check.number("/shapiro_residuals/p", normal.p, check.tolerance("shapiro_residuals"));
    }
}

void addTest(Columns& columns, const std::string& before, const std::string& interval,
             const TEstimate& test)
{
    columns[before + "se"].emplace_back(test.se);
    columns[before + "t"].emplace_back(test.t);
    columns[before + "df"].emplace_back(test.df);
    columns[interval.empty() ? before + "p" : "p_" + interval].emplace_back(test.p);
    const std::string end = interval.empty() ? "" : "_" + interval;
    columns[before + "ci_lo" + end].emplace_back(test.lower);
    columns[before + "ci_hi" + end].emplace_back(test.upper);
}

void addWelchColumns(Columns& exact, Columns& family, const GroupPair& pair)
{
    if (!pair.welch) {
        for (const char* name : {"welch_se", "welch_t", "welch_df", "welch_p", "welch_ci_lo",
                                 "welch_ci_hi", "welch_p_holm"})
            exact[name].emplace_back();
        for (const char* name : {"games_howell_p", "games_howell_ci_lo", "games_howell_ci_hi"})
            family[name].emplace_back();
        return;
    }
    addTest(exact, "welch_", "", pair.welch->test);
    exact["welch_p_holm"].emplace_back(pair.welch->pHolm);
    family["games_howell_p"].emplace_back(pair.welch->pGamesHowell);
    family["games_howell_ci_lo"].emplace_back(pair.welch->lowerGamesHowell);
    family["games_howell_ci_hi"].emplace_back(pair.welch->upperGamesHowell);
}

void coverLetters(CaseCheck& check, const OneWayCase& layout, const GroupPairs& pairs)
{
    if (!check.has("/pairwise/letters_tukey_05"))
        return;
    std::vector<std::string> wanted;
    for (const std::string& level : layout.levels)
        wanted.push_back(check.at("/pairwise/letters_tukey_05/" + level));
    if (!sameGrouping(wanted, tukeyLetters(layout.values, pairs, 0.05)))
        check.fault("/pairwise/letters_tukey_05: the letters group otherwise");
    check.given("/pairwise/letters_tukey_05");
}

void coverPairs(CaseCheck& check, const OneWayCase& layout)
{
    const double level = check.at("/pairwise/conf_level");
    check.given("/pairwise/conf_level");
    const GroupPairs pairs = allGroupPairs(layout.values, level).value();
    std::vector<std::string> first;
    std::vector<std::string> second;
    Columns exact;
    Columns family;
    for (const GroupPair& pair : pairs.pairs) {
        first.push_back(layout.levels[pair.i]);
        second.push_back(layout.levels[pair.j]);
        exact["diff"].emplace_back(pair.test.estimate);
        addTest(exact, "", "raw", pair.test);
        exact["cohens_d"].push_back(pair.cohensD);
        exact["hedges_g"].push_back(pair.hedgesG);
        exact["p_holm"].emplace_back(pair.pHolm);
        exact["p_bonferroni"].emplace_back(pair.pBonferroni);
        exact["p_bh"].emplace_back(pair.pBenjaminiHochberg);
        family["p_tukey"].emplace_back(pair.pTukey);
        family["ci_lo_tukey"].emplace_back(pair.lowerTukey);
        family["ci_hi_tukey"].emplace_back(pair.upperTukey);
        addWelchColumns(exact, family, pair);
    }
    const Tolerance adjusted = check.tolerance("p_and_ci_adjusted");
    check.number("/pairwise/tukey_crit_q", pairs.criticalQ, adjusted);
    check.texts("/pairwise/pairs/i", first);
    check.texts("/pairwise/pairs/j", second);
    compareColumns(check, "/pairwise/pairs", exact, check.tolerance());
    compareColumns(check, "/pairwise/pairs", family, adjusted);
    coverLetters(check, layout, pairs);
}

void coverDunnett(CaseCheck& check, const OneWayCase& layout)
{
    const std::string control = check.at("/dunnett/control");
    const double level = check.at("/dunnett/conf_level");
    check.given("/dunnett/control");
    check.given("/dunnett/conf_level");
    const Tolerance adjusted = check.tolerance("p_and_ci_adjusted");
    const GroupsAgainstControl all =
        groupsAgainstControl(layout.values, layout.indexOf(control), level).value();
    check.number("/dunnett/crit_two_sided", all.criticalTwoSided, adjusted);
    check.number("/dunnett/crit_one_sided", all.criticalOneSided, adjusted);
    std::vector<std::string> treatments;
    Columns exact;
    Columns family;
    for (const GroupAgainstControl& comparison : all.comparisons) {
        treatments.push_back(layout.levels[comparison.group]);
        exact["diff"].emplace_back(comparison.test.estimate);
        exact["se"].emplace_back(comparison.test.se);
        exact["t"].emplace_back(comparison.test.t);
        exact["df"].emplace_back(comparison.test.df);
        family["p_dunnett"].emplace_back(comparison.pDunnett);
        family["p_dunnett_greater"].emplace_back(comparison.pDunnettGreater);
        family["ci_lo"].emplace_back(comparison.lower);
        family["ci_hi"].emplace_back(comparison.upper);
    }
    check.texts("/dunnett/comparisons/treatment", treatments);
    check.texts("/dunnett/comparisons/control",
                std::vector<std::string>(treatments.size(), control));
    compareColumns(check, "/dunnett/comparisons", exact, check.tolerance());
    compareColumns(check, "/dunnett/comparisons", family, adjusted);
}

void coverRatioToControl(CaseCheck& check, const OneWayCase& layout)
{
    const std::string control = check.textsAt("/ratio_to_control/control").at(0);
    std::vector<std::string> treatments;
    Columns columns;
    const std::vector<RatioToControl> ratios =
        ratiosToControl(layout.values, layout.indexOf(control)).value();
    for (const RatioToControl& ratio : ratios) {
        const auto geometric = [&](double TEstimate::*part) {
            return ratio.geometric ? std::optional((*ratio.geometric).*part) : std::nullopt;
        };
        treatments.push_back(layout.levels[ratio.group]);
        columns["ratio_of_means"].emplace_back(ratio.ratio);
        columns["fieller_lo"].push_back(ratio.lower);
        columns["fieller_hi"].push_back(ratio.upper);
        columns["geo_ratio"].push_back(geometric(&TEstimate::estimate));
        columns["geo_ratio_ci_lo"].push_back(geometric(&TEstimate::lower));
        columns["geo_ratio_ci_hi"].push_back(geometric(&TEstimate::upper));
        columns["geo_ratio_p"].push_back(geometric(&TEstimate::p));
    }
    check.texts("/ratio_to_control/treatment", treatments);
    check.texts("/ratio_to_control/control", std::vector<std::string>(treatments.size(), control));
    compareColumns(check, "/ratio_to_control", columns, check.tolerance());
}

void coverContrast(CaseCheck& check, const OneWayCase& layout)
{
    std::vector<double> weights(layout.levels.size(), 0.0);
    for (const auto& [level, weight] : check.at("/custom_contrast/weights").items())
        weights[layout.indexOf(level)] = weight;
    check.given("/custom_contrast/weights");
    const double level = check.at("/custom_contrast/conf_level");
    check.given("/custom_contrast/conf_level");
    const TEstimate test = oneWayContrast(layout.values, weights, level).value();
    const Tolerance tolerance = check.tolerance();
    check.number("/custom_contrast/estimate", test.estimate, tolerance);
    check.number("/custom_contrast/se", test.se, tolerance);
    check.number("/custom_contrast/df", test.df, tolerance);
    check.number("/custom_contrast/t", test.t, tolerance);
    check.number("/custom_contrast/p", test.p, tolerance);
    check.number("/custom_contrast/ci_lo", test.lower, tolerance);
    check.number("/custom_contrast/ci_hi", test.upper, tolerance);
}

void coverKruskal(CaseCheck& check, const KruskalWallis& kruskal)
{
    check.number("/kruskal/H", kruskal.h, check.tolerance());
    check.number("/kruskal/df", kruskal.df, check.tolerance());
    check.number("/kruskal/p", kruskal.p, check.tolerance());
    check.number("/kruskal/epsilon2", kruskal.epsilonSquared, check.tolerance());
}

void coverRanks(CaseCheck& check, const OneWayCase& layout)
{
    const KruskalWallis kruskal = kruskalWallis(layout.values).value();
    if (check.has("/kruskal"))
        coverKruskal(check, kruskal);
    if (!check.has("/dunn"))
        return;
    for (std::size_t i = 0; i < layout.levels.size(); ++i)
        check.number("/dunn/mean_ranks/" + layout.levels[i], kruskal.meanRanks[i],
                     check.tolerance());
    std::vector<std::string> first;
    std::vector<std::string> second;
    Columns columns;
    const std::vector<DunnPair> pairs = dunn(layout.values).value();
    for (const DunnPair& pair : pairs) {
        first.push_back(layout.levels[pair.a]);
        second.push_back(layout.levels[pair.b]);
        columns["mean_rank_diff"].emplace_back(pair.meanRankDifference);
        columns["z"].emplace_back(pair.z);
        columns["p_raw"].emplace_back(pair.p);
        columns["p_holm"].emplace_back(pair.pHolm);
        columns["p_bonferroni"].emplace_back(pair.pBonferroni);
    }
    check.texts("/dunn/pairs/i", first);
    check.texts("/dunn/pairs/j", second);
    compareColumns(check, "/dunn/pairs", columns, check.tolerance());
}

void coverOneWay(CaseCheck& check)
{
    const OneWayCase layout = readOneWay(check);
    if (check.has("/groups"))
        coverGroups(check, layout);
    if (check.has("/anova"))
        coverAnova(check, layout);
    coverChecks(check, layout);
    if (check.has("/pairwise"))
        coverPairs(check, layout);
    coverRanks(check, layout);
    if (check.has("/dunnett"))
        coverDunnett(check, layout);
    if (check.has("/ratio_to_control"))
        coverRatioToControl(check, layout);
    if (check.has("/custom_contrast"))
        coverContrast(check, layout);
}

void coverNistTable(CaseCheck& check, const std::string& under, const OneWayAnova& anova,
                    Tolerance tolerance)
{
    const std::map<std::string, double> values = {{"ss_between", anova.ssBetween},
                                                  {"ss_within", anova.ssWithin},
                                                  {"ms_between", anova.msBetween},
                                                  {"ms_within", anova.msWithin},
                                                  {"df_between", anova.dfBetween},
                                                  {"df_within", anova.dfWithin},
                                                  {"F", anova.f},
                                                  {"r_squared", anova.eta2},
                                                  {"residual_sd", anova.residualSd}};
    for (const auto& [name, value] : values)
        if (check.has(under + "/" + name))
            check.number(under + "/" + name, value, tolerance);
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

const Registered kOneWayHandler{"one-way: ", coverOneWay};
const Registered kNistAnovaHandler{"one-way ANOVA, NIST", coverNistAnova};

} // namespace

} // namespace plumule::stats::reference
