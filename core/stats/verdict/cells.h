#pragma once

#include "core/stats/verdict/sown_tray.h"

#include <span>
#include <vector>

namespace plumule::stats {

struct VarietyCell
{
    std::size_t sowing = 0;
    std::size_t variety = 0;
    std::size_t medium = 0;
    double value = 0; // on the cell's scale
    int trays = 0;    // with a value
};

// Trays were sown and none gave a number.
struct EmptyCell
{
    std::size_t sowing = 0;
    std::size_t medium = 0;
    bool operator==(const EmptyCell&) const = default;
};

struct VarietyCells
{
    std::vector<VarietyCell> cells; // by sowing, variety, medium
    std::vector<EmptyCell> empty;   // no variety of the medium gave a number in that sowing
};
[[nodiscard]] VarietyCells varietyCellsOf(std::span<const SownTray> trays, CellScale scale);

// One number a sowing and medium, adjusted for variety.
struct Cell
{
    std::size_t sowing = 0; // the caller's number
    std::size_t part = 0;   // counts on where varieties don't connect the media of a sowing
    std::size_t medium = 0;
    double value = 0;
    int trays = 0;
};

// The media of a sowing adjusted by least squares on its variety × medium cells, unweighted. Media
// that no variety connects within a sowing stand in parts of their own, as if sown apart. By part,
// then medium.
[[nodiscard]] std::vector<Cell> mediumCells(std::span<const VarietyCell> cells);

} // namespace plumule::stats
