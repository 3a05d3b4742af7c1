#include "core/journal/ledger/ledger.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/review/facts/review_reason.h"
#include "core/room/room_repository.h"
#include "tests/core/journal/trial/trial_fixture.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <future>
#include <gmock/gmock.h>
#include <thread>

namespace plumule {
namespace {

// A ledger of its own on a journal that another connection writes.
class LedgerTest : public TrialTest
{
protected:
    void SetUp() override
    {
        TrialTest::SetUp();
        reader = std::make_unique<Ledger>(openJournalFile(path(), Access::ReadOnly).value(), clock);
    }
    void addRack() { ASSERT_TRUE(journal->room().addRack("Z", 1, 1)); }
    void weighATrayOnANewMedium()
    {
        Medium felt;
        felt.name = "Felt";
        SowingDraft draft;
        draft.variety = cress;
        draft.medium = journal->media().save(felt).value().id;
        draft.at = clock.now();
        weigh(journal->trays().sow(draft).value().front(), 300, clock.now());
    }
    static std::size_t racksIn(Database& database)
    {
        return RoomRepository(database).racks().size();
    }

    std::unique_ptr<Ledger> reader;
};

TEST_F(LedgerTest, AnAnswerIsOfOneStateThoughAnotherWritesMeanwhile)
{
    const auto counts = reader->ask([&](Database& database) {
        const std::size_t before = racksIn(database);
        addRack();
        return std::pair(before, racksIn(database));
    });
    ASSERT_TRUE(counts);
    EXPECT_EQ(counts->first, counts->second);
    EXPECT_EQ(reader->ask(racksIn).value(), counts->first + 1) << "the next answer is of the next";
}

TEST_F(LedgerTest, WhatAnotherHandRecordsIsToldAndTakenBackAsItsOwn)
{
    std::vector<Change> told;
    const int listener =
        journal->addListener([&](const std::vector<Change>& changes) { told = changes; });
    auto hand = journal->beside();
    ASSERT_TRUE(hand);
    auto work = std::async(std::launch::async, [&] {
        std::vector<Change> changes;
        (*hand)->addListener([&](const std::vector<Change>& each) { changes = each; });
        EXPECT_TRUE((*hand)->room().addRack("H", 1, 1));
        return changes;
    });
    const std::vector<Change> written = work.get();
    EXPECT_FALSE(written.empty());
    EXPECT_TRUE(told.empty());
    journal->hear(written);
    EXPECT_EQ(told.size(), written.size());
    EXPECT_TRUE(journal->didLastIntentionChange());
    const std::size_t both = reader->ask(racksIn).value();
    addRack();
    EXPECT_EQ(reader->ask(racksIn).value(), both + 1) << "no id is given twice";
    ASSERT_TRUE(journal->undo());
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(reader->ask(racksIn).value(), both - 1);
    journal->removeListener(listener);
}

TEST_F(LedgerTest, AnAskWithinAnAskReadsTheSameState)
{
    const auto counts = reader->ask([&](Database& database) {
        const std::size_t outer = racksIn(database);
        addRack();
        return std::pair(outer, reader->ask(racksIn).value());
    });
    ASSERT_TRUE(counts);
    EXPECT_EQ(counts->first, counts->second);
}

TEST_F(LedgerTest, ARefusedAnswerLetsGoOfItsState)
{
    const auto refused = reader->ask([&](Database& database) -> Result<int> {
        (void)racksIn(database);
        return fail(ErrorKind::NotFound, StorageReason::EntryUnknown);
    });
    EXPECT_FALSE(refused);
    EXPECT_FALSE(reader->database().isInTransaction());
    addRack();
    EXPECT_EQ(reader->ask(racksIn).value(), 3U);
}

TEST_F(LedgerTest, AnythingThrownIsDamagedAndLeavesNoTransactionOpen)
{
    const auto thrown = reader->ask([](Database& database) -> int {
        (void)racksIn(database);
        throw std::out_of_range("a key");
    });
    ASSERT_FALSE(thrown);
    EXPECT_EQ(thrown.error().kind, ErrorKind::Damaged);
    EXPECT_TRUE(thrown.error().is(JournalReason::Unexpected));
    EXPECT_FALSE(reader->database().isInTransaction());
}

TEST_F(LedgerTest, AnIntentionThatThrowsIsRolledBack)
{
    journal.reset();
    Ledger writer(openJournalFile(path()).value(), clock);
    const std::string before = dump();
    const auto thrown = writer.record(Intention::AddRack, [](Database& database, Deed&) -> Done {
        RoomRepository(database).addRack("Z", 1, 1);
        throw std::bad_alloc();
    });
    ASSERT_FALSE(thrown);
    EXPECT_EQ(thrown.error().kind, ErrorKind::Damaged);
    EXPECT_FALSE(writer.database().isInTransaction());
    EXPECT_EQ(dump(), before);
    EXPECT_TRUE(writer.record(Intention::AddRack, [](Database& database, Deed&) -> Done {
        RoomRepository(database).addRack("Z", 1, 1);
        return {};
    }));
    EXPECT_NE(dump(), before);
}

// A worker reads the season table by table. Between two of its steps a tray is sown on a medium
// that did not exist when it read the media.
TEST_F(LedgerTest, AWorkersReviewDoesNotMixTwoStates)
{
    const auto trays = sown(drawnBeds());
    clock.set({clock.today() + 11, 9 * 60});
    for (const TrayId tray : trays) {
        weigh(tray, 250, clock.now());
    }
    const SeasonFilter season = journal->review().usualSeason();
    SeasonQuestion question;
    question.filter = season;
    const SeasonReview before = reviewIn(*journal, season).value();
    std::promise<void> isReading;
    std::promise<void> isWritten;
    std::atomic<int> steps = 0;
    Result<SeasonAnswer> during = fail(ErrorKind::Missing, ReviewReason::SeasonUnknown);
    std::thread worker([&, written = isWritten.get_future()] {
        const auto own = Journal::open(path(), clock, Access::ReadOnly);
        const Progress progress(
            [&](double) {
                if (++steps == 1) {
                    isReading.set_value();
                    written.wait();
                }
            },
            {});
        during = (*own)->review().season(question, progress);
    });
    isReading.get_future().wait();
    weighATrayOnANewMedium();
    isWritten.set_value();
    worker.join();
    ASSERT_TRUE(during) << told(during.error());
    EXPECT_GT(steps, 1);
    EXPECT_EQ(during->review.trays, before.trays);
    EXPECT_EQ(during->review.media.size(), before.media.size());
    EXPECT_EQ(during->review.leftOut.size(), before.leftOut.size());
    EXPECT_EQ(reviewIn(*journal, season)->trays, before.trays + 1);
}

} // namespace
} // namespace plumule
