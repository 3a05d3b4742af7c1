#include "tests/core/rack/rack_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kSowingDay = date(2026, 3, 2);
const Moment kSownAt{kSowingDay, 7 * 60};

// Broccoli, cut on its 13th day, as it stands in the morning of a day.
class RacksTest : public ::testing::Test
{
protected:
    void SetUp() override
    {
        facts.layout = threeShelves();
        facts.growing = {trayOf(2, broccoli(), inertMat(), kSownAt)};
    }

    // In the morning of that day of growth.
    RoomRacks on(int day)
    {
        facts.today = kSowingDay + (day - 1);
        RoundFacts asked;
        asked.layout = facts.layout;
        asked.growing = facts.growing;
        asked.waterings = waterings;
        asked.cuts = cuts;
        asked.now = Moment{facts.today, 7 * 60 + 10};
        facts.round = roundFrom(asked, facts.today, Slot::Morning);
        return racksFrom(facts);
    }
    static const StandingTray& trayIn(const RoomRacks& room) { return *room.walk()[1]->tray; }
    void bringIntoLight()
    {
        begin(facts.growing[0], 1, kSownAt + 3 * kDay);
        begin(facts.growing[0], 2, kSownAt + 4 * kDay);
    }

    RackFacts facts;
    std::vector<Watering> waterings;
    std::map<TrayId, CutMoments> cuts;
};

TEST_F(RacksTest, StandAsTheyAreWalked)
{
    const RoomRacks room = on(2);
    ASSERT_EQ(room.racks.size(), 2u);
    EXPECT_EQ(room.racks[0].rack.name, "A");
    ASSERT_EQ(room.racks[0].shelves.size(), 2u);
    EXPECT_EQ(room.racks[0].shelves[0].places.size(), 3u);
    EXPECT_EQ(room.racks[0].places(), 5);
    EXPECT_EQ(room.racks[0].taken(), 1);
    EXPECT_EQ(room.places(), 7);
    EXPECT_EQ(room.taken(), 1);
    const auto walk = room.walk();
    ASSERT_EQ(walk.size(), 7u);
    for (int rank = 0; rank < 7; ++rank) {
        EXPECT_EQ(walk[static_cast<std::size_t>(rank)]->spot.rank, rank);
    }
    EXPECT_EQ(trayIn(room).code, "BR002");
    EXPECT_EQ(room.placeOf(TrayId{2}), walk[1]);
    EXPECT_EQ(room.placeOf(TrayId{9}), nullptr);
    EXPECT_EQ(room.shelfOf(PlaceId{6})->shelf.name, "1");
    EXPECT_EQ(room.shelfOf(PlaceId{99}), nullptr);
}

// 180 µmol/m²/s over 16 hours are 10.368 mol/m²: 180 × 16 × 3600 / 1 000 000, the integral's
// definition.
TEST_F(RacksTest, AShelfsLightIsItsFluxTimesItsHours)
{
    facts.ppfds[ShelfId{11}] = 180;
    facts.ppfds[ShelfId{12}] = 200;
    const RoomRacks room = on(2);
    const ShelfLight& whole = room.racks[0].shelves[0].light;
    EXPECT_EQ(whole.watts, 40);
    EXPECT_EQ(whole.hours, 16);
    ASSERT_TRUE(whole.dli());
    EXPECT_NEAR(*whole.dli(), 180 * 16 * 3600 / 1e6, 1e-9);
    EXPECT_FALSE(room.racks[0].shelves[1].light.dli()) << "its hours are not known";
    EXPECT_FALSE(room.racks[1].shelves[0].light.dli()) << "its flux is not known";
}

TEST_F(RacksTest, ATrayTellsItsStageAndTheDaysToItsCut)
{
    RoomRacks room = on(2);
    EXPECT_EQ(trayIn(room).stage, Stage::UnderWeight);
    EXPECT_EQ(trayIn(room).day, 2);
    EXPECT_EQ(trayIn(room).cutOn, kSowingDay + 12);
    EXPECT_EQ(trayIn(room).daysToCut(room.today), 11);
    bringIntoLight();
    room = on(13);
    EXPECT_EQ(trayIn(room).stage, Stage::Light);
    EXPECT_EQ(trayIn(room).daysToCut(room.today), 0);
    EXPECT_TRUE(trayIn(room).isDue);
    EXPECT_FALSE(trayIn(room).isReady);
    EXPECT_EQ(trayIn(on(15)).daysToCut(kSowingDay + 14), -2) << "late";
}

TEST_F(RacksTest, ATrayIsReadyWhereItsNextStageIsDue)
{
    EXPECT_FALSE(trayIn(on(3)).isReady);
    EXPECT_TRUE(trayIn(on(4)).isReady);
    EXPECT_FALSE(trayIn(on(4)).isDue);
}

TEST_F(RacksTest, ATrayIsThirstyOnceAWateringWasMissedUntilItIsWatered)
{
    waterings = {misted(TrayId{2}, kSowingDay, Slot::Morning),
                 misted(TrayId{2}, kSowingDay, Slot::Evening)};
    EXPECT_FALSE(trayIn(on(2)).isThirsty);
    waterings.pop_back();
    EXPECT_TRUE(trayIn(on(2)).isThirsty);
    waterings.push_back(misted(TrayId{2}, kSowingDay + 1, Slot::Morning));
    EXPECT_FALSE(trayIn(on(2)).isThirsty);
}

TEST_F(RacksTest, ATrayThatWasCutAndGrowsOnKeepsItsPlace)
{
    bringIntoLight();
    cuts[TrayId{2}] = {Moment{kSowingDay + 12, 9 * 60}};
    const RoomRacks room = on(14);
    EXPECT_FALSE(trayIn(room).isDue);
    EXPECT_FALSE(trayIn(room).cutOn);
    EXPECT_EQ(room.evenings.back().free, 6);
}

TEST_F(RacksTest, TraysThatStandNowhereAreTold)
{
    facts.growing.push_back(trayOf(3, broccoli(), inertMat(), kSownAt));
    facts.growing.push_back(trayOf(1, broccoli(), inertMat(), kSownAt));
    facts.growing[1].place.reset();
    facts.growing[2].place.reset();
    const RoomRacks room = on(2);
    ASSERT_EQ(room.offRacks.size(), 2u);
    EXPECT_EQ(room.offRacks[0].code, "BR001");
    EXPECT_EQ(room.find(TrayId{3})->code, "BR003");
    EXPECT_EQ(room.find(TrayId{4}), nullptr);
    EXPECT_EQ(room.taken(), 1);
    EXPECT_EQ(room.evenings.front().free, 6) << "they take no place";
}

TEST_F(RacksTest, ATrayWithoutStagesStandsWithoutADay)
{
    facts.growing[0].stages.clear();
    const RoomRacks room = on(2);
    EXPECT_FALSE(trayIn(room).stage);
    EXPECT_FALSE(trayIn(room).cutOn);
    EXPECT_EQ(room.evenings.back().free, 6);
}

TEST_F(RacksTest, APlaceIsKeptForTheFirstSowingThatIsPlannedThere)
{
    facts.planned = {{"T8", kSowingDay + 9, kSowingDay + 20, 2, {{1}, {2}}},
                     {"T7", kSowingDay + 4, kSowingDay + 9, 1, {{1}}}};
    const RoomRacks room = on(2);
    EXPECT_EQ(room.walk()[0]->heldFor, "T7");
    EXPECT_EQ(room.walk()[0]->heldFrom, kSowingDay + 4);
    EXPECT_EQ(room.walk()[1]->heldFor, "T8");
    EXPECT_FALSE(room.walk()[2]->heldFor);
}

TEST_F(RacksTest, APlannedTrialTakesPlacesFromItsSoakToItsCut)
{
    TrialDraft draft;
    draft.trial.code = "T9";
    draft.plan.sowOn = kSowingDay;
    draft.plan.sowMinute = 20 * 60;
    draft.trays.resize(3);
    draft.trays[0].place = PlaceId{4};
    const Room room;
    auto sowing = plannedSowingOf(draft, soaked(), room);
    ASSERT_TRUE(sowing);
    EXPECT_EQ(*sowing, (PlannedSowing{"T9", kSowingDay, kSowingDay + 12, 3, {{4}}}));
    draft.plan.startsWithSoak = true;
    sowing = plannedSowingOf(draft, soaked(), room);
    EXPECT_EQ(sowing->until, kSowingDay + 13) << "soaked until four in the morning";
    EXPECT_FALSE(plannedSowingOf(draft, Protocol(), room)) << "without stages";
    draft.trays[1].tray = TrayId{1};
    EXPECT_FALSE(plannedSowingOf(draft, soaked(), room)) << "sown";
    draft.trays.clear();
    EXPECT_FALSE(plannedSowingOf(draft, soaked(), room)) << "not drawn";
}

} // namespace
} // namespace plumule
