#pragma once

#include <filesystem>

namespace plumule {

// How a file says that it is written, in its first bytes (sqlite.org/fileformat2.html).
enum class FileFormat
{
    NotSqlite,
    RollbackJournal,
    WriteAheadLog
};

// Opens and closes the file, which no connection of this process may have open.
[[nodiscard]] FileFormat formatOf(const std::filesystem::path& file);

// Whether the file may be written, and a log and its index put beside it and taken away again.
// Links are followed.
[[nodiscard]] bool isWritableInPlace(const std::filesystem::path& file);

// Whether work stands in a log beside that name that the file itself may not hold yet.
[[nodiscard]] bool hasLogBeside(const std::filesystem::path& file);

// The name that the file's log stands beside: SQLite puts it beside the name that it is given, so
// that under another one (a hard link) of the same folder it would be missed. Behind links.
[[nodiscard]] std::filesystem::path nameWithLog(const std::filesystem::path& file);

// The file with its log in a folder of its own, gone with this.
class PrivateCopy
{
public:
    // Throws StorageFailure: DiskFull, NotWritable, Unreadable.
    explicit PrivateCopy(const std::filesystem::path& file);
    ~PrivateCopy();
    PrivateCopy(const PrivateCopy&) = delete;
    PrivateCopy& operator=(const PrivateCopy&) = delete;

    [[nodiscard]] std::filesystem::path file() const { return m_folder / m_name; }

private:
    std::filesystem::path m_folder;
    std::filesystem::path m_name;
};

} // namespace plumule
