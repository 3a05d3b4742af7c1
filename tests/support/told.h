#pragma once

#include "core/base/result.h"

#include <string>

namespace plumule {

// An error as a failing test shows it: its family, the number of its reason and its values.
inline std::string told(const Error& error)
{
    std::string text = "kind " + std::to_string(static_cast<int>(error.kind)) + ", " +
                       std::string(error.reason.family()) + ' ' +
                       std::to_string(error.reason.code());
    for (const std::string& value : error.values) {
        text += ", \"" + value + '"';
    }
    return text;
}

} // namespace plumule
