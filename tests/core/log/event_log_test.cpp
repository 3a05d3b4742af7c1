#include "core/log/event_log.h"

#include "core/storage/storage_reason.h"
#include "tests/core/storage/scratch.h"

#include <fstream>
#include <sstream>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// 2026-11-28 18:02:05 UTC
constexpr std::int64_t kMoment = 1'795'888'925'000;

class EventLogTest : public testing::Test
{
protected:
    static std::string textOf(const fs::path& path)
    {
        std::ifstream file(path);
        std::ostringstream text;
        text << file.rdbuf();
        return text.str();
    }

    ScratchFolder folder;
    EventLog log{folder / "records"};
};

TEST_F(EventLogTest, HasALineAnEventWithoutFolders)
{
    log.write(LogEvent::Opened, kMoment, "/home/someone/room.plumule");
    log.write(
        LogEvent::NotOpened, kMoment, "/home/someone/other.plumule", {},
        fail(ErrorKind::DiskFull, StorageReason::Failed, "/home/someone/other.plumule").value());
    EXPECT_EQ(textOf(log.file()), "2026-11-28T18:02:05Z opened \"room.plumule\"\n"
                                  "2026-11-28T18:02:05Z not-opened \"other.plumule\" disk-full "
                                  "storage-0\n");
}

TEST_F(EventLogTest, TellsNothingOfWhatWasRefusedButItsKind)
{
    log.write(LogEvent::Refused, kMoment, "room.plumule", "tray.write_note",
              fail(ErrorKind::Damaged, StorageReason::RowDamaged, "Anna's note").value());
    EXPECT_EQ(textOf(log.file()).find("Anna"), std::string::npos);
    EXPECT_NE(textOf(log.file()).find("tray.write_note damaged storage-1"), std::string::npos);
}

TEST_F(EventLogTest, KeepsALineALineWhateverTheFileIsCalled)
{
    log.write(LogEvent::Opened, kMoment, "a\nb.plumule");
    EXPECT_EQ(textOf(log.file()), "2026-11-28T18:02:05Z opened \"a?b.plumule\"\n");
}

TEST_F(EventLogTest, TakesTwoFilesOfABoundedSize)
{
    const std::string longName(200, 'x');
    for (int i = 0; i < 3000; ++i) {
        log.write(LogEvent::Opened, kMoment, longName);
    }
    const fs::path older = log.file().parent_path() / "events.old.log";
    EXPECT_LT(fs::file_size(log.file()), 132'000U);
    EXPECT_LT(fs::file_size(older), 132'000U);
    EXPECT_EQ(
        std::distance(fs::directory_iterator(log.file().parent_path()), fs::directory_iterator()),
        2);
}

TEST_F(EventLogTest, StopsNothingWhereItCantBeWritten)
{
    std::ofstream(folder / "taken") << "a file";
    const EventLog nowhere(folder / "taken");
    nowhere.write(LogEvent::Opened, kMoment, "room.plumule");
    EXPECT_EQ(textOf(folder / "taken"), "a file");
}

} // namespace
} // namespace plumule
