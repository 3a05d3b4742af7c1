#include "core/review/model/comparison_columns.h"

#include "core/review/fairness/fairness.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <set>

namespace plumule {
namespace {

// Seed weights that differ by less are the slips of a scale.
constexpr double kLeastUnlikeSeed = 0.01;

// One tray fed by mistake would hang the whole comparison on itself.
constexpr int kLeastFedEachWay = 2;

// A level's name in the model; it is never shown.
std::string levelText(std::int64_t number)
{
    return std::to_string(number);
}

struct LevelCells
{
    std::vector<std::string> cells;
    std::set<std::int64_t> levels;

    void add(std::int64_t level)
    {
        levels.insert(level);
        cells.push_back(levelText(level));
    }
    [[nodiscard]] int count() const { return static_cast<int>(levels.size()); }
};

template <class LevelOf>
LevelCells cellsOf(const ComparedTrays& trays, LevelOf levelOf)
{
    LevelCells cells;
    cells.cells.reserve(trays.trays.size());
    for (const ComparedTray& tray : trays.trays) {
        cells.add(levelOf(tray));
    }
    return cells;
}

void addFactor(ComparisonColumns& columns, const char* name, const LevelCells& cells)
{
    [[maybe_unused]] const Done added = columns.table.addFactor(name, cells.cells);
    assert(added);
}

bool allHaveBlocks(const ComparedTrays& trays)
{
    return std::all_of(trays.trays.begin(), trays.trays.end(), [](const ComparedTray& tray) {
        return tray.record->tray.trial && tray.record->tray.block;
    });
}

LevelCells shelfCells(const ComparedTrays& trays)
{
    return cellsOf(trays, [](const ComparedTray& tray) {
        return tray.record->shelf.value_or(ShelfId()).value;
    });
}

// A block is one only within its trial.
LevelCells blockCells(const ComparedTrays& trays)
{
    std::map<std::pair<TrialId, int>, std::int64_t> numbers;
    return cellsOf(trays, [&](const ComparedTray& tray) {
        const Tray& sown = tray.record->tray;
        const auto next = static_cast<std::int64_t>(numbers.size());
        return numbers.emplace(std::pair(*sown.trial, *sown.block), next).first->second;
    });
}

// The blocks of a lone trial are its own. Over several trials the shelf is what they share; where
// no shelf is on record their blocks serve.
void addBlocks(ComparisonColumns& columns, const ComparedTrays& trays)
{
    const LevelCells shelves = shelfCells(trays);
    const auto unknown =
        std::count_if(trays.trays.begin(), trays.trays.end(),
                      [](const ComparedTray& tray) { return !tray.record->shelf; });
    const bool mostKnown = 2 * static_cast<std::size_t>(unknown) < trays.trays.size();
    const bool hasBlocks = allHaveBlocks(trays);
    if (hasBlocks && (columns.trials == 1 || !mostKnown)) {
        const LevelCells blocks = blockCells(trays);
        columns.blockKind = BlockKind::BlockOfTrial;
        columns.blocks = blocks.count();
        addFactor(columns, column::kBlock, blocks);
    } else if (mostKnown) {
        columns.blocks = shelves.count();
        addFactor(columns, column::kBlock, shelves);
    } else {
        columns.isBlockPartlyUnknown = shelves.count() > 1;
    }
}

// Trays of one trial, whose plan left their places wholly to chance: it has no blocks, and shelves
// are none either.
bool isWithoutBlocks(const ComparisonColumns& columns, const SeasonFacts& facts,
                     const ComparedTrays& trays)
{
    if (columns.trialLevels != 1 || columns.trials != 1) {
        return false;
    }
    const auto design = facts.designs.find(*trays.trays.front().record->tray.trial);
    return design != facts.designs.end() && design->second == Design::CompletelyRandom;
}

// Places along the shelves mean something within one layout only.
void addColumns(ComparisonColumns& columns, const ComparedTrays& trays)
{
    const bool areInOneSquare =
        columns.trialLevels == 1 && columns.trials == 1 &&
        std::all_of(trays.trays.begin(), trays.trays.end(),
                    [](const ComparedTray& tray) { return tray.record->column.has_value(); });
    if (areInOneSquare) {
        const LevelCells places = cellsOf(
            trays, [](const ComparedTray& tray) { return std::int64_t{*tray.record->column}; });
        columns.columns = places.count();
        addFactor(columns, column::kColumn, places);
    }
}

void addFeeding(ComparisonColumns& columns, const ComparedTrays& trays)
{
    std::vector<std::pair<int, int>> counts(trays.media.size()); // fed, unfed
    std::pair<int, int> all;
    for (const ComparedTray& tray : trays.trays) {
        const auto fed = wasFed(*tray.record);
        columns.isFeedingPartlyUnknown = columns.isFeedingPartlyUnknown || !fed;
        if (fed) {
            ++(*fed ? counts[tray.medium].first : counts[tray.medium].second);
            ++(*fed ? all.first : all.second);
        }
    }
    columns.variesInFeeding = all.first > 0 && all.second > 0;
    columns.isFeedingWithinMedium =
        std::any_of(counts.begin(), counts.end(), [](const std::pair<int, int>& both) {
            return std::min(both.first, both.second) >= kLeastFedEachWay;
        });
    addFactor(columns, column::kFeeding, cellsOf(trays, [](const ComparedTray& tray) {
                  return std::int64_t{wasFed(*tray.record).value_or(false)};
              }));
}

// Seed weights by variety: they vary where one variety was sown unlike.
bool seedVaries(const ComparedTrays& trays)
{
    std::map<VarietyId, std::pair<Mass, Mass>> ranges;
    for (const ComparedTray& tray : trays.trays) {
        const Tray& sown = tray.record->tray;
        if (sown.seed) {
            auto& [low, high] =
                ranges.emplace(sown.variety, std::pair(*sown.seed, *sown.seed)).first->second;
            low = std::min(low, *sown.seed);
            high = std::max(high, *sown.seed);
        }
    }
    return std::any_of(ranges.begin(), ranges.end(), [](const auto& entry) {
        const auto& [low, high] = entry.second;
        return inGrams(high) > inGrams(low) * (1 + kLeastUnlikeSeed);
    });
}

void addDensity(ComparisonColumns& columns, const SeasonFacts& facts, const ComparedTrays& trays)
{
    columns.variesInDensity = seedVaries(trays);
    const double area = facts.cost.layout.room.trayArea();
    std::vector<std::optional<double>> densities;
    for (const ComparedTray& tray : trays.trays) {
        const auto& seed = tray.record->tray.seed;
        columns.isDensityPartlyUnknown = columns.isDensityPartlyUnknown || !seed;
        densities.push_back(seed && area > 0 ? std::optional(inGrams(*seed) / area) : std::nullopt);
    }
    [[maybe_unused]] const Done added =
        columns.table.addNumbers(column::kDensity, std::move(densities));
    assert(added);
}

} // namespace

ComparisonColumns columnsOf(const SeasonFacts& facts, const ComparedTrays& trays)
{
    ComparisonColumns columns;
    std::vector<std::optional<double>> values;
    for (const ComparedTray& tray : trays.trays) {
        values.push_back(tray.value);
    }
    [[maybe_unused]] const Done added = columns.table.addNumbers(column::kValue, std::move(values));
    assert(added);
    addFactor(columns, column::kMedium, cellsOf(trays, [](const ComparedTray& tray) {
                  return static_cast<std::int64_t>(tray.medium);
              }));
    const LevelCells varieties =
        cellsOf(trays, [](const ComparedTray& tray) { return tray.record->tray.variety.value; });
    columns.varieties = varieties.count();
    addFactor(columns, column::kVariety, varieties);
    const LevelCells trials = cellsOf(trays, [](const ComparedTray& tray) {
        return tray.record->tray.trial.value_or(TrialId()).value;
    });
    columns.trialLevels = trials.count();
    columns.trials = columns.trialLevels - (trials.levels.count(0) > 0 ? 1 : 0);
    addFactor(columns, column::kTrial, trials);
    addFeeding(columns, trays);
    if (!isWithoutBlocks(columns, facts, trays)) {
        addBlocks(columns, trays);
    }
    addColumns(columns, trays);
    addDensity(columns, facts, trays);
    return columns;
}

} // namespace plumule
