#pragma once

#include <string_view>

namespace plumule {

// How a journal's tables are not those that Plumule makes. Values: what it is ("trigger", "view",
// "table", "index") and its name.
enum class SchemaReason
{
    Foreign, // no Plumule made it
    Altered, // it is written otherwise than Plumule writes it
    Missing,
};

constexpr std::string_view familyOf(SchemaReason)
{
    return "schema";
}

} // namespace plumule
