#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/harvest/harvest_fixture.h"

#include "core/harvest/harvest_reason.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

using WeighInTest = HarvestTest;

TEST_F(WeighInTest, ListsWhatIsDueInWalkingOrderAndWhatIsWeighedNewestFirst)
{
    const std::vector<TrayId> trays = sowTillDue(3);
    ASSERT_TRUE(journal->trays().moveTo(trays[0], std::nullopt, clock.now()));
    EXPECT_THAT(codesDue(clock.today() - 1), IsEmpty());
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC002", "QC003", "QC001"));
    EXPECT_THAT(codesDue(clock.today() + 9), ElementsAre("QC002", "QC003", "QC001"));

    ASSERT_TRUE(harvests().record(weighing(trays[1], 280, 42)));
    clock.set(clock.now() + 2);
    ASSERT_TRUE(harvests().record(weighing(trays[2], 290, 43)));
    const WeighIn answer = harvests().weighIn(clock.today()).value();
    ASSERT_EQ(answer.done.size(), 2U);
    EXPECT_EQ(answer.done[0].code, "QC003");
    EXPECT_EQ(answer.done[1].code, "QC002");
    EXPECT_EQ(answer.done[0].seed, grams(10));
    EXPECT_EQ(answer.done[0].medium.name, "Coir mix");
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC001"));
    EXPECT_THAT(harvests().weighIn(clock.today() + 1).value().done, IsEmpty());
}

TEST_F(WeighInTest, ListsTheResiduesStillToWeigh)
{
    const std::vector<TrayId> trays = sowTillDue(3);
    ASSERT_TRUE(harvests().record(weighing(trays[0], 280)));
    clock.set(clock.now() + 2);
    ASSERT_TRUE(harvests().record(weighing(trays[1], 281)));
    const auto due = harvests().residuesDue(clock.today()).value();
    ASSERT_EQ(due.size(), 2U);
    EXPECT_EQ(due[0].code, "QC002");
    EXPECT_EQ(due[1].code, "QC001");

    const auto residue = harvests().recordResidue(weighing(trays[0], 900, 240));
    ASSERT_TRUE(residue);
    EXPECT_EQ(residue->net, grams(900));
    EXPECT_EQ(residue->gross, grams(1140));
    EXPECT_EQ(harvests().residuesDue(clock.today()).value().size(), 1U);
    EXPECT_THAT(harvests().residuesDue(clock.today() + 15).value(), IsEmpty());
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().recordResidue(weighing(trays[0], 900, 240)); });
}

TEST_F(WeighInTest, ShowsTheTrialSoFar)
{
    Trial trial;
    trial.name = "Cress twice";
    trial = journal->trials().save(trial).value();
    const std::vector<TrayId> trays = sowTillDue(4, trial.id);
    ASSERT_TRUE(harvests().record(weighing(trays[1], 280)));
    WeighingDraft first = weighing(trays[2], 100);
    first.isLast = false;
    ASSERT_TRUE(harvests().record(first));
    ASSERT_TRUE(journal->trays().discard(trays[3], "mould", clock.now()));
    const auto answer = harvests().atScale("QC001").value().trial;
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->trial.name, "Cress twice");
    ASSERT_EQ(answer->dots.size(), 3U);
    EXPECT_FALSE(answer->dots[0].yield);
    EXPECT_EQ(answer->dots[1].yield, grams(280));
    EXPECT_FALSE(answer->dots[2].yield) << "it is cut again later";
    sow(1);
    EXPECT_FALSE(harvests().atScale("QC005").value().trial);
}

TEST_F(WeighInTest, OfAnEmptyDayIsEmpty)
{
    const WeighIn answer = harvests().weighIn(clock.today()).value();
    EXPECT_EQ(answer.date, clock.today());
    EXPECT_THAT(answer.due, IsEmpty());
    EXPECT_THAT(answer.done, IsEmpty());
    EXPECT_THAT(harvests().residuesDue(clock.today()).value(), IsEmpty());
}

TEST_F(WeighInTest, ADiscardedTrayIsNeitherDueNorLacksAResidue)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    ASSERT_TRUE(journal->trays().discard(trays[0], "mould", clock.now()));
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC002"));
    EXPECT_THAT(harvests().residuesDue(clock.today()).value(), IsEmpty());
}

TEST_F(WeighInTest, AResidueIsWantedForAFortnight)
{
    ASSERT_TRUE(harvests().record(weighing(sowTillDue(1).front(), 280)));
    const Date cut = clock.today();
    EXPECT_EQ(harvests().residuesDue(cut + 14).value().size(), 1U);
    EXPECT_THAT(harvests().residuesDue(cut + 15).value(), IsEmpty());
    EXPECT_THAT(harvests().residuesDue(cut - 1).value(), IsEmpty()) << "it was not cut yet";
}

TEST_F(WeighInTest, ATraySetAsideIsNoPartOfItsTrial)
{
    Trial trial;
    trial.name = "Cress twice";
    trial = journal->trials().save(trial).value();
    const std::vector<TrayId> trays = sowTillDue(3, trial.id);
    ASSERT_TRUE(journal->trays().setAside(trays[0], "lamp out"));
    const auto answer = harvests().atScale("QC002").value().trial;
    ASSERT_TRUE(answer);
    ASSERT_EQ(answer->dots.size(), 2U);
    EXPECT_EQ(answer->dots[0].code, "QC002");
}

} // namespace
} // namespace plumule
