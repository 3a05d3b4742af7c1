#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/review/facts/review_reason.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <algorithm>
#include <chrono>

namespace plumule {
namespace {

// Plans and reviews of trials, through the journal's own door.
class PlanAnswersTest : public JournalTest
{
protected:
    void fillWithSample()
    {
        const Done filled = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
        ASSERT_TRUE(filled) << told(filled.error());
    }

    // A medium that is used once.
    MediumId addMedium(const std::string& name)
    {
        Medium medium;
        medium.name = name;
        medium.amountPerTray = litres(2);
        return journal->media().save(medium).value().id;
    }

    TrialDraft draftOf(const std::vector<MediumId>& media, Design design)
    {
        TrialDraft draft;
        draft.trial.name = "Planned here";
        draft.trial.margin = grams(30);
        draft.plan.variety = journal->varieties().all().value().front().id;
        draft.plan.seedPerTray = grams(20);
        draft.plan.design = design;
        draft.plan.sowOn = date(2026, 3, 2);
        draft.plan.sowMinute = 480;
        draft.plan.spread = grams(16);
        draft.plan.blocks = 2;
        draft.plan.traysEach = static_cast<int>(media.size());
        draft.plan.drawNumber = 11;
        for (const MediumId medium : media) {
            Treatment treatment;
            treatment.position = static_cast<int>(draft.treatments.size());
            treatment.medium = medium;
            draft.treatments.push_back(treatment);
        }
        return draft;
    }

    // Draws, keeps, sows and harvests; each tray weighs what `yieldOf` says.
    TrialDraft carryOut(TrialDraft draft, double (*yieldOf)(const PlannedTray&))
    {
        draft.trays = journal->trials().draw(draft).value();
        const auto kept = journal->trials().savePlan(draft);
        EXPECT_TRUE(kept) << told(kept.error());
        const auto sown = journal->trials().sow(*kept, kept->plan.sowAt());
        EXPECT_TRUE(sown) << told(sown.error());
        TrialDraft done = journal->trials().draft(kept->trial.id).value();
        for (const PlannedTray& planned : done.trays) {
            WeighingDraft weighing;
            weighing.tray = planned.tray.value();
            weighing.bowls = {{grams(yieldOf(planned) + 10), grams(10)}};
            weighing.at = {done.plan.sowOn + 12, 600};
            clock.set(std::max(clock.now(), weighing.at));
            weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet,
                                 Doubt::TareForgotten, Doubt::UnstableReading};
            const auto weighed = journal->harvests().record(weighing);
            EXPECT_TRUE(weighed) << told(weighed.error());
        }
        return done;
    }
};

TEST_F(PlanAnswersTest, ForeseesWithAGivenSpreadInANewJournal)
{
    TrialDraft draft =
        draftOf({addMedium("Felt one"), addMedium("Felt two")}, Design::CompletelyRandom);
    draft.plan.traysEach = 4;
    const auto outlook = journal->review().plan(draft)->outlook;
    ASSERT_TRUE(outlook) << told(outlook.error());
    EXPECT_NEAR(outlook->chosen.power, 0.60, 0.01);
    draft.plan.spread.reset();
    EXPECT_EQ(journal->review().plan(draft)->outlook.error(),
              fail(ErrorKind::TooFew, ReviewReason::NoYieldYet).value());
}

TEST_F(PlanAnswersTest, ForeseesFromTheRoomsOwnTrays)
{
    fillWithSample();
    TrialDraft draft = draftOf({}, Design::RandomizedBlocks);
    const auto season = reviewIn(*journal, journal->review().usualSeason()).value();
    ASSERT_GE(season.media.size(), 2u);
    for (const MediumSeason& medium : season.media) {
        Treatment treatment;
        treatment.position = static_cast<int>(draft.treatments.size());
        treatment.medium = medium.medium.id;
        draft.treatments.push_back(treatment);
    }
    draft.plan.spread.reset();
    draft.plan.blocks = 4;
    draft.plan.traysEach = 4;
    const auto outlook = journal->review().plan(draft)->outlook;
    ASSERT_TRUE(outlook) << told(outlook.error());
    EXPECT_FALSE(outlook->isOwnSpread);
    EXPECT_EQ(outlook->spreadFrom, SpreadFrom::Room);
    EXPECT_GT(outlook->spreadTrays, 4);
    EXPECT_GT(outlook->mean, 100);
    EXPECT_LT(outlook->spread, outlook->mean / 2);
    EXPECT_GT(outlook->chosen.power, 0.05);
    ASSERT_TRUE(outlook->smallestDifference);
}

TEST_F(PlanAnswersTest, JudgesThePlacesAsDrawn)
{
    TrialDraft draft =
        draftOf({addMedium("Felt one"), addMedium("Felt two")}, Design::RandomizedBlocks);
    draft.trays = journal->trials().draw(draft).value();
    const auto findings = journal->review().plan(draft)->fairness;
    const auto shelf = std::find_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.aspect == Aspect::Shelf;
    });
    ASSERT_NE(shelf, findings.end());
    EXPECT_EQ(shelf->confounding, Confounding::Alike);
    EXPECT_FALSE(shelf->media.at(0).levels.at(0).name.empty());
}

// A square without chance: shelves are worth 10, places 4, media 30; one tray is 3 off, so that
// something is left over.
TEST_F(PlanAnswersTest, TakesTheColumnsOfASquareThatWasSownHere)
{
    const std::vector<MediumId> media = {addMedium("Felt one"), addMedium("Felt two"),
                                         addMedium("Felt three")};
    const TrialDraft done =
        carryOut(draftOf(media, Design::LatinSquare), [](const PlannedTray& tray) {
            return 200.0 + 30 * tray.treatment + 10 * tray.block + 4 * tray.position +
                   (tray.block == 1 && tray.position == 1 ? 3 : 0);
        });
    clock.set({date(2026, 4, 1), 480});
    const auto answer = trialAnswerIn(*journal, done.trial.id)->season.comparisons.front();
    ASSERT_EQ(answer.n, 9);
    const ModelTerm* column = answer.model.model.find(ModelPart::Column);
    ASSERT_NE(column, nullptr);
    EXPECT_EQ(column->place, TermPlace::Fixed);
    EXPECT_EQ(column->levels, 3);
    EXPECT_EQ(answer.model.model.find(ModelPart::Medium)->df2, 2) << "(t − 1)(t − 2)";
    EXPECT_EQ(answer.margin.from, MarginFrom::Trials);
    EXPECT_NEAR(answer.margin.percent, 100 * 30 / answer.grandMean, 1e-9);
}

TEST_F(PlanAnswersTest, TakesNoBlocksFromATrialLeftToChance)
{
    TrialDraft draft =
        draftOf({addMedium("Felt one"), addMedium("Felt two")}, Design::CompletelyRandom);
    draft.plan.traysEach = 3;
    const TrialDraft done = carryOut(draft, [](const PlannedTray& tray) {
        return 200.0 + 30 * tray.treatment + tray.position * tray.position % 5;
    });
    clock.set({date(2026, 4, 1), 480});
    const auto answer = trialAnswerIn(*journal, done.trial.id)->season.comparisons.front();
    ASSERT_EQ(answer.n, 6);
    EXPECT_EQ(answer.model.model.find(ModelPart::Block), nullptr);
    EXPECT_EQ(answer.model.model.find(ModelPart::Medium)->df2, 4) << "t(n − 1)";
}

TEST_F(PlanAnswersTest, FilterOfATrialBeginsWithItsFirstSowing)
{
    TrialDraft draft =
        draftOf({addMedium("Felt one"), addMedium("Felt two")}, Design::RandomizedBlocks);
    draft.plan.sowOn = date(2026, 3, 20);
    draft.trays = journal->trials().draw(draft).value();
    const TrialDraft kept = journal->trials().savePlan(draft).value();
    const SeasonFilter planned = trialAnswerIn(*journal, kept.trial.id)->season.review.filter;
    EXPECT_EQ(planned.from, date(2026, 3, 20));
    EXPECT_GT(planned.to, date(2026, 6, 1));
    EXPECT_EQ(planned.trials, std::vector<TrialId>{kept.trial.id});
}

TEST_F(PlanAnswersTest, ATrialAloneIsReadAsItIsWithinTheSeason)
{
    fillWithSample();
    const auto rows = journal->trials().all().value();
    ASSERT_FALSE(rows.empty());
    for (const Trial& trial : rows) {
        SeasonFilter wide = journal->review().usualSeason();
        const SeasonReview all = reviewIn(*journal, wide).value();
        int trays = 0;
        for (const MediumSeason& medium : all.media) {
            trays += static_cast<int>(
                std::count_if(medium.trays.begin(), medium.trays.end(),
                              [&](const SeasonTray& tray) { return tray.trial == trial.code; }));
        }
        SeasonFilter only = trialAnswerIn(*journal, trial.id)->season.review.filter;
        only.from = wide.from;
        only.to = wide.to;
        EXPECT_EQ(reviewIn(*journal, only).value().trays, trays) << trial.code;
    }
}

TEST_F(PlanAnswersTest, AShelfsTraysAreThoseThatWereLitThere)
{
    fillWithSample();
    const SeasonFilter all = journal->review().usualSeason();
    const int trays = reviewIn(*journal, all).value().trays;
    int sum = 0;
    const RoomLayout layout = journal->room().layout().value();
    for (const Shelf& shelf : layout.shelves) {
        SeasonFilter one = all;
        one.shelves = {shelf.id};
        sum += reviewIn(*journal, one).value().trays;
    }
    EXPECT_GT(sum, 0);
    EXPECT_LE(sum, trays);
}

class WhatIfAnswersTest : public PlanAnswersTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        fillWithSample();
        filter = journal->review().usualSeason();
    }
    static const MediumSeason* reusableIn(const SeasonReview& review)
    {
        const auto found =
            std::find_if(review.media.begin(), review.media.end(), [](const MediumSeason& season) {
                return season.medium.isReusable && season.paysBackAt;
            });
        return found == review.media.end() ? nullptr : &*found;
    }
    SeasonFilter filter;
};

TEST_F(WhatIfAnswersTest, ChangesTheAnswerAndNothingElse)
{
    const std::string before = dumpOf(journal->path());
    const SeasonReview asIs = reviewIn(*journal, filter).value();
    const MediumSeason* piece = reusableIn(asIs);
    ASSERT_NE(piece, nullptr);
    WhatIf whatIf;
    whatIf.mediumPrices[piece->medium.id] = money(1000);
    const SeasonReview dear = reviewIn(*journal, filter, whatIf).value();
    const auto same =
        std::find_if(dear.media.begin(), dear.media.end(), [&](const MediumSeason& season) {
            return season.medium.id == piece->medium.id;
        });
    EXPECT_GT(*same->costPerGram, *piece->costPerGram);
    EXPECT_GT(same->paysBackAt.value_or(100000), *piece->paysBackAt);
    ComparisonAsk ask;
    ask.response = Response::CostPerGram;
    const auto compared = comparisonIn(*journal, filter, ask, whatIf).value();
    for (const ComparedMedium& mean : compared.means) {
        if (mean.medium.id == piece->medium.id) {
            EXPECT_GT(*mean.mean, 0);
        }
    }
    EXPECT_EQ(dumpOf(journal->path()), before);
    EXPECT_NEAR(*reusableIn(reviewIn(*journal, filter).value())->costPerGram, *piece->costPerGram,
                1e-12);
}

TEST_F(WhatIfAnswersTest, PaybackHasTheSeasonsUseWithinItsInterval)
{
    const SeasonReview review = reviewIn(*journal, filter).value();
    const auto paybacks = partsIn(*journal, filter)->paybacks;
    ASSERT_FALSE(paybacks.empty());
    for (const Payback& payback : paybacks) {
        const auto season =
            std::find_if(review.media.begin(), review.media.end(), [&](const MediumSeason& one) {
                return one.medium.id == payback.medium.id;
            });
        EXPECT_EQ(payback.at, season->paysBackAt);
        ASSERT_EQ(payback.curve.size(), season->costCurve.size());
        for (const CostBand& band : payback.curve) {
            EXPECT_LE(band.low, band.cost);
            EXPECT_GE(band.high, band.cost);
        }
        if (payback.at && payback.low && payback.high) {
            EXPECT_LE(*payback.low, *payback.at);
            EXPECT_GE(*payback.high, *payback.at);
        }
    }
}

TEST_F(WhatIfAnswersTest, AgeingCountsTheUsesOfEachPiece)
{
    const auto ageing = partsIn(*journal, filter)->ageing;
    ASSERT_FALSE(ageing.empty());
    for (const PieceAgeing& one : ageing) {
        EXPECT_TRUE(one.medium.isReusable);
        EXPECT_GE(one.trays, 3);
        EXPECT_GE(one.mostUses, 2);
        EXPECT_EQ(one.points.size(), static_cast<std::size_t>(one.trays));
        if (one.lower && one.upper) {
            EXPECT_LE(*one.lower, *one.slope);
            EXPECT_GE(*one.upper, *one.slope);
        }
    }
}

} // namespace
} // namespace plumule
