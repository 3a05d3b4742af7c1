#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/trial/trial_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

using UsualTrialTest = TrialTest;

TEST_F(UsualTrialTest, AFirstDraftStandsOnTheLibraryAndTheNextMorning)
{
    TrialDraft draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.trial.code, "T1");
    EXPECT_TRUE(draft.plan.variety.isStored());
    EXPECT_EQ(draft.treatments.size(), 2U);
    EXPECT_EQ(draft.trial.control, draft.treatments[0].medium);
    EXPECT_EQ(draft.plan.design, Design::RandomizedBlocks);
    EXPECT_EQ(draft.plan.blocks, 4);
    // The clock stands at 07:30, past the morning's round of 07:00.
    EXPECT_EQ(draft.plan.sowAt(), (Moment{clock.today() + 1, 7 * 60}));
    EXPECT_THAT(draft.trays, SizeIs(8));
    draft.trial.name = "Named";
    EXPECT_TRUE(journal->trials().savePlan(draft));
    EXPECT_EQ(journal->trials().newDraft()->trial.code, "T2");
}

TEST_F(UsualTrialTest, ADraftFollowsWhatWasSownOfLate)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.at = clock.now();
    for (const auto& [medium, count] : {std::pair(peat.id, 1), std::pair(mix.id, 3)}) {
        sowing.medium = medium;
        sowing.count = count;
        ASSERT_TRUE(journal->trays().sow(sowing));
    }
    SeedLot half;
    half.variety = cress;
    half.lotNumber = "L2";
    half.bought = grams(500);
    ASSERT_TRUE(journal->varieties().saveLot(half));
    clock.set({clock.today() + 1, 6 * 60});
    const TrialDraft draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.plan.variety, cress);
    EXPECT_EQ(draft.plan.seedLot, lot) << "the fuller one";
    ASSERT_THAT(draft.treatments, SizeIs(2));
    EXPECT_EQ(draft.treatments[0].medium, mix.id) << "sown most";
    EXPECT_EQ(draft.treatments[1].medium, peat.id);
    EXPECT_EQ(draft.plan.sowAt(), (Moment{clock.today(), 7 * 60})) << "still to come";
}

TEST_F(UsualTrialTest, ADraftWaitsForTheMorningWhenItsPlacesAreFree)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.medium = mix.id;
    sowing.at = clock.now();
    const auto spots = journal->room().freeSpots().value();
    for (const Spot& spot : spots) {
        sowing.places.push_back(spot.place);
    }
    sowing.count = static_cast<int>(sowing.places.size());
    const auto sown = journal->trays().sow(sowing);
    ASSERT_TRUE(sown);
    const Moment harvest = journal->trays().sheet(sown->front())->plan.harvest;
    const TrialDraft draft = journal->trials().newDraft().value();
    ASSERT_FALSE(draft.trays.empty()) << toIso(harvest.date) << " " << toIso(draft.plan.sowOn);
    EXPECT_LE(harvest, draft.plan.sowAt());
    EXPECT_LT(draft.plan.sowAt() + -kMinutesPerDay, harvest) << "the first such morning";
    clock.set({clock.today() - 30, 6 * 60});
    EXPECT_THAT(journal->trials().newDraft()->trays, IsEmpty()) << "none within three weeks";
}

TEST_F(UsualTrialTest, ComparesFourMediaAtMostTheMostSownFirst)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.at = clock.now();
    const std::vector<std::pair<MediumId, int>> sown = {{mix.id, 2},
                                                        {peat.id, 5},
                                                        {mediumNamed("Coir mix"), 4},
                                                        {mediumNamed("Hemp mat"), 3},
                                                        {mediumNamed("Wood-fibre mat"), 1}};
    for (const auto& [medium, count] : sown) {
        sowing.medium = medium;
        sowing.count = count;
        ASSERT_TRUE(journal->trays().sow(sowing));
    }
    const TrialDraft draft = journal->trials().newDraft().value();
    std::vector<MediumId> media;
    for (const Treatment& treatment : draft.treatments) {
        EXPECT_EQ(treatment.position, static_cast<int>(media.size()));
        EXPECT_EQ(treatment.feeding, Feeding::AsProtocol);
        media.push_back(treatment.medium);
    }
    EXPECT_THAT(media, ElementsAre(peat.id, sown[2].first, sown[3].first, mix.id));
    EXPECT_EQ(draft.trial.control, peat.id);
}

TEST_F(UsualTrialTest, WhatWasSownHalfAYearAgoCountsWhereNothingWasSince)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.medium = peat.id;
    sowing.at = clock.now();
    ASSERT_TRUE(journal->trays().sow(sowing));
    clock.set({clock.today() + 181, 6 * 60});
    TrialDraft draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.plan.variety, cress);
    EXPECT_EQ(draft.treatments.at(0).medium, peat.id);
    sowing.variety = varietyNamed("Radish");
    sowing.medium = mix.id;
    sowing.at = clock.now();
    ASSERT_TRUE(journal->trays().sow(sowing));
    draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.plan.variety, sowing.variety) << "it is of late";
    EXPECT_EQ(draft.treatments.at(0).medium, mix.id);
    EXPECT_NE(draft.treatments.at(1).medium, peat.id);
}

TEST_F(UsualTrialTest, BeginsThisMorningUntilItsMinute)
{
    clock.set({clock.today(), 7 * 60 - 1});
    EXPECT_EQ(journal->trials().newDraft()->plan.sowAt(), (Moment{clock.today(), 7 * 60}));
    clock.set({clock.today(), 7 * 60});
    EXPECT_EQ(journal->trials().newDraft()->plan.sowAt(), (Moment{clock.today() + 1, 7 * 60}));
}

TEST_F(UsualTrialTest, ARetiredMediumIsNotOffered)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.medium = peat.id;
    sowing.at = clock.now();
    ASSERT_TRUE(journal->trays().sow(sowing));
    peat.isRetired = true;
    ASSERT_TRUE(journal->media().save(peat));
    const TrialDraft draft = journal->trials().newDraft().value();
    ASSERT_THAT(draft.treatments, SizeIs(2));
    EXPECT_NE(draft.treatments[0].medium, peat.id);
    EXPECT_NE(draft.treatments[1].medium, peat.id);
}

} // namespace
} // namespace plumule
