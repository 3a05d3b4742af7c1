#include "core/stats/verdict/tray_residuals.h"

#include <cmath>
#include <tuple>

namespace plumule::stats {
namespace {

constexpr double kFollowed = 1 - 1e-9; // leverage from which on a residual is rounding

DesignRow rowOf(const SownTray& tray, double value)
{
    return {tray.medium, tray.variety, tray.block ? *tray.block + 1 : 0, value,
            tray.column ? *tray.column + 1 : 0};
}

std::map<std::size_t, std::vector<DesignRow>> ratioTrays(std::span<const SownTray> trays)
{
    struct Sums
    {
        double values = 0;
        double per = 0;
        int trays = 0;
    };
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, Sums> cells;
    const auto sumsOf = [&](const SownTray& tray) -> Sums& {
        return cells[{tray.sowing, tray.variety, tray.medium}];
    };
    for (const SownTray& tray : trays) {
        if (tray.value) {
            Sums& sums = sumsOf(tray);
            sums.values += *tray.value;
            sums.per += tray.per;
            ++sums.trays;
        }
    }
    std::map<std::size_t, std::vector<DesignRow>> result;
    for (const SownTray& tray : trays) {
        const Sums& sums = sumsOf(tray);
        if (tray.value && sums.values > 0 && sums.per > 0) {
            const double rest = *tray.value - sums.values / sums.per * tray.per;
            result[tray.sowing].push_back(rowOf(tray, rest * sums.trays / sums.values));
        }
    }
    return result;
}

} // namespace

std::map<std::size_t, std::vector<DesignRow>> scaledTrays(std::span<const SownTray> trays,
                                                          CellScale scale)
{
    if (scale == CellScale::LogOfRatio) {
        return ratioTrays(trays);
    }
    std::map<std::size_t, std::vector<DesignRow>> result;
    for (const SownTray& tray : trays) {
        if (tray.value && (scale == CellScale::Linear || *tray.value > 0)) {
            const double value = scale == CellScale::Log ? std::log(*tray.value) : *tray.value;
            result[tray.sowing].push_back(rowOf(tray, value));
        }
    }
    return result;
}

TrayResiduals trayResidualsOf(std::span<const SownTray> trays, CellScale scale)
{
    TrayResiduals result;
    for (auto& [sowing, rows] : scaledTrays(trays, scale)) {
        const MediaDesign design(std::move(rows));
        for (std::size_t row = 0; row < design.rows().size(); ++row) {
            if (design.leverage(row) < kFollowed) {
                const double value = design.residuals()(static_cast<Eigen::Index>(row));
                result.trays.push_back({sowing, design.rows()[row].medium, value});
            }
        }
        result.ss += design.residualSs();
        result.df += design.df();
    }
    return result;
}

} // namespace plumule::stats
