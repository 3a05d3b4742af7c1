#pragma once

#include "core/review/facts/season_facts.h"

namespace plumule {

// A tray's mean height on a day it was read.
struct HeightReading
{
    TrayId tray;
    std::string code;
    int day = 1;
    double height = 0; // mm above the medium's surface
};

// An estimate with its 95 % interval.
struct FittedNumber
{
    double value = 0;
    double lower = 0;
    double upper = 0;
};

struct HeightAt
{
    double day = 1;
    double fit = 0; // mm
    double lower = 0;
    double upper = 0;
};

// The day on which the curve reaches a height.
struct DayOfHeight
{
    double height = 0; // mm
    FittedNumber day;
};

// The growth curve of one variety on one medium: the logistic, Gompertz or Richards curve of least
// AICc through its trays' daily means, with the 95 % band of the mean. Readings of one tray count
// as if they were of several, so that the band is narrow where few trays were read often.
struct HeightFit
{
    Medium medium;
    VarietyId varietyId;
    std::string variety;
    int trays = 0;
    std::vector<HeightReading> readings; // by tray, then day
    std::string curve;                   // "logistic", "gompertz", "richards"; empty: none fits
    std::optional<Error> why;            // then
    std::vector<HeightAt> band;          // from the first day read to the last, by half days
    FittedNumber fullHeight;             // mm
    FittedNumber topRate;                // mm a day
    FittedNumber dayAt90;                // when 90 % of full height is reached
    // To compare media by: the tallest whole centimetre that all media of the variety with a curve
    // reach by 90 % of their full height.
    std::optional<DayOfHeight> sharedHeight;
    bool isFullHeightSeen = false; // else it is foretold
};

// Of the trays that count; by variety, then medium. Nothing without heights.
[[nodiscard]] std::vector<HeightFit> heightFits(const SeasonFacts& facts,
                                                const SeasonFilter& filter);

} // namespace plumule
