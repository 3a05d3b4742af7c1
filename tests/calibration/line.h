#pragma once

#include "draw.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace plumule::calibration {

// What one made data set came to.
struct Outcome
{
    bool isFalse = false;           // a difference between equals, a wrong sign, a false "same"
    std::optional<bool> isFound;    // what is true was said
    int intervals = 0;              // of the last look
    int covering = 0;               // of those, that hold the truth
    std::optional<bool> isOldFalse; // by a model that takes trays for replicates
};

// A room, how many sets are made of it, and what must hold in it, in percent.
struct Line
{
    std::string room;
    int sets = 0;
    std::function<Outcome(Draw&)> make;
    std::optional<double> falseAtMost = {};
    std::optional<double> falseExactly =
        {}; // where theory says so: within three Monte Carlo errors
    std::optional<double> foundAtLeast = {};
    std::optional<double> coverageAtLeast = {};
    std::optional<double> coverageAtMost = {};
    int shortSets = 0; // in the part that runs with the tests; 0: not in it

    [[nodiscard]] Line atMost(double percent) const;
    [[nodiscard]] Line exactly(double percent) const;
    [[nodiscard]] Line finds(double percent) const;
    [[nodiscard]] Line covers(double percent) const;
    [[nodiscard]] Line coversAtMost(double percent) const;
    [[nodiscard]] Line inShort(int setsThere) const;
};

struct Section
{
    std::string title;
    std::vector<Line> lines;
};

struct Tally
{
    int sets = 0;
    int isFalse = 0;
    int askedFound = 0;
    int found = 0;
    long intervals = 0;
    long covering = 0;
    int askedOld = 0;
    int oldFalse = 0;

    void add(const Outcome& outcome);
    void add(const Tally& other);
    [[nodiscard]] double falsePercent() const;
    [[nodiscard]] double falseError() const; // Monte Carlo standard error, in points
    [[nodiscard]] std::optional<double> foundPercent() const;
    [[nodiscard]] std::optional<double> coveragePercent() const;
    [[nodiscard]] std::optional<double> oldFalsePercent() const;
    // Monte Carlo standard error, in points, of a share of so many sets.
    [[nodiscard]] static double errorOf(double percent, double sets);
};

// So many sets, each from its own seed, on two threads; the same on every machine with one standard
// library.
[[nodiscard]] Tally run(const Line& line, int sets, std::uint64_t seed);

// All there is, in the order of the table.
[[nodiscard]] std::vector<Section> allSections();

} // namespace plumule::calibration
