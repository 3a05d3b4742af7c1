#pragma once

#include <cstddef> // first: Qt's moc can't read <compare> before it

#include <compare>
#include <cstdint>
#include <functional>

namespace plumule {

// The key of a row of one concept. 0 is "not stored yet".
template <class Concept>
struct Id
{
    std::int64_t value = 0;

    constexpr auto operator<=>(const Id&) const = default;
    [[nodiscard]] constexpr bool isStored() const { return value != 0; }
};

} // namespace plumule

template <class Concept>
struct std::hash<plumule::Id<Concept>>
{
    std::size_t operator()(const plumule::Id<Concept>& id) const noexcept
    {
        return std::hash<std::int64_t>{}(id.value);
    }
};
