#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/trial/trial_fixture.h"
#include "tests/support/season_asks.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

class TrialReadingTest : public TrialTest
{
protected:
    TrialProgress progress() { return journal->trials().progress(newestTrial()).value(); }

    std::vector<std::string> lacks()
    {
        std::vector<std::string> said;
        for (const TrialLack& lack : progress().lacks) {
            said.push_back(toIso(lack.on) + " " + lack.code +
                           (lack.gap == TrialGap::NoHeight ? " height" : " weight"));
        }
        return said;
    }
    void read(TrayId tray, Moment at)
    {
        ASSERT_TRUE(journal->trays().noteHeight(tray, millimetres(40), ReadFrom::Surface, at));
    }
    // Four trays on mix and mesh.
    std::vector<TrayId> sownPair()
    {
        TrialDraft draft = beds();
        draft.treatments.pop_back();
        draft.plan.blocks = 2;
        draft.plan.traysEach = 2;
        return sown(drawn(draft));
    }
};

TEST_F(TrialReadingTest, APlannedTrialHasItsDraftAndNoTrays)
{
    const TrialDraft kept = journal->trials().savePlan(drawnBeds()).value();
    const TrialProgress planned = progress();
    EXPECT_EQ(planned.state, TrialState::Planned);
    EXPECT_EQ(planned.draft, kept);
    EXPECT_THAT(planned.trays, IsEmpty());
    EXPECT_THAT(planned.lacks, IsEmpty());
    EXPECT_EQ(journal->trials().progress({99}).error().kind, ErrorKind::NotFound);
}

TEST_F(TrialReadingTest, ASownTrialIsShownByBlockAndPosition)
{
    TrialDraft draft = beds();
    draft.treatments[2].feeding = Feeding::Nutrient;
    draft = drawn(draft);
    sown(draft);
    const TrialProgress now = progress();
    EXPECT_EQ(now.state, TrialState::Growing);
    ASSERT_THAT(now.trays, SizeIs(12));
    for (std::size_t i = 0; i < now.trays.size(); ++i) {
        const TrialTray& tray = now.trays[i];
        EXPECT_EQ(tray.block, draft.trays[i].block);
        EXPECT_EQ(tray.position, draft.trays[i].position);
        EXPECT_EQ(tray.spot.value().place, draft.trays[i].place);
        EXPECT_EQ(tray.feeding,
                  draft.treatments[static_cast<std::size_t>(draft.trays[i].treatment)].feeding);
        EXPECT_EQ(tray.plan.harvest, draft.plan.sowAt() + 10 * kMinutesPerDay);
        EXPECT_FALSE(tray.yield);
    }
}

TEST_F(TrialReadingTest, YieldsAndResiduesComeInUntilItIsDone)
{
    const auto trays = sownPair();
    const Moment due{clock.today() + 11, 9 * 60};
    clock.set(due);
    for (const TrayId tray : trays) {
        EXPECT_EQ(progress().state, TrialState::Growing);
        weigh(tray, 250, due);
    }
    WeighingDraft residue;
    residue.tray = trays[1];
    residue.bowls = {{grams(130), grams(30)}};
    residue.at = due;
    ASSERT_TRUE(journal->harvests().recordResidue(residue));
    const TrialProgress done = progress();
    EXPECT_EQ(done.state, TrialState::Ended);
    EXPECT_EQ(done.trays[0].yield, grams(250));
    EXPECT_EQ(done.trays[1].residue, grams(100));
    EXPECT_FALSE(done.trays[0].residue);
    EXPECT_TRUE(done.trays[0].spot) << "where it last stood";
}

TEST_F(TrialReadingTest, ADayOnWhichHalfWereReadLacksTheOthers)
{
    const auto trays = sownPair();
    const Date day = clock.today() + 6;
    clock.set({day + 1, 9 * 60});
    read(trays[0], {day, 480});
    EXPECT_THAT(lacks(), IsEmpty()) << "one of four is no reading of the trial";
    read(trays[3], {day, 480});
    EXPECT_THAT(lacks(), ElementsAre("2026-03-08 CR002 height", "2026-03-08 CR003 height"));
    read(trays[1], {day, 500});
    read(trays[2], {day + 1, 500});
    EXPECT_THAT(lacks(), ElementsAre("2026-03-08 CR003 height"));
}

TEST_F(TrialReadingTest, TraysThatHaveEndedLackNoHeight)
{
    const auto trays = sownPair();
    const Date day = clock.today() + 6;
    clock.set({day, 9 * 60});
    ASSERT_TRUE(journal->trays().discard(trays[0], "mould", {day, 480}));
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", {day - 1, 480}));
    read(trays[2], {day, 480});
    EXPECT_THAT(lacks(), ElementsAre("2026-03-08 CR004 height")) << "one of the two that grew";
}

TEST_F(TrialReadingTest, ATrayPastItsHarvestLacksItsWeight)
{
    const auto trays = sownPair();
    const Date due = clock.today() + 11;
    clock.set({due, 9 * 60});
    EXPECT_THAT(lacks(), IsEmpty()) << "today is still time";
    clock.set({due + 1, 9 * 60});
    weigh(trays[0], 250, clock.now());
    ASSERT_TRUE(journal->trays().notYet(trays[1], 2 * kMinutesPerDay));
    EXPECT_THAT(lacks(), ElementsAre("2026-03-13 CR003 weight", "2026-03-13 CR004 weight"));
    // Cut when it was due, to be cut again: nothing is lacking.
    WeighingDraft first;
    first.tray = trays[2];
    first.bowls = {{grams(150), grams(40)}};
    first.at = {due, 600};
    first.isLast = false;
    first.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet};
    ASSERT_TRUE(journal->harvests().record(first));
    EXPECT_THAT(lacks(), ElementsAre("2026-03-13 CR004 weight"));
}

TEST_F(TrialReadingTest, TraysGivenToATrialByHandAreFollowedToo)
{
    Trial trial;
    trial.name = "By hand";
    trial = journal->trials().save(trial).value();
    SowingDraft draft;
    draft.variety = cress;
    draft.medium = mix.id;
    draft.count = 2;
    draft.trial = trial.id;
    draft.block = 2;
    draft.at = clock.now();
    ASSERT_TRUE(journal->trays().sow(draft));
    const TrialProgress now = progress();
    EXPECT_FALSE(now.draft);
    ASSERT_THAT(now.trays, SizeIs(2));
    EXPECT_EQ(now.trays[1].block, 2);
    EXPECT_EQ(now.trays[1].position, 2);
    EXPECT_FALSE(now.trays[0].spot);
}

TEST_F(TrialReadingTest, TheDiaryPutsNotesAndPhotosOfOneDaySideBySide)
{
    const auto trays = sownPair();
    const TrialProgress now = progress();
    const auto firstOn = [&](const Medium& medium) {
        return std::find_if(now.trays.begin(), now.trays.end(), [&](const TrialTray& tray) {
            return tray.record.medium.id == medium.id;
        });
    };
    const TrayId onMix = firstOn(mix)->record.tray.id;
    const TrayId onMesh = firstOn(mesh)->record.tray.id;
    const auto file = folder.path() / "picture.jpg";
    std::ofstream(file) << "not a picture, only a file";
    const Date day = clock.today() + 5;
    ASSERT_TRUE(journal->trays().writeNote(onMesh, "Even", {day + 1, 480}));
    ASSERT_TRUE(journal->trays().writeNote(onMix, "Patchy", {day, 480}));
    ASSERT_TRUE(journal->trays().attachPhoto(onMesh, file, "Left", {day, 490}));
    const auto days = trialAnswerIn(*journal, now.trial.id)->diary.value();
    ASSERT_THAT(days, SizeIs(2));
    EXPECT_EQ(days[0].on, day);
    ASSERT_THAT(days[0].media, SizeIs(2));
    EXPECT_EQ(days[0].media[0].medium.id, mix.id);
    EXPECT_EQ(days[0].media[0].notes.at(0).second.text, "Patchy");
    EXPECT_THAT(days[0].media[0].photos, IsEmpty());
    EXPECT_EQ(days[0].media[1].photos.at(0).second.caption, "Left");
    EXPECT_EQ(days[0].media[1].photos.at(0).first, firstOn(mesh)->record.tray.code);
    EXPECT_THAT(days[1].media, SizeIs(1));
    EXPECT_EQ(trialAnswerIn(*journal, {99}).error().kind, ErrorKind::NotFound);
}

TEST_F(TrialReadingTest, TheListSaysHowFarEachTrialIs)
{
    const auto trays = sownPair();
    const Date cutOn = clock.today() + 11;
    weigh(trays[0], 250, {cutOn, 600});
    TrialDraft later = beds();
    later.trial.code = "";
    later.plan.sowOn = clock.today() + 30;
    ASSERT_TRUE(journal->trials().savePlan(later));
    Trial bare;
    bare.name = "Only named";
    bare.startedOn = date(2025, 1, 1);
    ASSERT_TRUE(journal->trials().save(bare));
    const auto rows = journal->trials().list().value();
    ASSERT_THAT(rows, SizeIs(3));
    EXPECT_EQ(rows[0].trial.code, "T2");
    EXPECT_EQ(rows[0].state, TrialState::Planned);
    EXPECT_EQ(rows[0].trays, 12);
    EXPECT_THAT(rows[0].media, SizeIs(3));
    EXPECT_EQ(rows[0].variety, "Cress");
    EXPECT_EQ(rows[1].trial.code, "T1");
    EXPECT_EQ(rows[1].state, TrialState::Growing);
    EXPECT_EQ(rows[1].trays, 4);
    EXPECT_EQ(rows[1].growing, 3);
    EXPECT_EQ(rows[1].harvested, 1);
    EXPECT_EQ(rows[1].lastHarvest, cutOn);
    EXPECT_THAT(rows[1].media, SizeIs(2));
    EXPECT_EQ(rows[2].trial.name, "Only named");
    EXPECT_EQ(rows[2].trays, 0);
    EXPECT_THAT(rows[2].media, IsEmpty());
}

} // namespace
} // namespace plumule
