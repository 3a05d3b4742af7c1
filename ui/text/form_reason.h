#pragma once

#include <string_view>

namespace plumule::ui {

// What is wrong in a field of a form.
enum class FormReason
{
    AmountForm, // what stands there
    LengthForm, // what stands there
    VarietyMissing,
    MediumMissing,
};

constexpr std::string_view familyOf(FormReason)
{
    return "form";
}

} // namespace plumule::ui
