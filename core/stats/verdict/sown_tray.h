#pragma once

#include <cstddef>
#include <optional>

namespace plumule::stats {

// How the trays of a cell (sowing × variety × medium) become its one number.
enum class CellScale
{
    Log,        // the mean of the logs of the values; a value that is not above 0 counts as missing
    LogOfRatio, // log(Σ value / Σ per), over trays with a value
    Linear      // the mean of the values: days, evenness
};
[[nodiscard]] inline bool isLog(CellScale scale)
{
    return scale != CellScale::Linear;
}

// A tray as the verdict sees it. Numbers of sowings, media, varieties, blocks and columns are the
// caller's, of any size; media are compared in the order of their numbers.
struct SownTray
{
    std::size_t sowing = 0; // a trial; outside trials all trays sown on one date
    std::size_t medium = 0;
    std::size_t variety = 0;
    std::optional<std::size_t> block;  // within its sowing
    std::optional<std::size_t> column; // its place along the shelf, in a Latin square
    // Grams for yield and yield per tray sown (there 0 for a failed tray), the cost for cost per
    // gram. None: failed or not measured.
    std::optional<double> value;
    double per = 1; // LogOfRatio only: 1 for yield per tray sown, grams for cost per gram
};

} // namespace plumule::stats
