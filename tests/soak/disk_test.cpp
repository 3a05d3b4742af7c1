#include "tests/core/storage/scratch.h"
#include "tests/core/storage/told_file_system.h"
#include "tests/soak/disk_vfs.h"
#include "tests/soak/soak_script.h"
#include "tests/soak/soak_times.h"

namespace plumule {
namespace {

namespace fs = std::filesystem;

enum class KeptBy
{
    Log,
    RollbackJournal // as in a far folder
};

// Two rounds of the script on a fresh copy of a journal, with something the matter with its disk.
class SoakDisk : public testing::TestWithParam<KeptBy>
{
protected:
    static constexpr int kSteps = 2 * kStepsOfScript;

    SoakDisk()
    {
        if (GetParam() == KeptBy::RollbackJournal) {
            told.emplace(std::uint32_t{0x6969}); // NFS
        }
        makeScriptJournal(path, clock);
    }

    fs::path freshCopy()
    {
        const fs::path copy = folder / "copy.plumule";
        for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
            fs::remove(copy.string() + ending);
        }
        fs::copy_file(path, copy);
        disk.takeForSynced();
        return copy;
    }

    // Steps until one is refused, and the journal's closing. How many were acknowledged.
    int doSteps(const fs::path& copy)
    {
        const auto journal = Journal::open(copy, clock);
        int steps = 0;
        while (journal && steps < kSteps && doStep(**journal, steps)) {
            ++steps;
        }
        return steps;
    }

    // What was refused is done again once the disk is well. Whether it all could be done.
    bool doStepsAgainWhereRefused(const fs::path& copy)
    {
        auto journal = Journal::open(copy, clock);
        if (!journal || (*journal)->isReadOnly()) {
            journal = Journal::open(copy, clock);
        }
        int refusals = 0;
        for (int step = 0; journal && step < kSteps;) {
            if (doStep(**journal, step)) {
                ++step;
            } else if (++refusals > 1) {
                return false;
            }
        }
        return journal.has_value();
    }

    std::string nameOfParam() const
    {
        return GetParam() == KeptBy::Log ? "with a log" : "with a rollback journal";
    }

    DiskVfs disk;
    std::optional<ToldFileSystem> told;
    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
    FixedClock clock{{date(2026, 3, 2), 7 * 60 + 30}};
};

TEST_P(SoakDisk, AFaultAtAnyOperationLosesAndHalvesNothing)
{
    Tally tally;
    int mended = 0;
    const int stride = soakTimes(29, 1);
    for (const DiskFault fault : {DiskFault::Error, DiskFault::Full, DiskFault::Short}) {
        bool hasStruck = true;
        for (int n = 1 + tally.tries % stride; hasStruck && !HasFailure(); n += stride) {
            SCOPED_TRACE("operation " + std::to_string(n));
            const fs::path copy = freshCopy();
            disk.failAt(n, fault);
            const int acknowledged = doSteps(copy);
            hasStruck = disk.hasStruck();
            disk.calm();
            tally.count(lookAt(copy, clock), acknowledged);
            EXPECT_TRUE(tally.isClean()) << acknowledged << " steps were acknowledged";

            const fs::path again = freshCopy();
            disk.failAt(n, fault);
            EXPECT_TRUE(doStepsAgainWhereRefused(again));
            disk.calm();
            const Found found = lookAt(again, clock);
            EXPECT_TRUE(found.isSound && found.state == stateAfter(kSteps));
            ++mended;
        }
    }
    sayFigures(tally.text("faults") + ", " + std::to_string(mended) + " went on after one, " +
               nameOfParam());
    EXPECT_GT(tally.tries, 15);
}

TEST_P(SoakDisk, APowerCutAtAnyOperationLosesAndHalvesNothing)
{
    Tally tally;
    const int lots = soakTimes(1, 12);
    const int stride = soakTimes(13, 1);
    for (int lot = 1; lot <= lots; ++lot) {
        bool hasStruck = true;
        for (int n = 1; hasStruck && !HasFailure(); n += stride) {
            SCOPED_TRACE("operation " + std::to_string(n) + ", lot " + std::to_string(lot));
            const fs::path copy = freshCopy();
            disk.cutAt(n);
            const int acknowledged = doSteps(copy);
            hasStruck = disk.hasStruck();
            disk.comeBack(static_cast<std::uint64_t>(lot * 10'000 + n));
            tally.count(lookAt(copy, clock), acknowledged);
            EXPECT_TRUE(tally.isClean()) << acknowledged << " steps were acknowledged";
        }
    }
    sayFigures(tally.text("power cuts") + ", " + nameOfParam());
    EXPECT_GT(tally.tries, 15);
}

INSTANTIATE_TEST_SUITE_P(Journal, SoakDisk, testing::Values(KeptBy::Log, KeptBy::RollbackJournal),
                         [](const auto& kept) {
                             return kept.param == KeptBy::Log ? "WithALog" : "WithARollbackJournal";
                         });

// A simulation that loses nothing finds nothing: without syncs the same cuts must be seen to lose.
TEST(SoakDiskItself, WouldSeeAJournalThatIsNotSynced)
{
    const ScratchFolder folder;
    const fs::path path = folder / "room.plumule";
    DiskVfs disk;
    int lost = 0;
    for (int lot = 1; lot <= 20; ++lot) {
        fs::remove(path);
        {
            Database database(path, Access::ReadWrite, OpenAs::New);
            database.execute("PRAGMA journal_mode=DELETE; CREATE TABLE t (x TEXT)");
            disk.takeForSynced();
        }
        int acknowledged = 0;
        {
            Database database(path, Access::ReadWrite);
            database.execute("PRAGMA synchronous=OFF");
            disk.cutAt(25);
            try {
                for (;; ++acknowledged) {
                    database.execute("INSERT INTO t VALUES (hex(randomblob(900)))");
                }
            } catch (const StorageFailure&) {
            }
        }
        disk.comeBack(static_cast<std::uint64_t>(lot));
        try {
            Database database(path, Access::ReadWrite);
            lost += database.scalar("SELECT count(*) FROM t") < acknowledged ? 1 : 0;
        } catch (const StorageFailure&) {
            ++lost;
        }
    }
    EXPECT_GT(lost, 5);
}

} // namespace
} // namespace plumule
