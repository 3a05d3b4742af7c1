#include "core/stats/samples/friedman.h"
#include "core/stats/samples/permutation.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <algorithm>
#include <cmath>
#include <regex>
#include <stdexcept>

namespace plumule::stats::reference {

namespace {

template <class T>
T wanted(const Result<T>& result)
{
    if (!result)
        throw std::runtime_error("refused: " + result.error().subject + " " +
                                 result.error().detail);
    return *result;
}

// One vector a block, one value a level of the treatment; levels in order of first appearance.
struct Blocks
{
    std::vector<std::string> treatments;
    std::vector<std::vector<double>> values;
};

std::size_t placeOf(std::vector<std::string>& levels, const std::string& level)
{
    const auto found = std::find(levels.begin(), levels.end(), level);
    if (found == levels.end())
        levels.push_back(level);
    return static_cast<std::size_t>(std::find(levels.begin(), levels.end(), level) -
                                    levels.begin());
}

Blocks blocksOf(const Table& table, const std::string& response, const std::string& treatment,
                const std::string& block, const nlohmann::json& data)
{
    Blocks blocks;
    std::vector<std::string> names;
    const auto values = table.numbers(response);
    const auto treatments = table.texts(treatment);
    const auto blockNames = table.texts(block);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (data.contains("filter_column") &&
            table.texts(data.at("filter_column"))[row] != data.at("filter_value"))
            continue;
        const std::size_t b = placeOf(names, blockNames[row]);
        const std::size_t t = placeOf(blocks.treatments, treatments[row]);
        blocks.values.resize(names.size());
        blocks.values[b].resize(std::max(blocks.values[b].size(), t + 1), std::nan(""));
        blocks.values[b][t] = values[row];
    }
    return blocks;
}

void coverNemenyi(CaseCheck& check, const Blocks& blocks)
{
    const auto pairs = wanted(nemenyi(blocks.values));
    std::vector<std::string> a;
    std::vector<std::string> b;
    std::vector<double> difference;
    std::vector<double> z;
    std::vector<double> p;
    for (const NemenyiPair& pair : pairs) {
        a.push_back(blocks.treatments[pair.a]);
        b.push_back(blocks.treatments[pair.b]);
        difference.push_back(pair.rankSumDifference);
        z.push_back(pair.z);
        p.push_back(pair.p);
    }
    check.texts("/nemenyi/i", a);
    check.texts("/nemenyi/j", b);
    check.column("/nemenyi/rank_sum_diff", difference, check.tolerance());
    check.column("/nemenyi/z", z, check.tolerance());
    check.column("/nemenyi/p_nemenyi", p, check.tolerance("p_and_ci_adjusted"));
}

void coverFriedman(CaseCheck& check)
{
    const auto& data = check.data();
    const Table table(data.at("file"));
    const Blocks blocks =
        blocksOf(table, data.at("response"), data.at("treatment"), data.at("block"), data);
    const Friedman result = wanted(friedman(blocks.values));
    const Tolerance tight = check.tolerance();
    for (std::size_t i = 0; i < blocks.treatments.size(); ++i)
        check.number("/rank_sums/" + blocks.treatments[i], result.rankSums[i], tight);
    check.number("/chisq", result.chiSquare, tight);
    check.number("/df", result.df, tight);
    check.number("/p", result.p, tight);
    check.number("/kendall_w", result.kendallW, tight);
    check.number("/iman_davenport_F", result.imanDavenportF, tight);
    coverNemenyi(check, blocks);
}

void coverDifference(CaseCheck& check, const std::string& pointer, const std::string& observed,
                     const PermutedDifference& result)
{
    const Tolerance tight = check.tolerance();
    check.number(pointer + "/" + observed, result.observed, tight);
    check.number(pointer + "/n_permutations", static_cast<double>(result.permutations), tight);
    check.number(pointer + "/count_two_sided", static_cast<double>(result.countTwoSided), tight);
    check.number(pointer + "/p_two_sided", result.pTwoSided(), tight);
    check.number(pointer + "/p_greater", result.pGreater(), tight);
    check.number(pointer + "/p_less", result.pLess(), tight);
}

void coverPermutedF(CaseCheck& check, const std::string& pointer, const PermutedF& result)
{
    const Tolerance tight = check.tolerance();
    check.number(pointer + "/n_permutations", static_cast<double>(result.permutations), tight);
    check.number(pointer + "/F_observed", result.f, tight);
    check.number(pointer + "/count", static_cast<double>(result.count), tight);
    check.number(pointer + "/p", result.p(), tight);
}

// The small trials take the first few of each group: as many as make the stated number of splits.
std::size_t perGroup(double permutations, std::size_t groups)
{
    for (std::size_t n = 1; n < 20; ++n) {
        const double ways =
            std::exp(std::lgamma(static_cast<double>(n * groups) + 1) -
                     static_cast<double>(groups) * std::lgamma(static_cast<double>(n) + 1));
        if (std::abs(ways - permutations) < 0.5 + 1e-9 * permutations)
            return n;
    }
    throw std::runtime_error("no group size gives that many permutations");
}

std::vector<double> firstOf(const std::vector<double>& values, std::size_t n)
{
    return {values.begin(), values.begin() + static_cast<std::ptrdiff_t>(n)};
}

void coverPermutedGroups(CaseCheck& check, const Grouped& groups)
{
    static const std::regex pairName("(?:two|full_[0-9]+_vs_[0-9]+)_(.+)_minus_(.+)");
    for (const auto& [name, fields] : check.expected().items()) {
        std::smatch match;
        const std::size_t permutations = fields.at("n_permutations");
        if (std::regex_match(name, match, pairName)) {
            const std::size_t n = perGroup(static_cast<double>(permutations), 2);
            coverDifference(check, "/" + name, "observed_diff",
                            wanted(permuteTwoGroups(firstOf(groups.of(match[1]), n),
                                                    firstOf(groups.of(match[2]), n))));
            continue;
        }
        const std::size_t n = perGroup(static_cast<double>(permutations), groups.values.size());
        std::vector<std::vector<double>> few;
        for (const auto& values : groups.values)
            few.push_back(firstOf(values, n));
        coverPermutedF(check, "/" + name, wanted(permuteGroups(few)));
    }
}

void coverPermutation(CaseCheck& check)
{
    const auto& data = check.data();
    const Table table(data.at("file"));
    if (check.has("/observed_mean_diff")) {
        const auto y = table.numbers("drug2");
        const auto x = table.numbers("drug1");
        std::vector<double> differences;
        for (std::size_t i = 0; i < y.size(); ++i)
            differences.push_back(y[i] - x[i]);
        return coverDifference(check, "", "observed_mean_diff", wanted(flipSigns(differences)));
    }
    if (table.hasColumn("block")) {
        const Blocks blocks = blocksOf(table, "yield", "variety", "block", data);
        return coverPermutedF(check, "", wanted(permuteWithinBlocks(blocks.values)));
    }
    coverPermutedGroups(check, grouped(table, "weight", "group"));
}

const Registered kFriedman{"Friedman", coverFriedman};
const Registered kPermutation{"exact permutation p", coverPermutation};

} // namespace

} // namespace plumule::stats::reference
