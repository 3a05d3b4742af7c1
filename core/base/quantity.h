#pragma once

#include "core/base/capped.h"

#include <compare>
#include <cstdint>

namespace plumule {

// An exact amount of one dimension, counted in a small unit. Unlike dimensions do not add.
template <class Dimension>
class Quantity
{
public:
    constexpr Quantity() = default;

    static constexpr Quantity ofCount(std::int64_t count)
    {
        Quantity quantity;
        quantity.m_count = count;
        return quantity;
    }

    // Rounds to the nearest count.
    static Quantity ofUnits(double units, double countsPerUnit)
    {
        return ofCount(cappedRound(units * countsPerUnit));
    }

    [[nodiscard]] constexpr std::int64_t count() const { return m_count; }
    constexpr auto operator<=>(const Quantity&) const = default;

    constexpr Quantity& operator+=(Quantity other)
    {
        m_count = cappedSum(m_count, other.m_count);
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other)
    {
        m_count = cappedDifference(m_count, other.m_count);
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
    friend constexpr Quantity operator-(Quantity a) { return Quantity() - a; }
    friend constexpr Quantity operator*(Quantity a, std::int64_t times)
    {
        return ofCount(cappedProduct(a.m_count, times));
    }
    // The plain ratio of two amounts of one dimension.
    friend constexpr double operator/(Quantity a, Quantity b)
    {
        return static_cast<double>(a.m_count) / static_cast<double>(b.m_count);
    }
    // A share of the amount, rounded to the nearest count.
    [[nodiscard]] Quantity scaledBy(double factor) const
    {
        return ofCount(cappedRound(static_cast<double>(m_count) * factor));
    }

private:
    std::int64_t m_count = 0;
};

using Mass = Quantity<struct MassDimension>;     // mg
using Volume = Quantity<struct VolumeDimension>; // µL
using Length = Quantity<struct LengthDimension>; // µm

// International avoirdupois and US customary units; the definitions are those of NIST SP 811,
// Appendix B.
inline constexpr double kGramsPerOunce = 28.349523125;
inline constexpr double kGramsPerPound = 453.59237;
inline constexpr double kMillilitresPerUsGallon = 3785.411784;
inline constexpr double kMillilitresPerUsFluidOunce = 29.5735295625;
inline constexpr double kMillilitresPerUsCup = 236.5882365;
inline constexpr double kMillimetresPerInch = 25.4;

constexpr Mass milligrams(std::int64_t count)
{
    return Mass::ofCount(count);
}
inline Mass grams(double value)
{
    return Mass::ofUnits(value, 1e3);
}
inline Mass ounces(double value)
{
    return grams(value * kGramsPerOunce);
}
inline Mass pounds(double value)
{
    return grams(value * kGramsPerPound);
}
constexpr double inGrams(Mass mass)
{
    return static_cast<double>(mass.count()) / 1e3;
}
constexpr double inOunces(Mass mass)
{
    return inGrams(mass) / kGramsPerOunce;
}

constexpr Volume microlitres(std::int64_t count)
{
    return Volume::ofCount(count);
}
inline Volume millilitres(double value)
{
    return Volume::ofUnits(value, 1e3);
}
inline Volume litres(double value)
{
    return Volume::ofUnits(value, 1e6);
}
inline Volume usFluidOunces(double value)
{
    return millilitres(value * kMillilitresPerUsFluidOunce);
}
inline Volume usCups(double value)
{
    return millilitres(value * kMillilitresPerUsCup);
}
inline Volume usGallons(double value)
{
    return millilitres(value * kMillilitresPerUsGallon);
}
constexpr double inMillilitres(Volume volume)
{
    return static_cast<double>(volume.count()) / 1e3;
}
constexpr double inLitres(Volume volume)
{
    return static_cast<double>(volume.count()) / 1e6;
}
constexpr double inUsFluidOunces(Volume volume)
{
    return inMillilitres(volume) / kMillilitresPerUsFluidOunce;
}
constexpr double inUsGallons(Volume volume)
{
    return inMillilitres(volume) / kMillilitresPerUsGallon;
}

constexpr Length micrometres(std::int64_t count)
{
    return Length::ofCount(count);
}
inline Length millimetres(double value)
{
    return Length::ofUnits(value, 1e3);
}
inline Length inches(double value)
{
    return millimetres(value * kMillimetresPerInch);
}
constexpr double inMillimetres(Length length)
{
    return static_cast<double>(length.count()) / 1e3;
}
constexpr double inInches(Length length)
{
    return inMillimetres(length) / kMillimetresPerInch;
}

} // namespace plumule
