#pragma once

#include "core/base/date.h"

#include <optional>
#include <string>

namespace plumule {

// Where a tray stands in the list: newest sowing first, then by code.
struct TrayListKey
{
    Date sownOn;
    std::string code;
};

// A part of the list.
struct TrayPage
{
    std::optional<TrayListKey> after = {}; // none: from the first on
    std::optional<int> rows = {};          // at most; none: all
};

} // namespace plumule
