#pragma once

#include <QComboBox>
#include <QSignalBlocker>

#include <algorithm>
#include <optional>
#include <type_traits>

namespace plumule::ui {

// Drop-downs whose rows stand for values: ids, enumerations, truths. A row that was added without
// one stands for none ("All media", "not written down") and is the first.

template <class Value>
[[nodiscard]] QVariant choiceData(Value value)
{
    if constexpr (std::is_same_v<Value, bool>) {
        return value;
    } else if constexpr (std::is_enum_v<Value>) {
        return static_cast<int>(value);
    } else {
        return static_cast<qlonglong>(value.value);
    }
}

template <class Value>
void addChoice(QComboBox& box, const QString& name, Value value, const QIcon& icon = {})
{
    box.addItem(icon, name, choiceData(value));
}

// None where the chosen row has no value, or the list is empty.
template <class Value>
[[nodiscard]] std::optional<Value> chosen(const QComboBox& box)
{
    const QVariant data = box.currentData();
    if (!data.isValid()) {
        return std::nullopt;
    }
    if constexpr (std::is_same_v<Value, bool>) {
        return data.toBool();
    } else if constexpr (std::is_enum_v<Value>) {
        return static_cast<Value>(data.toInt());
    } else {
        return Value{data.toLongLong()};
    }
}

// For lists each of whose rows has a value; Value() while the list is empty.
template <class Value>
[[nodiscard]] Value chosenOf(const QComboBox& box)
{
    return chosen<Value>(box).value_or(Value());
}

// Chooses the first row where the value is not in the list, or is none.
template <class Value>
void choose(QComboBox& box, std::optional<Value> value)
{
    box.setCurrentIndex(value ? std::max(0, box.findData(choiceData(*value))) : 0);
}

template <class Value>
void choose(QComboBox& box, Value value)
{
    choose(box, std::optional(value));
}

// Lets `fill` fill the list anew, from nothing; what was chosen stays so where it is still there,
// else the first row is. Emits nothing. True where it stayed.
template <class Fill>
bool refill(QComboBox& box, Fill fill)
{
    const QSignalBlocker quiet(&box);
    const QVariant kept = box.currentData();
    box.clear();
    fill();
    const int found = kept.isValid() ? box.findData(kept) : -1;
    box.setCurrentIndex(std::max(0, found));
    return found >= 0;
}

} // namespace plumule::ui
