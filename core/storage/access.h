#pragma once

namespace plumule {

enum class Access
{
    ReadWrite,
    ReadOnly,
    ReadImmutable // a read-only disk: no lock and no log can be written there
};

} // namespace plumule
