#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/money.h"
#include "core/base/quantity.h"

#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>

namespace plumule {

// What a column can hold: nothing, a whole number, a real, a text.
using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;

// A cell that holds no value of the type asked for. Statement::get() says which row it stands in.
struct BadCell
{};

// The cell's content, of one of its four types.
template <class Held>
const Held& heldIn(const Cell& cell)
{
    const Held* held = std::get_if<Held>(&cell);
    if (held == nullptr) {
        throw BadCell{};
    }
    return *held;
}

// How a value type is stored in a column: toCell() and fromCell(). An enum is stored as the text of
// its toText(), found by argument-dependent look-up, and read by fromText(text, value&) -> bool.
template <class T>
struct ColumnTraits
{
    static Cell toCell(const T& value)
    {
        if constexpr (std::is_enum_v<T>) {
            return std::string(toText(value));
        } else if constexpr (std::is_floating_point_v<T>) {
            return static_cast<double>(value);
        } else if constexpr (std::is_integral_v<T>) {
            return static_cast<std::int64_t>(value);
        } else {
            return std::string(value);
        }
    }
    static T fromCell(const Cell& cell)
    {
        if constexpr (std::is_enum_v<T>) {
            T value{};
            if (!fromText(heldIn<std::string>(cell), value)) {
                throw BadCell{};
            }
            return value;
        } else if constexpr (std::is_floating_point_v<T>) {
            if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
                return static_cast<T>(*whole);
            }
            return static_cast<T>(heldIn<double>(cell));
        } else if constexpr (std::is_same_v<T, bool>) {
            return heldIn<std::int64_t>(cell) != 0;
        } else if constexpr (std::is_integral_v<T>) {
            const std::int64_t whole = heldIn<std::int64_t>(cell);
            if (!std::in_range<T>(whole)) {
                throw BadCell{};
            }
            return static_cast<T>(whole);
        } else {
            return heldIn<std::string>(cell);
        }
    }
};

template <class Dimension>
struct ColumnTraits<Quantity<Dimension>>
{
    static Cell toCell(Quantity<Dimension> value) { return value.count(); }
    static Quantity<Dimension> fromCell(const Cell& cell)
    {
        return Quantity<Dimension>::ofCount(heldIn<std::int64_t>(cell));
    }
};

template <>
struct ColumnTraits<Money>
{
    static Cell toCell(Money value) { return value.count(); }
    static Money fromCell(const Cell& cell) { return Money::ofCount(heldIn<std::int64_t>(cell)); }
};

template <class Concept>
struct ColumnTraits<Id<Concept>>
{
    static Cell toCell(Id<Concept> id) { return id.value; }
    static Id<Concept> fromCell(const Cell& cell) { return {heldIn<std::int64_t>(cell)}; }
};

template <>
struct ColumnTraits<Date>
{
    static Cell toCell(Date value) { return toIso(value); }
    static Date fromCell(const Cell& cell)
    {
        const auto day = dateFromIso(heldIn<std::string>(cell));
        if (!day) {
            throw BadCell{};
        }
        return *day;
    }
};

template <class T>
struct ColumnTraits<std::optional<T>>
{
    static Cell toCell(const std::optional<T>& value)
    {
        return value ? ColumnTraits<T>::toCell(*value) : Cell{};
    }
    static std::optional<T> fromCell(const Cell& cell)
    {
        if (std::holds_alternative<std::monostate>(cell)) {
            return std::nullopt;
        }
        return ColumnTraits<T>::fromCell(cell);
    }
};

} // namespace plumule
