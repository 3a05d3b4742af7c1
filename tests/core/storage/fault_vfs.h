#pragma once

namespace plumule {

// SQLite's file system with a fault in it: from arm() on, its n-th write, sync, resize or opening
// fails. Installed for every database that is opened while it lives; one at a time.
class FaultVfs
{
public:
    enum class Lasting
    {
        Once,
        ForGood // whatever follows fails as well, as on a disk that was pulled out
    };

    FaultVfs();
    ~FaultVfs();
    FaultVfs(const FaultVfs&) = delete;
    FaultVfs& operator=(const FaultVfs&) = delete;

    void arm(int operation, Lasting lasting);
    void disarm();
    [[nodiscard]] bool hasFailed() const;
};

} // namespace plumule
