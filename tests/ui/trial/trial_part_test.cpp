#include "tests/ui/support/setup_fixture.h"
#include "ui/trial/trial_part.h"

namespace plumule::ui {
namespace {

class TrialPartTest : public SetupTest
{
protected:
    std::vector<Trial> trials() { return journal->trials().all().value(); }
    Trial addTrial(const std::string& name)
    {
        Trial trial;
        trial.name = name;
        trial.question = "Does it matter?";
        trial.margin = grams(20);
        trial.control = mediumNamed("Coir mix")->id;
        trial.startedOn = date(2026, 2, 1);
        return journal->trials().save(trial).value();
    }
};

TEST_F(TrialPartTest, SavesANewTrialUnderTheNextFreeCode)
{
    const auto part = openPart<TrialPart>();
    press(*part, "newRecord");
    write(*part, "trialName", "Mesh or coir");
    write(*part, "trialMargin", "17,5");
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    ASSERT_EQ(trials().size(), 1U);
    EXPECT_EQ(trials().front().name, "Mesh or coir");
    EXPECT_EQ(trials().front().margin, grams(17.5));
    EXPECT_EQ(trials().front().startedOn, clock.today());
    EXPECT_FALSE(trials().front().control.has_value());
    EXPECT_FALSE(trials().front().code.empty());
    EXPECT_TRUE(recordsOf(*part).front().contains("Mesh or coir"));
    pressMessageAction();
    EXPECT_TRUE(trials().empty());
}

TEST_F(TrialPartTest, ChangesWhatWasTypedAndNothingElse)
{
    const Trial before = addTrial("Mesh or coir");
    const auto part = openPart<TrialPart>();
    write(*part, "trialName", "Mesh or coir, again");
    press(*part, "saveRecord");
    Trial expected = before;
    expected.name = "Mesh or coir, again";
    ASSERT_EQ(trials().size(), 1U);
    EXPECT_EQ(trials().front(), expected);
}

TEST_F(TrialPartTest, RefusesATrialWithoutANameAndAMarginThatIsNone)
{
    const auto part = openPart<TrialPart>();
    press(*part, "newRecord");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    write(*part, "trialName", "Mesh or coir");
    write(*part, "trialMargin", "some");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(find<QLineEdit>(*part, "trialMargin")->property("wrong").toBool());
    EXPECT_TRUE(trials().empty());
    EXPECT_EQ(textOf(*part, "trialName"), "Mesh or coir");
}

TEST_F(TrialPartTest, KeepsWhatIsBeingTypedWhenSomethingElseChanges)
{
    addTrial("First");
    const auto part = openPart<TrialPart>();
    press(*part, "newRecord");
    write(*part, "trialName", "Half a na");
    addTrial("Second");
    settleDown();
    EXPECT_EQ(textOf(*part, "trialName"), "Half a na");
    EXPECT_EQ(recordsOf(*part).size(), 2);
}

TEST_F(TrialPartTest, KeepsTheMarginWhenTheRoomsUnitsChange)
{
    addTrial("First");
    const auto part = openPart<TrialPart>();
    EXPECT_EQ(textOf(*part, "trialMargin"), "20");
    useUsUnits();
    EXPECT_EQ(textOf(*part, "trialMargin"), "0.705");
    press(*part, "saveRecord");
    EXPECT_NEAR(inGrams(*trials().front().margin), 20, 0.02);
}

TEST_F(TrialPartTest, RemovesATrialUnlessTraysBelongToIt)
{
    const Trial first = addTrial("First");
    SowingDraft draft = broccoli(1, kTwoDaysAgo);
    draft.trial = first.id;
    sow(draft);
    addTrial("Second");
    const auto part = openPart<TrialPart>();
    chooseRecord(*part, QString::fromStdString(first.code));
    press(*part, "removeRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(trials().size(), 2U);
    chooseRecord(*part, QString::fromStdString(trials().front().code));
    press(*part, "removeRecord");
    EXPECT_FALSE(messages.isRefusal());
    ASSERT_EQ(trials().size(), 1U);
    EXPECT_EQ(trials().front().name, "First");
}

} // namespace
} // namespace plumule::ui
