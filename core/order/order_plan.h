#pragma once

#include "core/forecast/forecast_sums.h"
#include "core/order/cut_shares.h"
#include "core/tray/stage_plan.h"

namespace plumule {

// A promise is planned for so that it is met 9 times in 10.
inline constexpr double kChanceWanted = 0.9;
// More are not proposed for one promise.
inline constexpr int kMostTraysProposed = 200;

// A growing tray that stands for a promise.
struct GrowingFor
{
    TrayId tray;
    std::string code;
    MediumId medium;
    Date due;
    Mass expected; // half of such trays give less
    bool operator==(const GrowingFor&) const = default;
};

// What comes of so many trays sown, beside what was cut and grows: the chance that the promise is
// met, and the sum of all, its mean and 8 in 10 from low to high.
struct ChanceOfTrays
{
    int trays = 0;
    double chance = 0; // 0 to 1
    Mass low;
    Mass mean;
    Mass high;
};

// Trays to sow for a promise, and what there is for them once the sowings before it are done.
struct SowingNeed
{
    int trays = 0; // the fewest; kMostTraysProposed where even those are too few
    Medium medium;
    YieldModel model;    // of trays of that variety on that medium
    SowingTimes times;   // back from the morning of the promised day, by the protocol
    bool isLate = false; // these have passed, so that it can't be sown for that day any more
    int freePlaces = 0;  // at the fullest from sowing to the promised day
    std::optional<int> freePieces; // clean ones of a reusable medium
    std::optional<Mass> seed;      // none: the variety has no weight of seed
    std::optional<Mass> seedLeft;  // of lots that were weighed; none: of no lot is it known
};

// One promise to come.
struct OrderLine
{
    Promise promise;
    std::string variety;
    std::vector<CutShare> cut;
    std::vector<GrowingFor> growing;
    std::vector<ChanceOfTrays> chances; // round the number of trays to sow
    ChanceOfTrays planned;              // with those, or, where it is too late, without any
    std::optional<SowingNeed> sowing;   // none: enough is cut and grows, or no medium is known
};

// Everything that promises are planned from.
struct OrderFacts
{
    Moment now;
    int morningMinute = 0;         // of harvests
    std::vector<Promise> promises; // to come
    SharesByPromise cuts;
    ForecastFacts forecast;
    ForecastReport report;
    std::map<VarietyId, Protocol> protocols;
    std::map<MediumId, Medium> media;
    std::map<VarietyId, MediumId> usualMedia;
    std::map<VarietyId, Mass> seedLeft;
    std::map<MediumId, int> freePieces; // of reusable media
    int places = 0;
    std::vector<std::optional<Date>> leaving; // when each place that is taken comes free; none: it
                                              // is not known
};

// Promises by key. Growing trays that are likely due on the promised day or up to kDaysKept before
// it stand for the oldest promise first, as few as meet it; what is over stands for the next.
[[nodiscard]] std::vector<OrderLine> planOrders(const OrderFacts& facts);

} // namespace plumule
