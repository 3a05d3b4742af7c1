#include "core/trial/trial_plan_repository.h"

#include "core/trial/trial_repository.h"

#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

class TrialPlanRepositoryTest : public StoreTest
{
protected:
    TrialPlanRepositoryTest()
    {
        database.execute("INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0)");
        for (const char* id : {"5", "6"}) {
            database.execute(std::string("INSERT INTO medium VALUES (") + id +
                             ", 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0)");
        }
        database.execute("INSERT INTO rack VALUES (1, 'A', 0);"
                         "INSERT INTO shelf VALUES (1, 1, '1', 0, NULL, NULL);"
                         "INSERT INTO place VALUES (1, 1, 1), (2, 1, 2), (3, 1, 3)");
    }

    TrialDraft stored(const std::string& code, const std::vector<std::int64_t>& places)
    {
        TrialDraft draft;
        draft.trial.code = code;
        draft.trial.name = code;
        TrialRepository(database).insert(draft.trial);
        draft.plan.design = Design::CompletelyRandom;
        draft.plan.variety = {1};
        draft.plan.sowOn = date(2026, 4, 1);
        draft.plan.sowMinute = 480;
        draft.plan.spread = grams(12.5);
        draft.plan.drawNumber = 9'000'000'000;
        for (const std::int64_t medium : {5, 6}) {
            Treatment treatment;
            treatment.medium = {medium};
            treatment.feeding = Feeding::NoNutrient;
            draft.treatments.push_back(treatment);
        }
        for (const std::int64_t place : places) {
            PlannedTray tray;
            tray.position = static_cast<int>(draft.trays.size()) + 1;
            tray.place = PlaceId{place};
            draft.trays.push_back(tray);
        }
        plans.store(draft);
        return draft;
    }

    TrialPlanRepository plans{database};
};

TEST_F(TrialPlanRepositoryTest, KeepsAPlanExactly)
{
    const TrialDraft draft = stored("T1", {2, 1});
    EXPECT_EQ(plans.find(draft.trial.id), draft);
    EXPECT_EQ(draft.treatments[1].position, 1);
    EXPECT_FALSE(plans.find({99}));
    const TrialDraft other = stored("T2", {});
    EXPECT_THAT(plans.all(), ElementsAre(draft, other));
}

TEST_F(TrialPlanRepositoryTest, StoresAChangedPlanOverTheOldOne)
{
    TrialDraft draft = stored("T1", {1, 2, 3});
    const auto before = draft.trays;
    draft.trays.pop_back();
    draft.trays[0].isMoved = true;
    draft.treatments.pop_back();
    plans.store(draft);
    const auto found = plans.find(draft.trial.id);
    EXPECT_EQ(found, draft);
    EXPECT_EQ(found->trays[1].id, before[1].id);
    EXPECT_EQ(database.scalar("SELECT count(*) FROM planned_tray"), 2);
    EXPECT_EQ(database.scalar("SELECT count(*) FROM treatment"), 1);
}

TEST_F(TrialPlanRepositoryTest, HoldsThePlacesOfPlansThatAreNotSown)
{
    TrialDraft first = stored("T1", {1});
    const TrialDraft second = stored("T2", {2, 3});
    EXPECT_THAT(plans.heldPlaces(first.trial.id), ElementsAre(PlaceId{2}, PlaceId{3}));
    EXPECT_THAT(plans.heldPlaces({}), SizeIs(3));
    EXPECT_FALSE(plans.isSown(first.trial.id));
    storeTray("CR001", 1, 5, ", sown_on, state", ", '2026-04-01', 'growing'");
    first.trays[0].tray = TrayId{database.scalar("SELECT id FROM tray")};
    plans.update(first.trays[0]);
    EXPECT_TRUE(plans.isSown(first.trial.id));
    EXPECT_THAT(plans.heldPlaces(second.trial.id), IsEmpty());
}

TEST_F(TrialPlanRepositoryTest, TakesAPlanOutAltogether)
{
    const TrialDraft draft = stored("T1", {1});
    const TrialDraft kept = stored("T2", {2});
    plans.remove(draft.trial.id);
    EXPECT_THAT(plans.all(), ElementsAre(kept));
    for (const char* table : {"trial_plan", "planned_tray"}) {
        EXPECT_EQ(database.scalar(std::string("SELECT count(*) FROM ") + table), 1) << table;
    }
}

TEST_F(TrialPlanRepositoryTest, CountsWhatWasSownOfEachMedium)
{
    const TrialDraft draft = stored("T1", {});
    const std::string trial = std::to_string(draft.trial.id.value);
    storeTray("CR001", 1, 5, ", trial_id, sown_on, state",
              ", " + trial + ", '2026-03-01', 'growing'");
    storeTray("CR002", 1, 5, ", trial_id, sown_on, state, ended_on",
              ", " + trial + ", '2026-03-01', 'harvested', '2026-03-12'");
    storeTray("CR003", 1, 6, ", trial_id, sown_on, state, ended_on",
              ", " + trial + ", '2026-03-01', 'discarded', '2026-03-14'");
    const auto sown = TrialRepository(database).sown();
    ASSERT_THAT(sown, SizeIs(2));
    EXPECT_EQ(sown[0].medium, MediumId{5});
    EXPECT_EQ(sown[0].trays, 2);
    EXPECT_EQ(sown[0].growing, 1);
    EXPECT_EQ(sown[0].harvested, 1);
    EXPECT_EQ(sown[0].lastHarvest, date(2026, 3, 12));
    EXPECT_EQ(sown[1].trays, 1);
    EXPECT_FALSE(sown[1].lastHarvest);
}

TEST_F(TrialPlanRepositoryTest, ATastingHoldsItsTrial)
{
    const TrialDraft draft = stored("T1", {});
    EXPECT_FALSE(TrialRepository(database).isInUse(draft.trial.id));
    database.execute("INSERT INTO panel VALUES (1, " + std::to_string(draft.trial.id.value) +
                     ", 'Radish', '2026-04-01', 'hedonic', 1, NULL, '')");
    EXPECT_TRUE(TrialRepository(database).isInUse(draft.trial.id));
}

} // namespace
} // namespace plumule
