#include "core/trial/trial_places.h"

#include "core/tray/tray_repository.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const Date kSowOn = date(2026, 4, 10);

// Two shelves, of three places and of two; a plan that is sown on 10 April at 08:00.
class TrialPlacesTest : public StoreTest
{
protected:
    TrialPlacesTest()
    {
        database.execute(
            "INSERT INTO room VALUES (1, 'Room', 'metric', 'EUR', 420, 1080, 508000, 254000);"
            "INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0);"
            "INSERT INTO medium VALUES (5, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0);"
            "INSERT INTO medium VALUES (6, 'Mat', 'mat', 0, 0, NULL, NULL, NULL, 1, '', '', 0);"
            "INSERT INTO rack VALUES (1, 'A', 0);"
            "INSERT INTO shelf VALUES (1, 1, '1', 0, NULL, NULL), (2, 1, '2', 1, NULL, NULL);"
            "INSERT INTO place VALUES (1, 1, 1), (2, 1, 2), (3, 1, 3), (4, 2, 1), (5, 2, 2)");
        draft.trial.code = "T1";
        draft.plan.variety = {1};
        draft.plan.design = Design::CompletelyRandom;
        draft.plan.sowOn = kSowOn;
        draft.plan.sowMinute = 8 * 60;
        draft.plan.traysEach = 2;
        draft.plan.drawNumber = 3;
        draft.treatments.resize(2);
        draft.treatments[0].medium = {5};
        draft.treatments[1].position = 1;
        draft.treatments[1].medium = {6};
    }

    // Stands at the place; its one stage has begun at 08:00 of the day and lasts so many days.
    void grow(std::int64_t place, Date from, int days)
    {
        Tray tray;
        tray.code = "CR" + std::to_string(place);
        tray.variety = {1};
        tray.medium = {5};
        tray.sownOn = from;
        tray.sownMinute = 8 * 60;
        trays.insert(tray);
        Stay stay;
        stay.tray = tray.id;
        stay.place = {place};
        stay.fromOn = from;
        trays.insert(stay);
        if (days > 0) {
            TrayStage stage;
            stage.tray = tray.id;
            stage.stage = Stage::Light;
            stage.plannedOn = from;
            stage.plannedMinute = 8 * 60;
            stage.lengthMinutes = days * kMinutesPerDay;
            stage.startedOn = from;
            stage.startedMinute = 8 * 60;
            trays.insert(stage);
        }
    }

    std::vector<std::int64_t> free()
    {
        std::vector<std::int64_t> places;
        for (const Spot& spot : freeSpotsFor(database, draft)) {
            places.push_back(spot.place.value);
        }
        return places;
    }

    TrayRepository trays{database};
    TrialDraft draft;
};

TEST_F(TrialPlacesTest, AreAllInWalkingOrderInAnEmptyRoom)
{
    EXPECT_THAT(free(), ElementsAre(1, 2, 3, 4, 5));
}

TEST_F(TrialPlacesTest, AreFreeOfTraysThatAreDueByThen)
{
    grow(1, kSowOn - 10, 10); // due at the minute of sowing
    grow(2, kSowOn - 10, 11); // due a day later
    grow(3, kSowOn - 20, 10); // long overdue
    grow(5, kSowOn - 10, 0);  // brought in without stages: no one knows
    EXPECT_THAT(free(), ElementsAre(1, 3, 4));
    draft.plan.sowMinute = 8 * 60 - 1;
    EXPECT_THAT(free(), ElementsAre(3, 4));
    draft.plan.sowOn = kSowOn + 1;
    draft.plan.sowMinute = 8 * 60;
    EXPECT_THAT(free(), ElementsAre(1, 2, 3, 4));
}

TEST_F(TrialPlacesTest, ATrayThatWasPutOffIsInTheWayLonger)
{
    grow(1, kSowOn - 10, 10);
    database.execute("UPDATE tray_stage SET delay_min = 1");
    EXPECT_THAT(free(), ElementsAre(2, 3, 4, 5));
}

TEST_F(TrialPlacesTest, AreNotThoseThatAnotherPlanHoldsButItsOwn)
{
    TrialRepository(database).insert(draft.trial);
    PlannedTray planned;
    planned.place = PlaceId{2};
    draft.trays = {planned};
    TrialPlanRepository(database).store(draft);
    EXPECT_THAT(free(), ElementsAre(1, 2, 3, 4, 5)) << "its own";
    draft.trial.id = {};
    EXPECT_THAT(free(), ElementsAre(1, 3, 4, 5));
}

TEST_F(TrialPlacesTest, OneDrawTakesEachFreePlaceOnceAndIsMadeAgain)
{
    grow(3, kSowOn - 1, 10);
    const auto drawn = drawFor(database, draft);
    ASSERT_TRUE(drawn);
    std::set<std::int64_t> places;
    for (const PlannedTray& tray : *drawn) {
        places.insert(tray.place.value().value);
    }
    EXPECT_THAT(places, ElementsAre(1, 2, 4, 5));
    EXPECT_EQ(drawFor(database, draft), drawn);
}

TEST_F(TrialPlacesTest, ABlockStandsOnOneShelf)
{
    draft.plan.design = Design::RandomizedBlocks;
    draft.plan.blocks = 2;
    grow(1, kSowOn - 1, 10);
    const auto drawn = drawFor(database, draft);
    ASSERT_TRUE(drawn);
    std::map<int, std::set<std::int64_t>> blocks;
    for (const PlannedTray& tray : *drawn) {
        blocks[tray.block].insert(tray.place.value().value);
    }
    EXPECT_THAT(blocks[1], ElementsAre(2, 3));
    EXPECT_THAT(blocks[2], ElementsAre(4, 5));
}

TEST_F(TrialPlacesTest, TooFewAreCounted)
{
    for (const int place : {1, 2, 3}) {
        grow(place, kSowOn - 1, 10);
    }
    const auto refused = drawFor(database, draft);
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(TrialReason::TooFewPlaces));
    EXPECT_THAT(refused.error().values, ElementsAre("2", "4"));
    grow(4, kSowOn - 1, 10);
    grow(5, kSowOn - 1, 10);
    EXPECT_THAT(free(), IsEmpty());
    EXPECT_FALSE(drawFor(database, draft));
}

} // namespace
} // namespace plumule
