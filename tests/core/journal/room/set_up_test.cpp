#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/told.h"

#include <functional>

namespace plumule {
namespace {

class SetUpTest : public JournalTest
{
protected:
    using Intentions = std::vector<std::pair<std::string, std::function<std::optional<Error>()>>>;

    template <class Answer>
    static std::optional<Error> errorOf(const Answer& answer)
    {
        return answer ? std::nullopt : std::optional(answer.error());
    }
    // Each intention of setting up, with arguments that a writable journal would take.
    Intentions intentions()
    {
        Intentions all = intentionsOfTheRoom();
        for (auto& each : intentionsOfWhatGrows()) {
            all.push_back(std::move(each));
        }
        return all;
    }
    Intentions intentionsOfTheRoom()
    {
        const RoomLayout layout = journal->room().layout().value();
        return {
            {"room", [=, this] { return errorOf(journal->room().changeRoom(layout.room)); }},
            {"rack", [=, this] { return errorOf(journal->room().addRack("Z", 1, 1)); }},
            {"rack change",
             [=, this] { return errorOf(journal->room().changeRack(layout.racks[0])); }},
            {"rack removal",
             [=, this] { return errorOf(journal->room().removeRack(layout.racks[1].id)); }},
            {"shelf",
             [=, this] { return errorOf(journal->room().addShelf(layout.racks[0].id, "Z", 1)); }},
            {"shelf removal",
             [=, this] { return errorOf(journal->room().removeShelf(layout.shelves[0].id)); }},
            {"places",
             [=, this] {
                 return errorOf(journal->room().changeRoom(layout.room, {{layout.shelves[1], 9}}));
             }},
        };
    }
    Intentions intentionsOfWhatGrows()
    {
        const Variety dill = journal->varieties().protocol(varietyNamed("Dill"))->variety;
        const MediumId mesh = mediumNamed("Steel mesh");
        return {
            {"variety",
             [=, this] {
                 return errorOf(journal->varieties().save({dill, {}}));
             }},
            {"variety removal",
             [=, this] { return errorOf(journal->varieties().remove(varietyNamed("Kale"))); }},
            {"lot",
             [=, this] {
                 SeedLot lot;
                 lot.variety = dill.id;
                 lot.lotNumber = "D-1";
                 return errorOf(journal->varieties().saveLot(lot));
             }},
            {"medium",
             [=, this] {
                 Medium medium;
                 medium.name = "Wool mat";
                 return errorOf(journal->media().save(medium));
             }},
            {"medium removal",
             [=, this] { return errorOf(journal->media().remove(mediumNamed("Hemp mat"))); }},
            {"pieces",
             [=, this] { return errorOf(journal->media().addPieces(mesh, 1, std::nullopt)); }},
            {"trial",
             [=, this] {
                 Trial trial;
                 trial.name = "Mesh against mix";
                 return errorOf(journal->trials().save(trial));
             }},
        };
    }

    void reopenToRead()
    {
        journal.reset();
        auto opened = Journal::open(path(), clock, Access::ReadOnly);
        ASSERT_TRUE(opened);
        journal = std::move(*opened);
    }
};

TEST_F(SetUpTest, AWritableJournalTakesEveryIntention)
{
    for (const auto& [name, intend] : intentions()) {
        const auto refused = intend();
        EXPECT_FALSE(refused) << name << ": " << told(*refused);
    }
}

TEST_F(SetUpTest, AJournalOpenToReadTakesNone)
{
    reopenToRead();
    const std::string before = dump();
    for (const auto& [name, intend] : intentions()) {
        const auto refused = intend();
        ASSERT_TRUE(refused) << name;
        EXPECT_EQ(static_cast<int>(refused->kind), static_cast<int>(ErrorKind::ReadOnly)) << name;
    }
    EXPECT_EQ(dump(), before);
}

TEST_F(SetUpTest, AllOfItIsTakenBackAndDoneAgainInOneRow)
{
    const std::string empty = dump();
    int done = 0;
    for (const auto& [name, intend] : intentions()) {
        const auto entriesBefore = journal->latestEntries(100)->size();
        ASSERT_FALSE(intend()) << name;
        done += journal->latestEntries(100)->size() > entriesBefore ? 1 : 0;
    }
    const std::string full = dump();
    for (int i = 0; i < done; ++i) {
        ASSERT_TRUE(journal->undo()) << i;
    }
    EXPECT_EQ(dump(), empty);
    EXPECT_FALSE(journal->nextUndo());
    reopen();
    for (int i = 0; i < done; ++i) {
        ASSERT_TRUE(journal->redo()) << i;
    }
    EXPECT_EQ(dump(), full);
    EXPECT_FALSE(journal->redo());
}

// A tray keeps the protocol it was sown with.
TEST_F(SetUpTest, ChangingAProtocolLeavesSownTraysAlone)
{
    SowingDraft draft;
    draft.variety = varietyNamed("Broccoli");
    draft.medium = mediumNamed("Coir mix");
    draft.at = clock.now();
    const TrayId tray = journal->trays().sow(draft)->front();
    const auto before = journal->trays().sheet(tray)->record.stages;
    Protocol broccoli = journal->varieties().protocol(draft.variety).value();
    broccoli.stages.back().lengthMinutes += kMinutesPerDay;
    broccoli.stages.front().cue = "other";
    ASSERT_TRUE(journal->varieties().save(broccoli));
    EXPECT_EQ(journal->trays().sheet(tray)->record.stages, before);
}

TEST_F(SetUpTest, ARoomOfAnySizeIsBuiltAsPlanned)
{
    RoomPlan plan = smallRoom();
    plan.racks = 3;
    plan.shelvesPerRack = 4;
    plan.placesPerShelf = 5;
    FixedClock still = clock;
    const auto created = Journal::create(folder.path() / "other.plumule", plan, still);
    ASSERT_TRUE(created);
    const auto spots = (*created)->room().layout()->spots();
    ASSERT_EQ(spots.size(), 60U);
    EXPECT_EQ(spots.back().rack, "C");
    EXPECT_EQ(spots.back().shelf, "4");
    EXPECT_EQ(spots.back().number, 5);
    EXPECT_EQ(spots.back().rank, 59);
}

} // namespace
} // namespace plumule
