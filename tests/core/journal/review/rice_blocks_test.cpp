#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include "core/exchange/csv.h"
#include "tests/support/told.h"

#include <cmath>

namespace plumule {
namespace {

// Gomez & Gomez 1984, Statistical Procedures for Agricultural Research, Wiley, p. 26: rice sown at
// six rates (kg/ha) in four blocks, yields in kg/ha. Here a gram a tray stands for a kg/ha, a
// medium for a rate, a shelf for a block. Data file gomez_seedrate_rcbd.csv.
// Published: F of blocks 5.86, F of rates 2.17 (df 5 and 15), CV 6.7 %; Tukey's difference at 5 %
// 763.9, worked out again from the same data (stat_worked_examples.csv).
class RiceBlocksTest : public JournalTest
{
protected:
    void SetUp() override
    {
        RoomPlan plan = smallRoom();
        plan.placesPerShelf = 6;
        createJournal(plan);
        readYields();
        for (const auto& [rate, yields] : m_yields) {
            Medium medium;
            medium.name = rate + " kg of seed a ha";
            medium.form = MediumForm::Mat;
            medium.isNutrientBearing = false;
            m_rates.emplace(journal->media().save(medium).value().id, rate);
        }
    }

    void readYields()
    {
        const std::string file = PLUMULE_REFERENCES "/handbook/stat_data/gomez_seedrate_rcbd.csv";
        const auto text = textOfFile(file);
        ASSERT_TRUE(text) << file;
        const CsvTable table = csvFrom(*text).value();
        for (const auto& row : table.rows) {
            m_yields[row.at(0)][row.at(1)] = std::stod(row.at(2));
        }
        ASSERT_EQ(m_yields.size(), 6U);
    }

    TrialDraft seedRates()
    {
        TrialDraft draft = journal->trials().newDraft().value();
        draft.trial.name = "Rice seeding rates";
        draft.trial.control.reset();
        draft.plan.variety = varietyNamed("Radish");
        draft.plan.blocks = 4;
        draft.plan.traysEach = 4;
        draft.plan.drawNumber = 26;
        draft.treatments.clear();
        for (const auto& [medium, rate] : m_rates) {
            Treatment treatment;
            treatment.medium = medium;
            draft.treatments.push_back(treatment);
        }
        draft.trays = journal->trials().draw(draft).value();
        return draft;
    }

    void weighAsPublished(TrialId trial, Moment at)
    {
        const TrialProgress progress = journal->trials().progress(trial).value();
        for (const TrialTray& tray : progress.trays) {
            const std::string& rate = m_rates.at(tray.record.medium.id);
            WeighingDraft weighing;
            weighing.tray = tray.record.tray.id;
            const double net = m_yields.at(rate).at("R" + std::to_string(tray.block));
            weighing.bowls = {{grams(net + 42), grams(42)}};
            weighing.at = at;
            weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet};
            const auto done = journal->harvests().record(weighing);
            ASSERT_TRUE(done) << told(done.error());
        }
    }

    std::map<std::string, std::map<std::string, double>> m_yields; // by rate, then block
    std::map<MediumId, std::string> m_rates;
};

TEST_F(RiceBlocksTest, GivesThePublishedResultThroughTheJournalsOwnDoor)
{
    const TrialDraft draft = journal->trials().savePlan(seedRates()).value();
    const auto sown = journal->trials().sow(draft, draft.plan.sowAt());
    ASSERT_TRUE(sown) << told(sown.error());
    ASSERT_EQ(sown->size(), 24U);
    const Moment harvest = journal->trials().progress(draft.trial.id)->trays[0].plan.harvest;
    clock.set(harvest);
    weighAsPublished(draft.trial.id, harvest);
    ASSERT_EQ(journal->trials().progress(draft.trial.id)->state, TrialState::Ended);

    const auto answer = trialAnswerIn(*journal, draft.trial.id);
    ASSERT_TRUE(answer) << told(answer.error());
    const SeasonComparison& yield = answer->season.comparisons.front();
    EXPECT_EQ(yield.n, 24);
    const TrayModel* result = &yield.model;
    const ModelTerm* rates = result->model.find(ModelPart::Medium);
    ASSERT_NE(rates, nullptr);
    EXPECT_NEAR(rates->f.value(), 2.17, 0.005);
    EXPECT_EQ(rates->df1, 5);
    EXPECT_EQ(rates->df2, 15);
    const ModelTerm* blocks = result->model.find(ModelPart::Block);
    ASSERT_NE(blocks, nullptr);
    EXPECT_NEAR(blocks->f.value(), 5.86, 0.005);
    EXPECT_EQ(blocks->df1, 3);
    EXPECT_NEAR(100 * result->sd / yield.grandMean, 6.7, 0.05);
    EXPECT_NEAR(result->df.value(), 15, 1e-9);
    ASSERT_EQ(result->pairs.size(), 15U);
    for (const ModelPair& pair : result->pairs) {
        EXPECT_NEAR((pair.upper.value() - pair.lower.value()) / 2, 763.9, 0.05);
    }
    ASSERT_EQ(yield.pairs.size(), 15U);
    for (const MediaPair& pair : yield.pairs) {
        EXPECT_NE(pair.verdict, stats::Verdict::More) << "no rate is clear of another";
        EXPECT_NE(pair.verdict, stats::Verdict::Less);
    }
}

TEST_F(RiceBlocksTest, FindsNothingUnfairInWhatWasDrawn)
{
    const TrialDraft draft = seedRates();
    const auto answer = journal->review().plan(draft);
    ASSERT_TRUE(answer);
    EXPECT_TRUE(answer->fairness.empty());
}

} // namespace
} // namespace plumule
