#pragma once

#include "core/base/capped.h"

#include <compare>
#include <cstdint>

namespace plumule {

// An exact sum of the room's one currency, counted in 1/10 000 of its unit.
class Money
{
public:
    constexpr Money() = default;
    static constexpr Money ofCount(std::int64_t count)
    {
        Money money;
        money.m_count = count;
        return money;
    }
    [[nodiscard]] constexpr std::int64_t count() const { return m_count; }
    constexpr auto operator<=>(const Money&) const = default;

    constexpr Money& operator+=(Money other)
    {
        m_count = cappedSum(m_count, other.m_count);
        return *this;
    }
    friend constexpr Money operator+(Money a, Money b) { return a += b; }
    friend constexpr Money operator-(Money a, Money b)
    {
        return ofCount(cappedDifference(a.m_count, b.m_count));
    }
    // A share of the sum, rounded to the nearest 1/10 000.
    [[nodiscard]] Money scaledBy(double factor) const
    {
        return ofCount(cappedRound(static_cast<double>(m_count) * factor));
    }

private:
    std::int64_t m_count = 0;
};

inline Money money(double units)
{
    return Money::ofCount(cappedRound(units * 1e4));
}
constexpr double inUnits(Money sum)
{
    return static_cast<double>(sum.count()) / 1e4;
}

} // namespace plumule
