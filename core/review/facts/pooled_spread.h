#pragma once

#include "core/review/facts/season_facts.h"

namespace plumule {

// Fewer degrees of freedom tell less of a spread than the default of 10 % does.
inline constexpr double kLeastPooledDf = 4;
// Coefficient of variation between like trays where nothing in the room is replicated.
inline constexpr double kDefaultSpread = 0.1;

enum class SpreadFrom
{
    Room,   // pooled over the room's trays of like medium, variety and trial, as a share
    Default // kDefaultSpread of the mean
};

struct PooledSpread
{
    double sd = 0; // in the values' unit, or of each as a share of its cell's mean
    double df = 0;
    int trays = 0; // of cells with two or more
};

// Values of like trays: of one medium, variety and trial; outside trials, of one month of sowing.
class SpreadCells
{
public:
    void add(const PastYield& tray, double value);

    // None under kLeastPooledDf, or where all are alike.
    [[nodiscard]] std::optional<PooledSpread> ofValues() const;
    // The pooled coefficient of variation, over cells with a mean above 0.
    [[nodiscard]] std::optional<PooledSpread> ofShares() const;

private:
    enum class Unit
    {
        Values,
        Shares, // of the cell's mean
    };
    [[nodiscard]] std::optional<PooledSpread> pooled(Unit unit) const;

    std::map<std::tuple<MediumId, VarietyId, TrialId, int>, std::vector<double>> m_cells;
};

} // namespace plumule
