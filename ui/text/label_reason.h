#pragma once

#include <string_view>

namespace plumule::ui {

// What is wrong with a sheet or a roll of labels.
enum class LabelReason
{
    Rows,
    Columns,
    Margin,
    Gap,
    Size, // width × height as it would be
    Skip,
};

constexpr std::string_view familyOf(LabelReason)
{
    return "label";
}

} // namespace plumule::ui
