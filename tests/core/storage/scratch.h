#pragma once

#include "core/storage/faults.h"
#include "core/storage/history.h"
#include "core/storage/journal_file.h"
#include "core/storage/recording.h"
#include "core/storage/table.h"
#include "tests/support/told.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <random>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

namespace plumule {

// A folder of its own for one test, removed afterwards.
class ScratchFolder
{
public:
    ScratchFolder()
        : m_path(std::filesystem::temp_directory_path() /
                 ("plumule-storage-" + std::to_string(std::random_device{}()) + "-" +
                  std::to_string(std::random_device{}())))
    {
        std::filesystem::create_directories(m_path);
    }
    ~ScratchFolder()
    {
        std::error_code ignored;
        std::filesystem::permissions(m_path, std::filesystem::perms::owner_all, ignored);
        std::filesystem::remove_all(m_path, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    [[nodiscard]] std::filesystem::path operator/(const std::string& name) const
    {
        return m_path / name;
    }
    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

inline std::string bytesOf(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline void writeBytes(const std::filesystem::path& path, const std::string& bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

// Runs SQL with nothing of the journal's protection, as another program would.
inline void runOutside(const std::filesystem::path& path, const std::string& sql)
{
    sqlite3* handle = nullptr;
    ASSERT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
    char* message = nullptr;
    EXPECT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &message), SQLITE_OK) << message;
    sqlite3_close(handle);
}

// Any table will do to try storage with: racks and their shelves, without the room's own types.
struct StoredRack
{
    Id<StoredRack> id;
    std::string name;
    int position = 0;
    bool operator==(const StoredRack&) const = default;
};

struct StoredShelf
{
    Id<StoredShelf> id;
    Id<StoredRack> rack;
    std::string name;
    int position = 0;
    std::optional<int> lightMinutes;
    bool operator==(const StoredShelf&) const = default;
};

template <>
struct TableOf<StoredRack>
{
    static constexpr const char* name = "rack";
    static constexpr auto columns =
        std::tuple{column("name", &StoredRack::name), column("position", &StoredRack::position)};
};

template <>
struct TableOf<StoredShelf>
{
    static constexpr const char* name = "shelf";
    static constexpr auto columns =
        std::tuple{column("rack_id", &StoredShelf::rack), column("name", &StoredShelf::name),
                   column("position", &StoredShelf::position),
                   column("light_minutes", &StoredShelf::lightMinutes)};
};

inline std::vector<std::string> rackNames(Database& database)
{
    std::vector<std::string> names;
    for (const StoredRack& rack : selectRows<StoredRack>(database, "ORDER BY id")) {
        names.push_back(rack.name);
    }
    return names;
}

// Does `work` as one intention of the history.
template <class Work>
std::vector<ChangedRows> recorded(Database& database, const std::string& intention, Work work)
{
    Transaction transaction(database);
    Recording recording(database);
    work();
    auto rows = recording.finish(1'000, intention, "subject");
    transaction.commit();
    return rows;
}

inline StoredRack addRack(Database& database, const std::string& name)
{
    StoredRack rack;
    rack.name = name;
    recorded(database, "rack.add", [&] { insertRow(database, rack); });
    return rack;
}

// So many megabytes of rows, as one intention.
inline void addMegabytes(Database& database, int megabytes)
{
    recorded(database, "rack.many", [&] {
        for (int i = 0; i < 1000 * megabytes; ++i) {
            StoredRack rack;
            rack.name = std::string(1000, 'x');
            insertRow(database, rack);
        }
    });
}

inline void renameRack(Database& database, StoredRack rack, const std::string& name)
{
    rack.name = name;
    recorded(database, "rack.rename", [&] { updateRow(database, rack); });
}

// A new journal; the test fails where it is refused.
inline JournalFile newJournal(const std::filesystem::path& path, std::int64_t copyNumber = 1)
{
    auto file = createJournalFile(path, copyNumber);
    EXPECT_TRUE(file) << told(file.error());
    return std::move(*file);
}

inline JournalFile openedJournal(const std::filesystem::path& path,
                                 Access access = Access::ReadWrite)
{
    auto file = openJournalFile(path, access);
    EXPECT_TRUE(file) << told(file.error());
    return std::move(*file);
}

// Runs `check` as a user who owns nothing: root may write everywhere, whatever the file modes.
template <class Check>
bool holdsForAnotherUser(Check check)
{
    const pid_t child = ::fork();
    if (child == 0) {
        constexpr uid_t kNobody = 65534;
        const bool dropped = ::geteuid() != 0 || (::setresgid(kNobody, kNobody, kNobody) == 0 &&
                                                  ::setresuid(kNobody, kNobody, kNobody) == 0);
        ::_exit(dropped && check() ? 0 : 1);
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

// Runs `work` in a process of its own, which then ends without closing anything, as if it were
// killed. Whether `work` said that it was done.
template <class Work>
bool doneByAProgramThatEnds(Work work)
{
    const pid_t child = ::fork();
    if (child == 0) {
        ::_exit(work() ? 0 : 1);
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

// The kind of the failure that `work` throws; none, and a failed test, when it throws nothing.
template <class Work>
std::optional<ErrorKind> failureOf(Work work)
{
    try {
        work();
    } catch (const StorageFailure& failure) {
        return failure.error().kind;
    }
    ADD_FAILURE() << "nothing was thrown";
    return std::nullopt;
}

} // namespace plumule
