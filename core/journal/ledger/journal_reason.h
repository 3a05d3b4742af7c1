#pragma once

#include <string_view>

namespace plumule {

// Why the journal as a whole refuses. An enumerator's values stand beside it.
enum class JournalReason
{
    ReadOnly,
    Unexpected, // what was thrown
};

constexpr std::string_view familyOf(JournalReason)
{
    return "journal";
}

} // namespace plumule
