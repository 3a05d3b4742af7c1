#include "core/stats/samples/checks.h"
#include "core/stats/samples/ranks.h"
#include "core/stats/samples/two_samples.h"
#include "tests/core/stats/reference/reference_cases.h"

// Two samples, and Grubbs' test for a stray value.
namespace plumule::stats::reference {

namespace {

void coverT(CaseCheck& check, const std::string& under, const TEstimate& test)
{
    check.number(under + "/diff", test.estimate, check.tolerance());
    check.number(under + "/se", test.se, check.tolerance());
    check.number(under + "/t", test.t, check.tolerance());
    check.number(under + "/df", test.df, check.tolerance());
    check.number(under + "/p", test.p, check.tolerance());
    check.number(under + "/ci_lo", test.lower, check.tolerance());
    check.number(under + "/ci_hi", test.upper, check.tolerance());
}

double levelOf(CaseCheck& check, const std::string& under)
{
    check.given(under + "/conf_level");
    return check.at(under + "/conf_level");
}

void coverUnpaired(CaseCheck& check, const std::string& under, const std::vector<double>& y,
                   const std::vector<double>& x)
{
    const double level = levelOf(check, under);
    const TEstimate welch = welchT(y, x, level).value();
    coverT(check, under + "/welch", welch);
    coverT(check, under + "/pooled", pooledT(y, x, level).value());
    check.number(under + "/welch_p_greater", pGreater(welch), check.tolerance());
    const VarianceRatio ratio = varianceRatio(y, x).value();
    check.number(under + "/var_ratio_F/F", ratio.f, check.tolerance());
    check.number(under + "/var_ratio_F/p", ratio.p, check.tolerance());
}

void coverRankSum(CaseCheck& check, const std::string& under, const std::vector<double>& y,
                  const std::vector<double>& x)
{
    const RankSum test = rankSum(y, x).value();
    check.number(under + "/U", test.u, check.tolerance());
    check.number(under + "/p_normal_cc", test.pNormalCorrected, check.tolerance());
    check.number(under + "/p_normal_nocc", test.pNormal, check.tolerance());
    check.number(under + "/p_exact_conditional", test.pExact, check.tolerance());
    if (check.has(under + "/p_exact_r"))
        check.number(under + "/p_exact_r", test.pExact, check.tolerance());
}

void coverSignedRank(CaseCheck& check, const std::string& under, const std::vector<double>& y,
                     const std::vector<double>& x)
{
    std::vector<double> differences;
    for (std::size_t i = 0; i < y.size(); ++i)
        differences.push_back(y[i] - x[i]);
    const SignedRank test = signedRank(differences).value();
    check.number(under + "/V", test.v, check.tolerance());
    check.number(under + "/n_zero_differences", static_cast<double>(test.zeroDifferences),
                 check.tolerance());
    check.number(under + "/p_normal_cc", test.pNormalCorrected, check.tolerance());
    check.number(under + "/p_normal_nocc", test.pNormal, check.tolerance());
    check.number(under + "/p_exact_conditional", test.pExact, check.tolerance());
}

// Two columns of one table, x and y.
void coverColumns(CaseCheck& check)
{
    const Table table(check.data().at("file"));
    const std::vector<double> x = table.numbers(check.data().at("x"));
    const std::vector<double> y = table.numbers(check.data().at("y"));
    if (check.has("/unpaired"))
        coverUnpaired(check, "/unpaired", y, x);
    if (check.has("/paired"))
        coverT(check, "/paired", pairedT(y, x, levelOf(check, "/paired")).value());
    if (check.has("/rank_sum"))
        coverRankSum(check, "/rank_sum", y, x);
    if (check.has("/signed_rank"))
        coverSignedRank(check, "/signed_rank", y, x);
}

// Names such as a_minus_b and rank_sum_a_vs_b in the plant weights.
void coverNamedGroups(CaseCheck& check)
{
    const Grouped groups = grouped(Table(check.data().at("file")), "weight", "group");
    for (const auto& [name, unused] : check.expected().items()) {
        const std::string under = "/" + name;
        const std::size_t minus = name.find("_minus_");
        const std::size_t versus = name.find("_vs_");
        const std::string rankSumName = "rank_sum_";
        if (minus != std::string::npos)
            coverUnpaired(check, under, groups.of(name.substr(0, minus)),
                          groups.of(name.substr(minus + 7)));
        else if (name.starts_with(rankSumName) && versus != std::string::npos)
            coverRankSum(check, under,
                         groups.of(name.substr(rankSumName.size(), versus - rankSumName.size())),
                         groups.of(name.substr(versus + 4)));
    }
}

void coverTwoSamples(CaseCheck& check)
{
    if (check.data().contains("x"))
        coverColumns(check);
    else
        coverNamedGroups(check);
}

void coverGrubbsTable(CaseCheck& check)
{
    check.given("/table/n");
    check.given("/table/alpha");
    const std::vector<double> counts = check.numbersAt("/table/n");
    const std::vector<double> alphas = check.numbersAt("/table/alpha");
    std::vector<double> two;
    std::vector<double> one;
    for (std::size_t row = 0; row < counts.size(); ++row) {
        const auto n = static_cast<std::size_t>(counts[row]);
        two.push_back(grubbsCritical(n, alphas[row]).value());
        one.push_back(grubbsCritical(n, alphas[row], false).value());
    }
    check.column("/table/crit_two_sided", two, check.tolerance());
    check.column("/table/crit_one_sided", one, check.tolerance());
}

void coverGrubbsOn(CaseCheck& check, const std::string& under, const std::vector<double>& values)
{
    const StrayValue stray = grubbs(values).value();
    check.number(under + "/n", static_cast<double>(values.size()), check.tolerance());
    check.number(under + "/index_1based", static_cast<double>(stray.index) + 1, check.tolerance());
    check.number(under + "/value", stray.value, check.tolerance());
    check.number(under + "/G", stray.g, check.tolerance());
    check.number(under + "/p_two_sided", stray.pTwoSided, check.tolerance());
    for (const bool twoSided : {true, false})
        for (const char* percent : {"01", "05", "10"}) {
            const std::string name =
                under + (twoSided ? "/crit_two_sided_" : "/crit_one_sided_") + percent;
            if (check.has(name))
                check.number(
                    name, grubbsCritical(values.size(), std::stod(percent) / 100, twoSided).value(),
                    check.tolerance());
        }
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

const Registered kTwoSamplesHandler{"Welch and pooled t", coverTwoSamples};
const Registered kGrubbsTableHandler{"Grubbs outlier critical values", coverGrubbsTable};
const Registered kGrubbsDataHandler{"Grubbs test on data", coverGrubbsData};

} // namespace

} // namespace plumule::stats::reference
