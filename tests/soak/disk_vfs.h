#pragma once

#include <cstdint>

namespace plumule {

// How a disk refuses an operation.
enum class DiskFault
{
    None,
    Error, // an I/O error; nothing was written
    Full,  // no room; nothing was written
    Short  // half of it was written, then no room
};

// SQLite's file system on a disk that may fail or lose power. Installed for every database that is
// opened while it lives; one at a time. An operation is a write, sync, resize, removal or opening.
class DiskVfs
{
public:
    DiskVfs();
    ~DiskVfs();
    DiskVfs(const DiskVfs&) = delete;
    DiskVfs& operator=(const DiskVfs&) = delete;

    // The n-th operation from now fails, once.
    void failAt(int operation, DiskFault fault);
    // From the n-th operation from now nothing works: the power is gone.
    void cutAt(int operation);
    [[nodiscard]] bool hasStruck() const;
    [[nodiscard]] int operations() const; // since failAt(), cutAt() or calm()
    void calm();

    // What is known of the disk from now on is what lies on it.
    void takeForSynced();
    // Once all is closed: leaves of each file what was synced and, by lot, some of what was not:
    // each later write whole, torn at a sector, or lost; a file that was never synced may be gone,
    // and one that was removed may be back.
    void comeBack(std::uint64_t lot);
};

} // namespace plumule
