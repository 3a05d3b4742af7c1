#pragma once

#include "core/base/date.h"
#include "core/base/quantity.h"
#include "core/tray/tray.h"

#include <optional>
#include <string>
#include <vector>

namespace plumule {

// One weight of the past that the next is held against.
struct PastWeight
{
    TrayId tray;
    std::string code;
    VarietyId variety;
    int marker = 0; // of its medium
    Date on;
    Mass net;
    std::optional<Mass> seed;
    bool operator==(const PastWeight&) const = default;
};

// Where an expected weight comes from, the nearest first.
enum class RangeSource
{
    VarietyOnMedium, // trays of that variety on that medium
    SameTrial,       // trays of its trial, whatever they grew on
    Variety,         // trays of that variety on any medium
    RoomBySeed,      // what the room's other varieties gave per gram of seed
    Library,         // a wide bound, from published or remembered yields
    Medium           // of a residue: trays on that medium
};

// What a cut, or a residue, should weigh.
struct ExpectedRange
{
    RangeSource from = RangeSource::Library;
    std::vector<PastWeight> past; // that it is worked out from, newest first
    std::string source;           // of a bound from the library: the title read, or "from memory"
    std::optional<Mass> low;
    std::optional<Mass> high;

    [[nodiscard]] bool isKnown() const { return low && high; }
    [[nodiscard]] bool holds(Mass net) const { return !isKnown() || (*low <= net && net <= *high); }
};

inline constexpr std::size_t kFewestForARange = 3;

// exp(mean ± t·s·√(1 + 1/n)) of the logarithms: the 95 % prediction interval of one more weight
// (e.g. NIST/SEMATECH e-Handbook, prediction intervals), with weights taken as lognormal; at least
// a tenth to either side. None under three weights, nor where it is so wide that ten times its
// middle lies within.
[[nodiscard]] ExpectedRange rangeFrom(RangeSource from, std::vector<PastWeight> past);

// The same of the means per gram of seed of three other varieties or more, for a tray of that much
// seed. Weights whose seed is not known, or of the variety itself, don't count.
[[nodiscard]] ExpectedRange rangeBySeed(std::vector<PastWeight> past, VarietyId variety, Mass seed);

} // namespace plumule
