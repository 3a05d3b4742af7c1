#pragma once

#include <string_view>

namespace plumule::ui {

// Why a sheet or a report was not put on paper.
enum class PaperReason
{
    PrinterRefused,
};

constexpr std::string_view familyOf(PaperReason)
{
    return "paper";
}

} // namespace plumule::ui
