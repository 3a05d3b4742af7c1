#pragma once

#include "core/stats/verdict/media_design.h"
#include "core/stats/verdict/sown_tray.h"

#include <map>
#include <span>

namespace plumule::stats {

// By sowing, the trays that have a value, on the scale. On that of ratios a tray stands for
// (value − R·per)/mean value, R and mean of its sowing × variety × medium: what it adds to log R.
[[nodiscard]] std::map<std::size_t, std::vector<DesignRow>>
scaledTrays(std::span<const SownTray> trays, CellScale scale);

struct TrayResidual
{
    std::size_t sowing = 0;
    std::size_t medium = 0;
    double value = 0;
};

// What trays are apart from block, column, medium and variety of their sowing, on the scale. Trays
// that the fit follows whatever they are (alone in their cell) are left out.
struct TrayResiduals
{
    std::vector<TrayResidual> trays;
    double ss = 0;
    double df = 0;

    [[nodiscard]] std::optional<double> variance() const
    {
        return df > 0 ? std::optional(ss / df) : std::nullopt;
    }
};
[[nodiscard]] TrayResiduals trayResidualsOf(std::span<const SownTray> trays, CellScale scale);

} // namespace plumule::stats
