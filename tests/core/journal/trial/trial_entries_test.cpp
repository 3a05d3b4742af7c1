#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/trial/trial_reason.h"

namespace plumule {
namespace {

class TrialEntriesTest : public JournalTest
{
protected:
    static Trial named(const std::string& name)
    {
        Trial trial;
        trial.name = name;
        return trial;
    }
};

TEST_F(TrialEntriesTest, ATrialWithoutACodeGetsTheNextOne)
{
    expectUndoable([&] { return journal->trials().save(named("Mesh against mix")); });
    EXPECT_EQ(journal->trials().all()->at(0).code, "T1");
    EXPECT_EQ(journal->trials().save(named("Again"))->code, "T2");
    Trial own = named("Spring");
    own.code = " S26 ";
    EXPECT_EQ(journal->trials().save(own)->code, "S26");
}

TEST_F(TrialEntriesTest, ATrialIsChanged)
{
    Trial trial = journal->trials().save(named("Mesh against mix")).value();
    trial.question = "Does the mesh yield more?";
    trial.margin = grams(20);
    trial.control = mediumNamed("Coir mix");
    trial.startedOn = clock.today();
    expectUndoable([&] { return journal->trials().save(trial); });
    EXPECT_EQ(journal->trials().all()->at(0), trial);
    EXPECT_EQ(journal->nextUndo()->intention, "trial.change");
}

TEST_F(TrialEntriesTest, RefusesATrialThatIsNotSound)
{
    expectRefused(ErrorKind::Missing, TrialReason::NameMissing,
                  [&] { return journal->trials().save(named("")); });
    ASSERT_TRUE(journal->trials().save(named("First")));
    Trial trial = named("Second");
    trial.code = "t1";
    expectRefused(ErrorKind::Duplicate, TrialReason::CodeTaken,
                  [&] { return journal->trials().save(trial); });
    trial.code = "";
    trial.margin = -grams(1);
    expectRefused(ErrorKind::Invalid, TrialReason::Margin,
                  [&] { return journal->trials().save(trial); });
    trial.margin.reset();
    trial.control = MediumId{99};
    expectRefused(ErrorKind::NotFound, TrialReason::ControlUnknown,
                  [&] { return journal->trials().save(trial); });
    trial.control.reset();
    trial.id = {99};
    expectRefused(ErrorKind::NotFound, TrialReason::Unknown,
                  [&] { return journal->trials().save(trial); });
}

TEST_F(TrialEntriesTest, OnlyATrialWithoutTraysIsRemoved)
{
    const Trial empty = journal->trials().save(named("Empty")).value();
    expectUndoable([&] { return journal->trials().remove(empty.id); });
    const Trial sown = journal->trials().save(named("Sown")).value();
    SowingDraft draft;
    draft.variety = varietyNamed("Radish");
    draft.medium = mediumNamed("Coir mix");
    draft.trial = sown.id;
    draft.block = 1;
    draft.at = clock.now();
    ASSERT_TRUE(journal->trays().sow(draft));
    expectRefused(ErrorKind::InUse, TrialReason::InUse,
                  [&] { return journal->trials().remove(sown.id); });
}

} // namespace
} // namespace plumule
