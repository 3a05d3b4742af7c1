#include "core/review/fairness/aspect_counts.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace plumule {
namespace {

constexpr double kUnlikeShare = 0.1;

using LevelTrays = std::map<std::int64_t, int>;

int traysIn(const LevelTrays& levels)
{
    int trays = 0;
    for (const auto& [level, count] : levels) {
        trays += count;
    }
    return trays;
}

bool shareALevel(const LevelTrays& a, const LevelTrays& b)
{
    return std::any_of(a.begin(), a.end(),
                       [&](const auto& entry) { return b.count(entry.first) > 0; });
}

bool isRepeated(const LevelTrays& levels)
{
    return static_cast<int>(levels.size()) <= std::max(1, traysIn(levels) / 2);
}

// Half the sum of the differences of shares: 0 alike, 1 nothing in common.
double distanceOf(const LevelTrays& a, const LevelTrays& b)
{
    const double nA = traysIn(a);
    const double nB = traysIn(b);
    double sum = 0;
    for (const auto& [level, count] : a) {
        const auto other = b.find(level);
        sum += std::abs(count / nA - (other == b.end() ? 0 : other->second / nB));
    }
    for (const auto& [level, count] : b) {
        sum += a.count(level) > 0 ? 0 : count / nB;
    }
    return sum / 2;
}

bool isWorse(const Unlikeness& a, const Unlikeness& b)
{
    return std::pair(a.confounding == Confounding::Fully, a.distance) >
           std::pair(b.confounding == Confounding::Fully, b.distance);
}

} // namespace

AspectCounts::AspectCounts(std::vector<AspectReading> readings)
{
    std::sort(readings.begin(), readings.end());
    for (const AspectReading& reading : readings) {
        if (m_counts.empty() || m_counts.back().first != reading) {
            m_counts.emplace_back(reading, 0);
        }
        ++m_counts.back().second;
    }
}

Unlikeness AspectCounts::compare(const ByStratum& strata, std::size_t a, std::size_t b)
{
    Unlikeness result;
    result.worst = std::pair(a, b);
    double weights = 0;
    bool isFully = true;
    for (const auto& [stratum, media] : strata) {
        const auto ofA = media.find(a);
        const auto ofB = media.find(b);
        if (ofA == media.end() || ofB == media.end()) {
            continue;
        }
        const double weight = traysIn(ofA->second) + traysIn(ofB->second);
        result.distance += weight * distanceOf(ofA->second, ofB->second);
        weights += weight;
        isFully = isFully && !shareALevel(ofA->second, ofB->second) && isRepeated(ofA->second) &&
                  isRepeated(ofB->second);
    }
    if (weights <= 0) {
        return {};
    }
    result.distance /= weights;
    result.confounding = isFully                          ? Confounding::Fully
                         : result.distance > kUnlikeShare ? Confounding::Partly
                                                          : Confounding::Alike;
    return result;
}

Unlikeness AspectCounts::worstOf(const ByStratum& strata, std::size_t media)
{
    Unlikeness worst;
    for (std::size_t a = 0; a < media; ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            const Unlikeness pair = compare(strata, a, b);
            if (isWorse(pair, worst)) {
                worst = pair;
            }
        }
    }
    return worst;
}

AspectCounts::ByStratum AspectCounts::byStratum() const
{
    ByStratum strata;
    for (const auto& [reading, count] : m_counts) {
        strata[reading.stratum][reading.medium][reading.level] += count;
    }
    return strata;
}

Unlikeness AspectCounts::worstPair(std::size_t media) const
{
    return worstOf(byStratum(), media);
}

std::vector<std::pair<std::size_t, std::size_t>> AspectCounts::fullyPairs(std::size_t media) const
{
    const ByStratum strata = byStratum();
    std::vector<std::pair<std::size_t, std::size_t>> fully;
    for (std::size_t a = 0; a < media; ++a) {
        for (std::size_t b = a + 1; b < media; ++b) {
            if (compare(strata, a, b).confounding == Confounding::Fully) {
                fully.emplace_back(a, b);
            }
        }
    }
    return fully;
}

std::vector<std::int64_t> AspectCounts::fullyIn(std::size_t media) const
{
    std::map<std::int64_t, ByStratum> trials;
    for (const auto& [reading, count] : m_counts) {
        if (reading.trial != 0) {
            trials[reading.trial][reading.stratum][reading.medium][reading.level] += count;
        }
    }
    std::vector<std::int64_t> fully;
    for (const auto& [trial, strata] : trials) {
        if (worstOf(strata, media).confounding == Confounding::Fully) {
            fully.push_back(trial);
        }
    }
    return fully;
}

std::map<std::int64_t, int> AspectCounts::levelsOf(std::size_t medium) const
{
    Levels levels;
    for (const auto& [reading, count] : m_counts) {
        if (reading.medium == medium) {
            levels[reading.level] += count;
        }
    }
    return levels;
}

void AspectRanges::Range::add(const Range& other)
{
    low = n == 0 ? other.low : std::min(low, other.low);
    high = n == 0 ? other.high : std::max(high, other.high);
    n += other.n;
    sum += other.sum;
}

void AspectRanges::add(std::int64_t stratum, std::size_t medium, double value)
{
    m_ranges[stratum][medium].add({1, value, value, value});
}

Unlikeness AspectRanges::compare(std::size_t a, std::size_t b,
                                 const AspectTolerance& tolerance) const
{
    Unlikeness result;
    result.worst = std::pair(a, b);
    int shared = 0;
    bool isFully = true;
    for (const auto& [stratum, ranges] : m_ranges) {
        const auto ofA = ranges.find(a);
        const auto ofB = ranges.find(b);
        if (ofA == ranges.end() || ofB == ranges.end()) {
            continue;
        }
        const Range& one = ofA->second;
        const Range& two = ofB->second;
        const double least =
            std::max(tolerance.absolute, tolerance.relative * std::abs(two.mean()));
        const double apart = std::abs(one.mean() - two.mean());
        ++shared;
        isFully = isFully && apart > least && (one.low > two.high || two.low > one.high);
        result.distance = std::max(result.distance, apart / least);
    }
    result.confounding = shared > 0 && isFully ? Confounding::Fully
                         : result.distance > 1 ? Confounding::Partly
                                               : Confounding::Alike;
    return result;
}

Unlikeness AspectRanges::worstPair(std::size_t media, const AspectTolerance& tolerance) const
{
    Unlikeness worst;
    for (std::size_t a = 0; a < media; ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            const Unlikeness pair = compare(a, b, tolerance);
            if (isWorse(pair, worst)) {
                worst = pair;
            }
        }
    }
    return worst;
}

std::optional<AspectNumbers> AspectRanges::numbersOf(std::size_t medium) const
{
    Range all;
    for (const auto& [stratum, ranges] : m_ranges) {
        if (const auto found = ranges.find(medium); found != ranges.end()) {
            all.add(found->second);
        }
    }
    return all.n == 0 ? std::nullopt : std::optional(AspectNumbers{all.mean(), all.low, all.high});
}

} // namespace plumule
