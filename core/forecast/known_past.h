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

// The past of facts as they are; what must not be known has been taken out of them before. The
// facts must outlive it.
class KnownPast
{
public:
    explicit KnownPast(const ForecastFacts& facts);

    [[nodiscard]] CellPrediction yield(const ForecastCell& cell) const;
    // Days by which the first cut comes after the moment that the protocol's lengths give, counted
    // from a stage of that kind on.
    [[nodiscard]] CellPrediction days(const ForecastCell& cell, Stage from) const;
    [[nodiscard]] CellEnds ends(const ForecastCell& cell) const;
    [[nodiscard]] CellEnds endsOfRoom() const { return m_endsOfRoom; }

private:
    using Trays = std::vector<const TrayFact*>;
    // What one tray tells, or nothing.
    using Reading = std::optional<double> (*)(const TrayFact& tray, Stage from);

    [[nodiscard]] std::optional<CellPrediction> fromPast(const std::map<ForecastCell, Trays>& past,
                                                         const ForecastCell& cell, Reading reading,
                                                         Stage from,
                                                         stats::NestedVariances memory) const;
    [[nodiscard]] CellPrediction libraryYield(const ForecastCell& cell) const;

    const ForecastFacts& m_facts;
    std::map<ForecastCell, Trays> m_cut;      // not set aside
    std::map<ForecastCell, Trays> m_complete; // those of sowings of which no tray is waited for
    std::map<ForecastCell, CellEnds> m_ends;
    CellEnds m_endsOfRoom;
};

} // namespace plumule
