#pragma once

#include "core/stats/verdict/media_answer.h"
#include "draw.h"

#include <vector>

namespace plumule::calibration {

using stats::SownTray;

enum class Errors
{
    Normal,   // of the logs
    StudentT, // of the logs, three degrees of freedom, of the same sd
    BadTray,  // one tray in twenty loses 40 %
    Additive  // of the grams
};

// The rules that a room's trays are made by. Spreads are of logs.
struct Rules
{
    std::size_t media = 4;
    std::size_t sowings = 8;
    std::size_t trays = 3;         // a cell
    std::size_t varietiesEach = 1; // in every sowing
    std::size_t varieties = 1;     // of the room; sowings take turns
    std::vector<double> varietyGrams{200};
    bool hasBlocks = true;
    double traySd = 0.07;
    double blockSd = 0.03;
    double columnSd = 0; // of places along the shelves; with it the trays stand in a Latin square
    double sowingSd = 0.10;
    double sowingDrift = 0;       // of all media, a sowing
    double sowingMemory = 0;      // correlation of a sowing's level with the one before
    double mediumSowing = 0;      // medium × sowing sd in tray sds
    double mediumMemory = 0;      // correlation of that from sowing to sowing
    std::vector<double> unsteady; // by medium, times mediumSowing; none: all 1
    double mediumVariety = 0;     // medium × variety sd in tray sds
    std::vector<double> spreads;  // by medium; instead of traySd
    std::vector<double> effects;  // of logs, by medium; none: all equal
    Errors errors = Errors::Normal;
};

// So many trays of a medium and variety in one sowing.
struct PlannedCell
{
    std::size_t medium = 0;
    std::size_t variety = 0;
    std::size_t trays = 0;
};
using SowingPlan = std::vector<PlannedCell>;

// A made room: its media's and varieties' true effects, and the sowings so far.
class Room
{
public:
    Room(const Rules& rules, Draw& draw);

    // All media, as the rules have it.
    [[nodiscard]] SowingPlan fullPlan() const;
    // Grams of every planned tray, replicate by replicate in the sowing's blocks.
    [[nodiscard]] std::vector<SownTray> sow(const SowingPlan& plan);
    [[nodiscard]] std::size_t sowings() const { return m_sowings; }

    // Of the logs; in a variety, and over all of the room's.
    [[nodiscard]] double effect(std::size_t medium, std::size_t variety) const;
    [[nodiscard]] double effect(std::size_t medium) const;
    // In a variety that is never grown.
    [[nodiscard]] double effectInNewVariety(std::size_t medium) const;
    // Something that happens to a medium in the next sowings, on top of all else.
    void shift(std::size_t medium, double by) { m_shift[medium] = by; }

private:
    [[nodiscard]] double error(std::size_t medium);
    void drawSowing();

    const Rules& m_rules;
    Draw& m_draw;
    std::size_t m_sowings = 0;
    double m_level = 0;
    std::vector<double> m_ofMedium; // medium × sowing, of this sowing
    std::vector<double> m_shift;
    std::vector<std::vector<double>> m_ofVariety; // variety × medium
    std::vector<double> m_ofNewVariety;           // by medium
};

// What was said against the truth. A difference between equals or of the wrong sign; a "same" (or
// "too small") of media that differ by the margin; an interval that holds the truth.
[[nodiscard]] bool isFalseDifference(stats::Verdict verdict, std::optional<double> difference,
                                     double truth);
[[nodiscard]] bool isFalseSame(stats::Verdict verdict, double truth, double margin);
[[nodiscard]] bool isCovered(std::optional<stats::Interval> interval, double truth);

} // namespace plumule::calibration
