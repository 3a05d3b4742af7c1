#include "trays_as_replicates.h"

#include "core/stats/model/linear_model.h"
#include "core/stats/model/marginal_means.h"
#include "core/stats/verdict/critical_value.h"
#include "tests/support/told.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>

namespace plumule::calibration {
namespace {

void taken(const Done& done)
{
    if (!done) {
        throw std::logic_error("a column of made trays is not taken: " + told(done.error()));
    }
}

struct Columns
{
    stats::DataTable table;
    stats::ModelDescription model;
};

Columns columnsOf(const std::vector<SownTray>& trays)
{
    std::vector<std::optional<double>> grams;
    std::vector<std::string> media;
    std::vector<std::string> varieties;
    std::vector<std::string> blocks;
    for (const SownTray& tray : trays) {
        if (!tray.value) {
            continue;
        }
        grams.push_back(tray.value);
        media.push_back("m" + std::to_string(tray.medium));
        varieties.push_back("v" + std::to_string(tray.variety));
        blocks.push_back("t" + std::to_string(tray.sowing) + "b" +
                         std::to_string(tray.block.value_or(0)));
    }
    Columns columns;
    columns.model.response = "grams";
    columns.model.terms.push_back({"medium"});
    taken(columns.table.addNumbers("grams", grams));
    taken(columns.table.addFactor("medium", media));
    for (const auto& [name, cells] : {std::pair("variety", varieties), {"block", blocks}}) {
        const bool varies = std::any_of(cells.begin(), cells.end(), [&](const std::string& cell) {
            return cell != cells.front();
        });
        if (varies) {
            taken(columns.table.addFactor(name, cells));
            columns.model.terms.push_back({name});
        }
    }
    return columns;
}

std::size_t mediumOf(const std::string& level)
{
    return std::stoul(level.substr(1));
}

} // namespace

bool saysFalseByTrays(const std::vector<SownTray>& trays, const Rules& rules)
{
    const Columns columns = columnsOf(trays);
    const auto fit = stats::LinearModel::fit(columns.table, columns.model);
    if (!fit || fit->isPerfect()) {
        return false;
    }
    const auto means = stats::marginalMeans(*fit, "medium");
    if (!means) {
        return false;
    }
    const double critical = stats::criticalValue(means->size(), fit->residualDf(), 0.05);
    for (std::size_t a = 0; a < means->size(); ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            std::vector<double> weights = (*means)[a].weights;
            std::transform(weights.begin(), weights.end(), (*means)[b].weights.begin(),
                           weights.begin(), std::minus<>());
            if (!fit->isEstimable(weights)) {
                continue;
            }
            const stats::Estimate found = fit->estimate(weights);
            const double truth = rules.effects.empty()
                                     ? 0
                                     : rules.effects[mediumOf((*means)[a].level)] -
                                           rules.effects[mediumOf((*means)[b].level)];
            const bool isSaid = std::abs(found.value) > critical * found.se;
            if (isSaid && !(found.value * truth > 0)) {
                return true;
            }
        }
    }
    return false;
}

} // namespace plumule::calibration
