#include "core/stats/samples/friedman.h"
#include "tests/core/stats/reference/reference_cases.h"
#include "tests/support/told.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace plumule::stats::reference {

namespace {

template <class T>
T wanted(const Result<T>& result)
{
    if (!result) {
        throw std::runtime_error("refused: " + told(result.error()));
    }
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
    if (found == levels.end()) {
        levels.push_back(level);
    }
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
            table.texts(data.at("filter_column"))[row] != data.at("filter_value")) {
            continue;
        }
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
    for (std::size_t i = 0; i < blocks.treatments.size(); ++i) {
        check.number("/rank_sums/" + blocks.treatments[i], result.rankSums[i], tight);
    }
    check.number("/chisq", result.chiSquare, tight);
    check.number("/df", result.df, tight);
    check.number("/p", result.p, tight);
    check.number("/kendall_w", result.kendallW, tight);
    check.number("/iman_davenport_F", result.imanDavenportF, tight);
    coverNemenyi(check, blocks);
}

const Registered kFriedman{"Friedman", coverFriedman};

} // namespace

} // namespace plumule::stats::reference
