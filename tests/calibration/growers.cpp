#include "growers.h"

#include <algorithm>
#include <map>
#include <memory>

namespace plumule::calibration {
namespace {

SowingPlan only(SowingPlan plan, const std::function<bool(std::size_t)>& isSown)
{
    std::erase_if(plan, [&](const PlannedCell& cell) { return !isSown(cell.medium); });
    return plan;
}

std::optional<std::size_t> leaderOf(const SoFar& soFar)
{
    if (soFar.answer == nullptr) {
        return std::nullopt;
    }
    const auto& means = soFar.answer->means;
    return std::max_element(means.begin(), means.end(),
                            [](const auto& a, const auto& b) { return a.onScale < b.onScale; })
        ->medium;
}

} // namespace

Grower sowsLate(std::size_t late, std::size_t fromSowing)
{
    return [=](const SoFar& soFar) {
        const bool isLate = soFar.room.sowings() < fromSowing;
        return only(soFar.room.fullPlan(),
                    [&](std::size_t medium) { return !isLate || medium < late; });
    };
}

Grower sowsInTeams(std::size_t team)
{
    return [=](const SoFar& soFar) {
        const SowingPlan plan = soFar.room.fullPlan();
        const std::size_t teams = (plan.back().medium + 1) / team;
        return only(plan, [&](std::size_t medium) {
            return medium / team == soFar.room.sowings() % teams;
        });
    };
}

Grower sowsOnSomeVarieties(std::size_t each, bool isDrawnOnce)
{
    // By medium, the varieties it is not sown on in this sowing.
    const auto left = std::make_shared<std::map<std::size_t, std::vector<std::size_t>>>();
    return [=](const SoFar& soFar) -> std::optional<SowingPlan> {
        SowingPlan plan = soFar.room.fullPlan();
        if (!isDrawnOnce || soFar.room.sowings() == 0) {
            left->clear();
            for (const PlannedCell& cell : plan) {
                (*left)[cell.medium].push_back(cell.variety);
            }
            for (auto& [medium, varieties] : *left) {
                std::shuffle(varieties.begin(), varieties.end(), soFar.draw.engine());
                varieties.resize(varieties.size() - each);
            }
        }
        std::erase_if(plan, [&](const PlannedCell& cell) {
            const auto& varieties = left->at(cell.medium);
            return std::find(varieties.begin(), varieties.end(), cell.variety) != varieties.end();
        });
        return plan;
    };
}

Grower sowsTheWinnerMore(std::size_t most, std::size_t least)
{
    return [=](const SoFar& soFar) -> std::optional<SowingPlan> {
        SowingPlan plan = soFar.room.fullPlan();
        if (const auto leader = leaderOf(soFar)) {
            for (PlannedCell& cell : plan) {
                cell.trays = cell.medium == *leader ? most : least;
            }
        }
        return plan;
    };
}

Grower dropsTheWorst()
{
    const auto dropped = std::make_shared<std::vector<std::size_t>>();
    return [=](const SoFar& soFar) {
        if (soFar.room.sowings() == 0) {
            dropped->clear();
        }
        const auto isSown = [&](std::size_t medium) {
            return std::find(dropped->begin(), dropped->end(), medium) == dropped->end();
        };
        if (soFar.answer != nullptr && dropped->size() + 2 < soFar.answer->means.size()) {
            std::optional<std::size_t> worst;
            double least = 0;
            for (const stats::MediumMean& mean : soFar.answer->means) {
                if (isSown(mean.medium) && (!worst || *mean.onScale < least)) {
                    worst = mean.medium;
                    least = *mean.onScale;
                }
            }
            dropped->push_back(*worst);
        }
        return only(soFar.room.fullPlan(), isSown);
    };
}

Grower sowsUnevenly(std::size_t first, std::size_t others)
{
    return [=](const SoFar& soFar) -> std::optional<SowingPlan> {
        SowingPlan plan = soFar.room.fullPlan();
        for (PlannedCell& cell : plan) {
            cell.trays = cell.medium == 0 ? first : others;
        }
        return plan;
    };
}

Grower agesItsMat(double lossPerUse, std::size_t uses)
{
    const auto firstAge = std::make_shared<std::size_t>(0);
    return [=](const SoFar& soFar) -> std::optional<SowingPlan> {
        if (soFar.room.sowings() == 0) {
            *firstAge = soFar.draw.below(uses);
        }
        const double age = static_cast<double>((*firstAge + soFar.room.sowings()) % uses);
        const double middle = (static_cast<double>(uses) - 1) / 2;
        soFar.room.shift(0, lossPerUse * (middle - age));
        return soFar.room.fullPlan();
    };
}

Harvest throwsTheWorstAway(double probability)
{
    return [=](std::vector<SownTray>& trays, Draw& draw) {
        SownTray* worst = nullptr;
        for (SownTray& tray : trays) {
            if (tray.medium == 0 && (worst == nullptr || *tray.value < *worst->value)) {
                worst = &tray;
            }
        }
        if (worst != nullptr && draw.uniform() < probability) {
            worst->value.reset();
        }
    };
}

Harvest losesTrays(double probability)
{
    return [=](std::vector<SownTray>& trays, Draw& draw) {
        for (SownTray& tray : trays) {
            if (draw.uniform() < probability) {
                tray.value.reset();
            }
        }
    };
}

Harvest losesCells(double probability)
{
    return [=](std::vector<SownTray>& trays, Draw& draw) {
        std::map<std::size_t, bool> isLost;
        for (SownTray& tray : trays) {
            const auto [found, isFirst] = isLost.try_emplace(tray.medium, false);
            if (isFirst) {
                found->second = draw.uniform() < probability;
            }
            if (found->second) {
                tray.value.reset();
            }
        }
    };
}

} // namespace plumule::calibration
