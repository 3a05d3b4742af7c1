#pragma once

#include "core/forecast/forecast_facts.h"
#include "core/stats/prediction/nested_prediction.h"

#include <map>

namespace plumule {

// A variety on a medium.
using ForecastCell = std::pair<VarietyId, MediumId>;

// How a cell's next tray is expected to come out, and from what.
struct CellPrediction
{
    stats::NestedPrediction next; // of log grams, or of days after the protocol's moment
    ForecastBasis basis;
};

// Trays that came to an end in a cell.
struct CellEnds
{
    int discarded = 0;
    int ended = 0;
};

// The past as it was known at a moment, as knownAt() has it, though nothing is copied; the facts
// must outlive it. What the cells' trays tell is read once and kept: not for two threads.
class KnownPast
{
public:
    KnownPast(const ForecastFacts& facts, Moment moment);
    explicit KnownPast(const ForecastFacts& facts)
        : KnownPast(facts, facts.now)
    {}

    [[nodiscard]] CellPrediction yield(const ForecastCell& cell) const;
    // Days by which the first cut comes after the moment that the protocol's lengths give, counted
    // from a stage of that kind on.
    [[nodiscard]] CellPrediction days(const ForecastCell& cell, Stage from) const;
    [[nodiscard]] CellEnds ends(const ForecastCell& cell) const;
    [[nodiscard]] CellEnds endsOfRoom() const { return m_endsOfRoom; }

private:
    using Trays = std::vector<const TrayFact*>;
    // What one tray told by a moment, or nothing.
    using Reading = std::optional<double> (*)(const TrayFact& tray, Stage from, Moment by);
    // What the trays of a cell told, by day of sowing.
    struct TrayTold
    {
        Date sownOn;
        Date cutOn;
        double value = 0;
    };
    struct Told
    {
        std::vector<TrayTold> trays;
        stats::NestedSquares squares; // where there are any
    };
    using ToldByCell = std::map<ForecastCell, Told>;

    [[nodiscard]] static stats::NestedValues nested(const std::vector<TrayTold>& trays);
    [[nodiscard]] ToldByCell told(const std::map<ForecastCell, Trays>& past, Reading reading,
                                  Stage from) const;
    [[nodiscard]] std::optional<CellPrediction>
    fromPast(const ToldByCell& past, const ForecastCell& cell, stats::NestedVariances memory) const;
    [[nodiscard]] const ToldByCell& toldOfYields() const;
    [[nodiscard]] const ToldByCell& toldOfDays(Stage from) const;
    [[nodiscard]] CellPrediction libraryYield(const ForecastCell& cell) const;

    const ForecastFacts& m_facts;
    Moment m_moment;
    Moment m_by;                              // what happened later is not known
    std::map<ForecastCell, Trays> m_cut;      // not set aside
    std::map<ForecastCell, Trays> m_complete; // those of sowings of which no tray is waited for
    std::map<ForecastCell, CellEnds> m_ends;
    CellEnds m_endsOfRoom;
    mutable std::optional<ToldByCell> m_yields;
    mutable std::map<Stage, ToldByCell> m_days;
};

} // namespace plumule
