#pragma once

#include "core/harvest/harvest.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

// What is to come, as far as it can be told on a day: a growing tray's harvest, and what trays of a
// variety on a medium give. Harvest and yield are of a tray's first cut. All yields are in grams,
// all variances of their natural logarithms.
namespace plumule {

// Where a forecast comes from.
enum class ForecastSource
{
    OwnPast, // kFewestForOwnPast trays or more of this room
    Library  // the starter library's value, or the protocol's days; never scored
};
[[nodiscard]] const char* toText(ForecastSource source); // own_past, library

inline constexpr int kFewestForOwnPast = 5; // trays of that variety on that medium
inline constexpr double kForecastLevel = 0.8;

// Which part of the past was used.
enum class PastSpan
{
    Season, // cut within 60 days of the same time of year, this year or earlier
    All
};
[[nodiscard]] const char* toText(PastSpan span); // season, all

// What a forecast was made from.
struct ForecastBasis
{
    ForecastSource from = ForecastSource::Library;
    PastSpan span = PastSpan::All;
    int trays = 0;      // of that variety on that medium on record, used or not
    int sowings = 0;    // days on which they were sown
    std::string source; // of the library: the title that was read, or "from memory"
    double widened = 1; // the interval is that many times as wide, since it scored badly
    bool operator==(const ForecastBasis&) const = default;
};

// What trays of a variety on a medium give, known on a day; sums of trays are worked out from it
// (forecast_total.h). Trays of one sowing share its luck, so it has two variances.
struct YieldModel
{
    VarietyId variety;
    MediumId medium;
    ForecastBasis basis;
    double logMean = 0;        // of a tray that is harvested
    double meanVariance = 0;   // of that mean, as an estimate
    double sowingVariance = 0; // between sowings
    double trayVariance = 0;   // between trays of one sowing
    double degreesOfFreedom = 0;
    // Trays thrown away, of those that came to an end: this room's own of that variety on that
    // medium, drawn to the room's rate and, with few, to the 1 in 20 of common practice (no
    // source).
    int discarded = 0;
    int ended = 0;
    double discardRate = 0.05; // the mean of a beta distribution
    double discardWeight = 20; // trays that it is worth: alpha = rate · weight
    bool operator==(const YieldModel&) const = default;
};

// The interval that 8 in 10 fall into, as many below it as above.
struct YieldForecast
{
    Mass low;
    Mass middle; // half of them below
    Mass high;
    ForecastBasis basis;
    bool operator==(const YieldForecast&) const = default;

    [[nodiscard]] bool holds(Mass net) const { return low <= net && net <= high; }
};

// Whole days, the fewest that hold 8 in 10 or more.
struct DayForecast
{
    Date low;
    Date middle; // the likeliest
    Date high;
    double chance = 0; // that it falls from low to high, 0 to 1
    Date asPlanned;    // by the protocol, from the stages as they began
    ForecastBasis basis;
    bool operator==(const DayForecast&) const = default;

    [[nodiscard]] bool holds(Date on) const { return low <= on && on <= high; }
};

// A growing tray that was not cut yet.
struct TrayForecast
{
    TrayId tray;
    std::string code;
    VarietyId variety;
    MediumId medium;
    Date sownOn;
    std::optional<DayForecast> day; // none of a tray that was brought in without stages
    YieldForecast yield;            // if it is harvested
    bool operator==(const TrayForecast&) const = default;
};

// The forecast of a tray that was cut since, made of what was known on the day it was sown, and
// what came true. Before any widening.
struct ScoredForecast
{
    TrayForecast forecast;
    Date cutOn;
    Mass weighed;
    bool operator==(const ScoredForecast&) const = default;

    [[nodiscard]] bool isYieldInside() const { return forecast.yield.holds(weighed); }
    [[nodiscard]] bool isYieldScored() const
    {
        return forecast.yield.basis.from == ForecastSource::OwnPast;
    }
    [[nodiscard]] bool isDayScored() const
    {
        return forecast.day && forecast.day->basis.from == ForecastSource::OwnPast;
    }
    [[nodiscard]] bool isDayInside() const { return forecast.day && forecast.day->holds(cutOn); }
};

// How the forecasts of one variety's latest harvests came out.
struct VarietyScore
{
    VarietyId variety; // not stored: of all varieties together
    int harvests = 0;  // whose yield was foretold from the room's past
    int yieldInside = 0;
    int days = 0; // harvests whose day was
    int dayInside = 0;
    double yieldWidened = 1; // over 1: scored badly, and drawn that many times as wide
    double dayWidened = 1;
    bool operator==(const VarietyScore&) const = default;
};

} // namespace plumule
