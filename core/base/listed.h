#pragma once

namespace plumule {

// Which rows a list has.
enum class Listed
{
    InUse, // without what is retired or used up
    All,
};

} // namespace plumule
