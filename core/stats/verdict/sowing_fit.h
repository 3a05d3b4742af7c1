#pragma once

#include "core/stats/verdict/cells.h"
#include "core/stats/verdict/own_variance.h"

namespace plumule::stats {

// One sowing taken by itself, its trays the replicates.
class SowingFit
{
public:
    // All trays of that sowing.
    SowingFit(std::vector<SownTray> trays, CellScale scale);

    // Trays with a value.
    [[nodiscard]] int countOf(std::size_t medium) const;
    // Blocks, media and varieties taken off; for ratios the cells' ratios.
    [[nodiscard]] double residualSs() const { return m_residualSs; }
    [[nodiscard]] double df() const { return m_df; }

    struct Difference
    {
        double value = 0;
        double relativeVariance = 0; // in units of the trays' variance
    };
    // None where the sowing cannot tell it.
    [[nodiscard]] std::optional<Difference> difference(std::size_t a, std::size_t b) const;
    [[nodiscard]] std::optional<OwnVariance> ownVariance(std::size_t a, std::size_t b) const;
    // A number a medium, adjusted for blocks and varieties.
    [[nodiscard]] std::vector<Cell> cells(std::size_t part) const;

private:
    CellScale m_scale;
    std::size_t m_sowing = 0;
    std::map<std::size_t, int> m_counts;
    MediaDesign m_design;        // of trays; of ratios, of cells
    std::vector<double> m_share; // of the trays' variance, by row of the design
    double m_residualSs = 0;
    double m_df = 0;
};

} // namespace plumule::stats
