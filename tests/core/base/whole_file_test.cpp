#include "core/base/whole_file.h"

#include "core/base/file_key.h"
#include "core/base/kept_files.h"

#include <csignal>
#include <fstream>
#include <gmock/gmock.h>
#include <random>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::UnorderedElementsAre;
namespace fs = std::filesystem;

// A folder of its own, with an older file in it.
class WholeFileTest : public testing::Test
{
protected:
    WholeFileTest()
    {
        fs::create_directories(folder);
        std::ofstream(target) << "older";
    }
    ~WholeFileTest() override
    {
        std::error_code ignored;
        fs::permissions(folder, fs::perms::owner_all, ignored);
        fs::remove_all(folder, ignored);
    }

    static std::string textOf(const fs::path& path)
    {
        std::ifstream file(path, std::ios::binary);
        return {std::istreambuf_iterator<char>(file), {}};
    }
    std::vector<std::string> files()
    {
        std::vector<std::string> names;
        for (const auto& entry : fs::directory_iterator(folder)) {
            names.push_back(entry.path().filename());
        }
        return names;
    }
    static std::optional<ErrorKind> refusal(const Done& done)
    {
        return done ? std::nullopt : std::optional(done.error().kind);
    }
    // Runs `check` in a process of its own, which may limit itself.
    template <class Check>
    static bool holdsElsewhere(Check check)
    {
        const pid_t child = ::fork();
        if (child == 0) {
            ::_exit(check() ? 0 : 1);
        }
        int status = -1;
        ::waitpid(child, &status, 0);
        return WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }

    fs::path folder =
        fs::temp_directory_path() / ("plumule-whole-" + std::to_string(std::random_device{}()));
    fs::path target = folder / "kept.txt";
};

TEST_F(WholeFileTest, TakesThePlaceOfAnOlderFileAndLeavesNothingBeside)
{
    ASSERT_TRUE(writeWhole(target, "newer"));
    EXPECT_EQ(textOf(target), "newer");
    EXPECT_THAT(files(), ElementsAre("kept.txt"));
}

TEST_F(WholeFileTest, OnlyAJournalPutsFilesIntoItsOwnFolder)
{
    const fs::path photos = folder / "photos";
    ASSERT_TRUE(makeFolder(photos));
    ASSERT_TRUE(makeFolder(photos)) << "it is there";
    const KeptFiles kept({}, photos);
    EXPECT_EQ(refusal(copyWhole(target, photos / "a.jpg")), ErrorKind::Conflict);
    ASSERT_TRUE(copyWhole(target, photos / "a.jpg", WrittenBy::TheJournal));
    EXPECT_EQ(textOf(photos / "a.jpg"), "older");
    EXPECT_EQ(refusal(makeFolder(folder / "nowhere/photos")), ErrorKind::NotWritable);
}

TEST_F(WholeFileTest, IsNotThereUntilItIsCommitted)
{
    {
        auto file = WholeFile::begin(target);
        ASSERT_TRUE(file);
        ASSERT_TRUE(file->write("new"));
        ASSERT_TRUE(file->sync());
        EXPECT_EQ(textOf(target), "older");
        EXPECT_EQ(textOf(file->unfinished()), "new");
    }
    EXPECT_EQ(textOf(target), "older");
    EXPECT_THAT(files(), ElementsAre("kept.txt"));
}

TEST_F(WholeFileTest, KeepsTheModeOfTheOlderFileAndALinkALink)
{
    fs::permissions(target, fs::perms(0600));
    fs::create_symlink("kept.txt", folder / "link.txt");
    ASSERT_TRUE(writeWhole(folder / "link.txt", "newer"));
    EXPECT_TRUE(fs::is_symlink(folder / "link.txt"));
    EXPECT_EQ(textOf(target), "newer");
    EXPECT_EQ(fs::status(target).permissions(), fs::perms(0600));
}

TEST_F(WholeFileTest, MakesTheFileThatALinkPointsAt)
{
    fs::create_symlink("later.txt", folder / "link.txt");
    ASSERT_TRUE(writeWhole(folder / "link.txt", "newer"));
    EXPECT_TRUE(fs::is_symlink(folder / "link.txt"));
    EXPECT_EQ(textOf(folder / "later.txt"), "newer");
}

TEST_F(WholeFileTest, RefusesWhatIsNoFileOrHasNoFolder)
{
    EXPECT_EQ(refusal(writeWhole(folder, "x")), ErrorKind::NotWritable);
    EXPECT_EQ(refusal(writeWhole("/dev/null", "x")), ErrorKind::NotWritable);
    EXPECT_FALSE(fs::is_regular_file("/dev/null"));
    EXPECT_EQ(refusal(writeWhole(folder / "nowhere/kept.txt", "x")), ErrorKind::NotWritable);
}

TEST_F(WholeFileTest, OfAnotherUserIsLeftAsItIs)
{
    constexpr uid_t kNobody = 65534;
    const auto asNobody = [&](const fs::path& path) {
        return holdsElsewhere([&] {
            const bool dropped = ::geteuid() != 0 || (::setresgid(kNobody, kNobody, kNobody) == 0 &&
                                                      ::setresuid(kNobody, kNobody, kNobody) == 0);
            return dropped && refusal(writeWhole(path, "newer")) == ErrorKind::NotWritable;
        });
    };
    fs::permissions(folder, fs::perms(0555));
    EXPECT_TRUE(asNobody(target)) << "a folder that may not be written";
    EXPECT_TRUE(asNobody(folder / "other.txt"));
    fs::permissions(folder, fs::perms(0777));
    fs::permissions(target, fs::perms(0444));
    EXPECT_TRUE(asNobody(target)) << "a file that may not be written";
    EXPECT_EQ(textOf(target), "older");
    EXPECT_THAT(files(), ElementsAre("kept.txt"));
}

TEST_F(WholeFileTest, ThatTheDiskHasNoRoomForSaysSoAndLeavesTheOlderOne)
{
    EXPECT_TRUE(holdsElsewhere([&] {
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit small{1000, 1000};
        return ::setrlimit(RLIMIT_FSIZE, &small) == 0 &&
               refusal(writeWhole(target, std::string(5000, 'x'))) == ErrorKind::DiskFull &&
               refusal(writeWhole(target, "fits")) == std::nullopt;
    }));
    EXPECT_EQ(textOf(target), "fits");
    EXPECT_THAT(files(), ElementsAre("kept.txt"));
}

TEST_F(WholeFileTest, NeverGoesOverAKeptFileByWhateverName)
{
    fs::create_directory(folder / "photos");
    fs::create_symlink("kept.txt", folder / "link.txt");
    fs::create_hard_link(target, folder / "hard.txt");
    fs::create_directory_symlink(folder, folder / "round");
    const fs::path aims[] = {target,
                             folder / "link.txt",
                             folder / "hard.txt",
                             folder / "round/kept.txt",
                             folder / "photos/../kept.txt",
                             folder / "kept.txt-wal",
                             folder / "round/kept.txt-wal",
                             folder / "photos/a.jpg",
                             folder / "photos/new/a.jpg"};
    {
        const KeptFiles kept({target, target.string() + "-wal"}, folder / "photos");
        for (const fs::path& aim : aims) {
            const Done done = writeWhole(aim, "newer");
            ASSERT_FALSE(done) << aim;
            EXPECT_EQ(done.error().kind, ErrorKind::Conflict) << aim;
        }
        EXPECT_EQ(textOf(target), "older");
        EXPECT_TRUE(writeWhole(folder / "other.txt", "newer"));
        EXPECT_TRUE(writeWhole(folder / "photos 2.txt", "newer"));
    }
    EXPECT_TRUE(writeWhole(target, "newer")) << "kept no longer";
    EXPECT_TRUE(writeWhole(folder / "photos/a.jpg", "newer"));
}

TEST_F(WholeFileTest, ANameLeadsToOneFileHoweverItIsWritten)
{
    fs::create_symlink("kept.txt", folder / "link.txt");
    fs::create_hard_link(target, folder / "hard.txt");
    EXPECT_EQ(fileKeyOf(target), fileKeyOf(folder / "link.txt"));
    EXPECT_EQ(fileKeyOf(target), fileKeyOf(folder / "hard.txt"));
    EXPECT_FALSE(fileKeyOf(folder / "nothing"));
    EXPECT_EQ(behindLinks(folder / "link.txt"), behindLinks(target));
    EXPECT_EQ(behindLinks(folder / "nothing").filename(), "nothing");
    fs::create_symlink("self.txt", folder / "self.txt");
    EXPECT_FALSE(fileKeyOf(folder / "self.txt"));
    EXPECT_FALSE(behindLinks(folder / "self.txt").empty());
    EXPECT_EQ(refusal(writeWhole(folder / "self.txt", "x")), ErrorKind::NotWritable);
}

} // namespace
} // namespace plumule
