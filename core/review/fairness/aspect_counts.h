#pragma once

#include "core/review/fairness/fairness.h"

#include <cstdint>

namespace plumule {

// A tray's level of an aspect. Levels are compared within a stratum only: seed lots within their
// variety.
struct AspectReading
{
    std::int64_t trial = 0; // 0: outside any
    std::int64_t stratum = 0;
    std::size_t medium = 0;
    std::int64_t level = 0;
    auto operator<=>(const AspectReading&) const = default;
};

// How unlike two media are.
struct Unlikeness
{
    Confounding confounding = Confounding::Alike;
    double distance = 0; // of their shares, 0 to 1
    std::optional<std::pair<std::size_t, std::size_t>> worst;
};

// Trays counted by level. Fully confounded are two media that share a stratum but in none of them a
// level, where levels are fewer than half the trays: a shelf of its own for each tray tells nothing
// of shelves. Partly from a tenth of the trays on.
class AspectCounts
{
public:
    explicit AspectCounts(std::vector<AspectReading> readings);

    [[nodiscard]] Unlikeness worstPair(std::size_t media) const;
    // Fully confounded pairs of media, the earlier first.
    [[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>>
    fullyPairs(std::size_t media) const;
    // Trials within which two media are fully confounded.
    [[nodiscard]] std::vector<std::int64_t> fullyIn(std::size_t media) const;
    // Levels of one medium over all strata and trials, with their trays.
    [[nodiscard]] std::map<std::int64_t, int> levelsOf(std::size_t medium) const;

private:
    using Levels = std::map<std::int64_t, int>;
    using ByStratum = std::map<std::int64_t, std::map<std::size_t, Levels>>;

    [[nodiscard]] ByStratum byStratum() const;
    [[nodiscard]] static Unlikeness worstOf(const ByStratum& strata, std::size_t media);
    [[nodiscard]] static Unlikeness compare(const ByStratum& strata, std::size_t a, std::size_t b);

    std::vector<std::pair<AspectReading, int>> m_counts;
};

// Means that differ by no more are alike: the larger of the two.
struct AspectTolerance
{
    double relative = 0;
    double absolute = 0;
};

// Numbers of an aspect by stratum and medium. Fully confounded where ranges never meet in a stratum
// that both share, partly where means differ by more than the tolerance.
class AspectRanges
{
public:
    void add(std::int64_t stratum, std::size_t medium, double value);

    [[nodiscard]] Unlikeness worstPair(std::size_t media, const AspectTolerance& tolerance) const;
    [[nodiscard]] std::optional<AspectNumbers> numbersOf(std::size_t medium) const;

private:
    struct Range
    {
        int n = 0;
        double sum = 0;
        double low = 0;
        double high = 0;

        [[nodiscard]] double mean() const { return sum / n; }
        void add(const Range& other);
    };

    [[nodiscard]] Unlikeness compare(std::size_t a, std::size_t b,
                                     const AspectTolerance& tolerance) const;

    std::map<std::int64_t, std::map<std::size_t, Range>> m_ranges;
};

} // namespace plumule
