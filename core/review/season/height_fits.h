#pragma once

#include "core/review/facts/season_facts.h"
#include "core/stats/growth/tray_growth.h"

namespace plumule {

// A tray's mean height on a day it was read.
struct HeightReading
{
    TrayId tray;
    std::string code;
    int day = 1;
    double height = 0; // mm above the medium's surface
};

// An estimate with its 95 % interval, where there is one.
struct FittedNumber
{
    double value = 0;
    std::optional<double> lower;
    std::optional<double> upper;
};

struct HeightAt
{
    double day = 1;
    double fit = 0;   // mm
    double lower = 0; // as `fit` where there is no interval
    double upper = 0;
};

// The day on which the curve reaches a height.
struct DayOfHeight
{
    double height = 0; // mm
    FittedNumber day;
};

// The growth curve of one variety on one medium: the logistic, Gompertz or Richards curve of least
// AICc through its trays' daily means. Intervals rest on how trays repeat, from three sowings on on
// how sowings do (stats::trayGrowth); under three trays there are none. What the curve says of days
// after the last reading is left out.
struct HeightFit
{
    Medium medium;
    VarietyId varietyId;
    std::string variety;
    int trays = 0;
    int sowings = 0;
    stats::GrowthReplicate replicate = stats::GrowthReplicate::Tray;
    std::vector<HeightReading> readings;    // by tray, then day
    std::string curve;                      // "logistic", "gompertz", "richards"; empty: none fits
    std::optional<Error> why;               // then
    std::vector<HeightAt> band;             // from the first day read to the last, by half days
    FittedNumber topRate;                   // mm a day
    std::optional<FittedNumber> fullHeight; // mm; where 90 % of it was reached by the last reading
    std::optional<FittedNumber> dayAt90;    // then: the day of it
    // To compare media by: the tallest whole centimetre that all media of the variety with a curve
    // reach by 90 % of their full height and by their last reading.
    std::optional<DayOfHeight> sharedHeight;
};

// Of the trays that count; by variety, then medium. Nothing without heights.
[[nodiscard]] std::vector<HeightFit> heightFits(const SeasonFacts& facts,
                                                const SeasonFilter& filter);

} // namespace plumule
