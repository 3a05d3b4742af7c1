#pragma once

#include "core/review/facts/response.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

// By what media are put together and answered for as one.
enum class Grouping
{
    Form,      // loose mix, mat, mesh
    Nutrients, // nutrient-bearing or inert
    Reuse,     // reusable or single-use
    Own        // the grower's own word for it
};
[[nodiscard]] const char* toText(Grouping grouping); // form, nutrients, reuse, own
bool fromText(std::string_view text, Grouping& grouping);

// What is asked of a season. Without a margin the trials' own holds, else 10 %.
struct ComparisonAsk
{
    Response response = Response::YieldPerTray;
    std::optional<int> day; // of growth, for heights; none: the day most trays were read on
    std::optional<double> marginPercent;
    std::optional<Grouping> groups;
    bool operator==(const ComparisonAsk&) const = default;
};

struct ComparedTray
{
    const SeasonRecord* record = nullptr; // not owned
    std::size_t medium = 0;               // index into ComparedTrays::media
    double value = 0;
    double cost = 0; // of the tray, with CostPerGram
};

// The trays that count and have a value, by medium and within it by tray, and those that failed.
struct ComparedTrays
{
    // Not owned; by id those with a value, then those of which all trays failed.
    std::vector<const Medium*> media;
    std::vector<ComparedTray> trays;
    std::vector<ComparedTray> failed; // thrown away: no value but what they cost
    int withoutValue = 0;             // they count, but what is asked is not on record
    std::optional<int> day;           // of the heights

    [[nodiscard]] double mean() const; // of all values; 0 without trays
    [[nodiscard]] std::size_t mediaWithValues() const;
};

[[nodiscard]] ComparedTrays comparedTrays(const SeasonFacts& facts, const SeasonFilter& filter,
                                          const ComparisonAsk& ask);

} // namespace plumule
