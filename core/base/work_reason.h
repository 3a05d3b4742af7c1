#pragma once

#include <string_view>

namespace plumule {

// How a long piece of work came to no end.
enum class WorkReason
{
    Stopped, // by the grower
};

constexpr std::string_view familyOf(WorkReason)
{
    return "work";
}

} // namespace plumule
