#pragma once

#include <string_view>

namespace plumule {

// Why the invented room was not made.
enum class SampleReason
{
    JournalHasTrays,
};

constexpr std::string_view familyOf(SampleReason)
{
    return "sample";
}

} // namespace plumule
