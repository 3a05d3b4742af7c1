#include "core/journal/rack/rack_entries.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/tray/tray_reason.h"
#include "tests/core/journal/trial/trial_fixture.h"

namespace plumule {
namespace {

// Four shelves of four places; cress that grows ten days stands on the first places.
class RackEntriesTest : public TrialTest
{
protected:
    std::vector<TrayId> sowCress(int count)
    {
        SowingDraft draft;
        draft.variety = cress;
        draft.medium = mix.id;
        draft.count = count;
        draft.at = clock.now();
        for (int i = 0; i < count; ++i) {
            draft.places.push_back(place(i));
        }
        const auto sown = journal->trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        clock.set(clock.now() + 60);
        return sown.value_or(std::vector<TrayId>());
    }
    PlaceId place(int rank)
    {
        return journal->room().layout().value().spots().at(static_cast<std::size_t>(rank)).place;
    }
    Done move(const std::vector<TrayMove>& moves)
    {
        return journal->racks().move(moves, clock.now());
    }
    std::optional<int> rankOf(TrayId tray)
    {
        const RoomRacks room = journal->racks().racks().value();
        const StandingPlace* standing = room.placeOf(tray);
        return standing == nullptr ? std::nullopt : std::optional(standing->spot.rank);
    }
    HistoryEntry last() { return journal->latestEntries(1).value().front(); }
};

TEST_F(RackEntriesTest, TellWhatStandsWhere)
{
    const auto trays = sowCress(3);
    const ShelfId shelf = journal->room().layout().value().spots().front().shelfId;
    ASSERT_TRUE(journal->climate().setLampLight({{shelf, 150.0}}));
    const RoomRacks room = journal->racks().racks().value();
    EXPECT_EQ(room.places(), 16);
    EXPECT_EQ(room.taken(), 3);
    EXPECT_EQ(room.racks[0].shelves[0].light.ppfd, 150);
    EXPECT_EQ(room.walk()[2]->tray->tray, trays[2]);
    EXPECT_EQ(room.evenings.size(), 28u);
    EXPECT_EQ(room.evenings.front().free, 13);
    EXPECT_EQ(room.evenings[9].free, 13);
    EXPECT_EQ(room.evenings[10].free, 16);
}

TEST_F(RackEntriesTest, APlannedTrialTakesItsPlaces)
{
    const auto kept = journal->trials().savePlan(drawnBeds());
    ASSERT_TRUE(kept) << told(kept.error());
    const RoomRacks room = journal->racks().racks().value();
    EXPECT_EQ(room.evenings[0].planned, 0);
    EXPECT_EQ(room.evenings[1].planned, 12);
    EXPECT_EQ(room.evenings[1].free, 4);
    EXPECT_EQ(room.evenings[11].planned, 0) << "cut after ten days";
    int held = 0;
    for (const StandingPlace* each : room.walk()) {
        held += each->heldFor ? 1 : 0;
    }
    EXPECT_EQ(held, 12);
}

TEST_F(RackEntriesTest, SeveralTraysAreOneActThatIsTakenBackWhole)
{
    const auto trays = sowCress(2);
    expectUndoable([&] { return move({{trays[0], place(9)}, {trays[1], place(10)}}); });
    EXPECT_EQ(rankOf(trays[0]), 9);
    EXPECT_EQ(last().intention, "tray.move_several");
    EXPECT_EQ(last().subject, "CR001, CR002");
    EXPECT_EQ(last().details, (std::vector<std::string>{"B1", "2", "B1", "3"}));
}

TEST_F(RackEntriesTest, ATrayMayTakeThePlaceThatAnotherLeaves)
{
    const auto trays = sowCress(2);
    ASSERT_TRUE(move({{trays[0], place(1)}, {trays[1], place(2)}}));
    EXPECT_EQ(rankOf(trays[0]), 1);
    EXPECT_EQ(rankOf(trays[1]), 2);
}

TEST_F(RackEntriesTest, TwoTraysChangePlaces)
{
    const auto trays = sowCress(2);
    expectUndoable([&] { return move({{trays[0], place(1)}, {trays[1], place(0)}}); });
    EXPECT_EQ(rankOf(trays[0]), 1);
    EXPECT_EQ(rankOf(trays[1]), 0);
    EXPECT_EQ(last().intention, "tray.swap");
    EXPECT_EQ(last().details, (std::vector<std::string>{"CR001", "CR002"}));
}

TEST_F(RackEntriesTest, TraysAreTakenOffTogetherAndPutBack)
{
    const auto trays = sowCress(2);
    expectUndoable([&] { return move({{trays[0], std::nullopt}, {trays[1], std::nullopt}}); });
    EXPECT_EQ(last().intention, "tray.take_several_off");
    EXPECT_EQ(journal->racks().racks().value().offRacks.size(), 2u);
    clock.set(clock.now() + 5);
    ASSERT_TRUE(move({{trays[1], place(0)}}));
    EXPECT_EQ(last().intention, "tray.move_to");
    EXPECT_EQ(rankOf(trays[1]), 0);
    EXPECT_FALSE(rankOf(trays[0]));
}

TEST_F(RackEntriesTest, NothingMovesWhereOneOfThemMayNot)
{
    const auto trays = sowCress(3);
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTaken, [&] {
        return move({{trays[0], place(8)}, {trays[1], place(2)}});
    });
    expectRefused(ErrorKind::NotFound, TrayReason::PlaceUnknown, [&] {
        return move({{trays[0], place(8)}, {trays[1], PlaceId{99}}});
    });
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTwice, [&] {
        return move({{trays[0], place(8)}, {trays[1], place(8)}});
    });
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown, [&] {
        return move({{trays[0], place(8)}, {TrayId{99}, place(9)}});
    });
    expectRefused(ErrorKind::Invalid, TrayReason::MoveBeforeStay, [&] {
        return journal->racks().move({{trays[0], place(8)}}, clock.now() + -90);
    });
    ASSERT_TRUE(journal->trays().discard(trays[2], "mould", clock.now()));
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing, [&] {
        return move({{trays[0], place(8)}, {trays[2], place(9)}});
    });
}

TEST_F(RackEntriesTest, AMoveToWhereTheTrayStandsIsNoAct)
{
    const auto trays = sowCress(1);
    const std::string before = dump();
    ASSERT_TRUE(move({{trays[0], place(0)}}));
    EXPECT_FALSE(journal->didLastIntentionChange());
    EXPECT_EQ(before, dump());
}

} // namespace
} // namespace plumule
