#pragma once

#include <cmath>
#include <cstdint>
#include <limits>

namespace plumule {

// Whole numbers that stop at the end of their range. Nothing in a room comes near it: what was
// mistyped stays beyond all bounds, where it is refused, instead of wrapping round to what is not.

template <class Whole = std::int64_t>
constexpr Whole cappedSum(Whole a, Whole b)
{
    Whole sum = 0;
    return !__builtin_add_overflow(a, b, &sum) ? sum
           : a < 0                             ? std::numeric_limits<Whole>::min()
                                               : std::numeric_limits<Whole>::max();
}

template <class Whole = std::int64_t>
constexpr Whole cappedDifference(Whole a, Whole b)
{
    Whole difference = 0;
    return !__builtin_sub_overflow(a, b, &difference) ? difference
           : a < 0                                    ? std::numeric_limits<Whole>::min()
                                                      : std::numeric_limits<Whole>::max();
}

constexpr std::int64_t cappedProduct(std::int64_t a, std::int64_t b)
{
    std::int64_t product = 0;
    return !__builtin_mul_overflow(a, b, &product) ? product
           : (a < 0) != (b < 0)                    ? std::numeric_limits<std::int64_t>::min()
                                                   : std::numeric_limits<std::int64_t>::max();
}

// To the nearest; what is no number counts as too large.
inline std::int64_t cappedRound(double value)
{
    constexpr double kEnd = 9.2e18; // a double that is within
    if (!(value < kEnd)) {
        return std::numeric_limits<std::int64_t>::max();
    }
    return value > -kEnd ? std::llround(value) : std::numeric_limits<std::int64_t>::min();
}

} // namespace plumule
