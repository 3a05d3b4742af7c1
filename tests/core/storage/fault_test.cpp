#include "tests/core/storage/fault_vfs.h"
#include "tests/core/storage/scratch.h"
#include "tests/support/told.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
namespace fs = std::filesystem;

// Makes the n-th write, sync, resize or opening fail, n = 1, 2, 3 … until none does, and looks at
// the journal after each.
class FaultTest : public testing::TestWithParam<FaultVfs::Lasting>
{
protected:
    FaultTest()
    {
        const JournalFile journal = newJournal(path);
        rack = addRack(*journal.database, "before");
    }

    // Runs `work` on a fresh copy with a fault at its n-th operation, for every n that there is;
    // `look` sees the reopened journal, and whether `work` had said that it was done. Returns how
    // many faults there were.
    template <class Work, class Look>
    int tryAll(Work work, Look look)
    {
        for (int n = 1;; ++n) {
            SCOPED_TRACE("fault at operation " + std::to_string(n));
            const fs::path copy = folder / ("copy-" + std::to_string(n) + ".plumule");
            fs::copy_file(path, copy);
            const bool done = runWithFault(copy, n, work);
            const bool failed = vfs.hasFailed();
            vfs.disarm();
            EXPECT_TRUE(done || failed);
            {
                const JournalFile journal = openedJournal(copy);
                EXPECT_FALSE(journal.readOnlyBecause);
                EXPECT_TRUE(findFaults(*journal.database).empty());
                look(*journal.database, done);
            }
            if (!failed || n > 10'000 || HasFailure()) {
                return n - 1;
            }
        }
    }

    template <class Work>
    bool runWithFault(const fs::path& copy, int n, Work work)
    {
        try {
            JournalFile journal = openedJournal(copy);
            vfs.arm(n, GetParam());
            return work(*journal.database);
        } catch (const StorageFailure&) {
            return false;
        }
    }

    FaultVfs vfs;
    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
    StoredRack rack;
};

constexpr int kRacks = 18;

// Enough rows for several pages: half of them would show.
bool addManyRacks(Database& database)
{
    recorded(database, "rack.many", [&] {
        for (int i = 0; i < kRacks; ++i) {
            StoredRack one;
            one.name = std::string(1000, 'x');
            insertRow(database, one);
        }
    });
    return true;
}

TEST_P(FaultTest, AnIntentionIsThereWholeOrNotAtAll)
{
    const int faults = tryAll(addManyRacks, [&](Database& database, bool done) {
        const auto racks = rackNames(database).size();
        const auto entries = History(database).latest(10).size();
        if (done) {
            EXPECT_EQ(racks, 1u + kRacks);
        } else {
            EXPECT_TRUE(racks == 1u || racks == 1u + kRacks) << racks;
        }
        EXPECT_EQ(entries, racks == 1u ? 1u : 2u);
        // And it goes on.
        addRack(database, "after");
    });
    EXPECT_GT(faults, 10);
}

TEST_P(FaultTest, AnUndoIsThereWholeOrNotAtAll)
{
    const auto undo = [](Database& database) { return History(database).undo().has_value(); };
    const int faults = tryAll(undo, [&](Database& database, bool done) {
        const auto racks = rackNames(database).size();
        const auto state = History(database).latest(1).at(0).state;
        EXPECT_TRUE(racks == 0u || !done);
        EXPECT_EQ(state, racks == 0u ? HistoryState::Undone : HistoryState::Standing);
    });
    EXPECT_GT(faults, 2);
}

TEST_P(FaultTest, AFailedIntentionLeavesTheJournalInUse)
{
    const int faults = tryAll(
        [&](Database& database) {
            try {
                addManyRacks(database);
            } catch (const StorageFailure&) {
                EXPECT_FALSE(database.isInTransaction());
                vfs.disarm();
                addManyRacks(database);
                // Told as a fault, so that the next one is tried.
                vfs.arm(1, FaultVfs::Lasting::Once);
                EXPECT_THROW(addManyRacks(database), StorageFailure);
                return false;
            }
            return true;
        },
        [&](Database& database, bool) {
            const auto racks = rackNames(database).size();
            EXPECT_GE(racks, 1u + kRacks);
            EXPECT_EQ((racks - 1) % kRacks, 0u);
        });
    EXPECT_GT(faults, 10);
}

TEST_P(FaultTest, AJournalThatCouldNotBeMadeLeavesNoFile)
{
    int n = 0;
    bool failed = true;
    while (failed) {
        const fs::path fresh = folder / ("new-" + std::to_string(++n) + ".plumule");
        SCOPED_TRACE("fault at operation " + std::to_string(n));
        vfs.arm(n, GetParam());
        const bool made = createJournalFile(fresh).has_value();
        failed = vfs.hasFailed();
        vfs.disarm();
        ASSERT_TRUE(made || failed);
        const auto opened = openJournalFile(fresh);
        if (made) {
            ASSERT_TRUE(opened) << told(opened.error());
            addRack(*opened->database, "A");
        } else {
            ASSERT_FALSE(opened);
            EXPECT_EQ(opened.error().kind, ErrorKind::NotFound);
            EXPECT_FALSE(fs::exists(fresh));
        }
        ASSERT_LT(n, 10'000);
    }
    EXPECT_GT(n, 10);
}

INSTANTIATE_TEST_SUITE_P(Disk, FaultTest,
                         testing::Values(FaultVfs::Lasting::Once, FaultVfs::Lasting::ForGood),
                         [](const auto& lasting) {
                             return lasting.param == FaultVfs::Lasting::Once ? "HiccupsOnce"
                                                                             : "IsPulledOut";
                         });

} // namespace
} // namespace plumule
