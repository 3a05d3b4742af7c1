#pragma once

#include "core/base/file_key.h"

namespace plumule {

// One connection of this process to a database file. While any is open, nobody here may open and
// close that file by other means: POSIX drops all locks that a process has on a file, SQLite's too,
// when it closes any handle on it.
class OpenConnection
{
public:
    explicit OpenConnection(const std::filesystem::path& path);
    ~OpenConnection();
    OpenConnection(const OpenConnection&) = delete;
    OpenConnection& operator=(const OpenConnection&) = delete;

    [[nodiscard]] std::optional<FileKey> file() const { return m_file; }

private:
    std::optional<FileKey> m_file; // none: in memory
};
[[nodiscard]] bool isOpenHere(const std::filesystem::path& path);

// The right to write a journal: one holder on this machine, whatever name leads to the file. It is
// a lock of the file itself, on a byte that SQLite never locks; nothing is left behind, and the
// system releases it when the program ends, however that ends.
class JournalLock
{
public:
    explicit JournalLock(const std::filesystem::path& path);
    ~JournalLock();
    JournalLock(const JournalLock&) = delete;
    JournalLock& operator=(const JournalLock&) = delete;

    [[nodiscard]] bool isHeld() const { return m_isHeld; }
    [[nodiscard]] std::optional<FileKey> file() const { return m_file; }

private:
    std::optional<FileKey> m_file;
    bool m_isHeld = false;
};

// Whether this process or another holds it.
[[nodiscard]] bool isLocked(const std::filesystem::path& path);

} // namespace plumule
