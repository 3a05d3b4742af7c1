#pragma once

#include "core/review/facts/season_facts.h"

namespace plumule {

// What is compared, one at a time.
enum class Response
{
    YieldPerTray,  // g
    YieldPerArea,  // g/m²
    YieldPerSeed,  // g/g
    YieldPerDay,   // g a day in place
    CostPerGram,   // currency units / g: sum of costs over sum of grams
    HeightOnDay,   // mm above the medium's surface
    DaysToHarvest, // day of growth of the last cut
    Residue,       // g, wet
    Evenness,      // %: variation of a tray's own height readings, on its last day with three
    Work           // min of the labour tasks, with the washing of a piece
};
// A stable key, as axes have it: "yield", "yield_per_area", …
[[nodiscard]] const char* toText(Response response);

// What is asked of a season. Without margins the trials' own hold, else 10 % of the grand mean.
struct ComparisonAsk
{
    Response response = Response::YieldPerTray;
    std::optional<int> day;       // of growth, for heights; none: the day most trays were read on
    std::optional<double> margin; // in the response's unit
    std::optional<Mass> marginPerTray; // of yield or residue; ignored where it has no meaning
    bool operator==(const ComparisonAsk&) const = default;
};

struct ComparedTray
{
    const SeasonRecord* record = nullptr; // not owned
    std::size_t medium = 0;               // index into ComparedTrays::media
    double value = 0;
    double cost = 0; // of the tray, with CostPerGram
};

// The trays that count and have a value, by medium and within it by tray.
struct ComparedTrays
{
    std::vector<const Medium*> media; // not owned; by id
    std::vector<ComparedTray> trays;
    int withoutValue = 0;   // they count, but what is asked is not on record
    std::optional<int> day; // of the heights

    [[nodiscard]] int countOf(std::size_t medium) const;
    [[nodiscard]] double mean() const; // of all values; 0 without trays
};

[[nodiscard]] ComparedTrays comparedTrays(const SeasonFacts& facts, const SeasonFilter& filter,
                                          const ComparisonAsk& ask);

} // namespace plumule
