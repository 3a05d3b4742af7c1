#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/query_counter.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <iostream>

namespace plumule {
namespace {

// How often the journal's tables are read for one answer.
class ReadsTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        const Done filled = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
        ASSERT_TRUE(filled) << told(filled.error());
        reopen(); // so that its connection is counted
        filter = journal->review().usualSeason();
    }

    // Nothing is asked twice, but where one plan, panel or variety is looked up after another.
    void expectReadOnce(const char* answer, int most)
    {
        RecordProperty(answer, queries.count());
        std::cout << answer << ": " << queries.count() << " queries\n";
        EXPECT_LE(queries.count(), most) << answer;
        for (const char* table : {"DISTINCT tray_id FROM harvest", "FROM watering", "FROM height",
                                  "to_minute FROM stay", "FROM tray_stage", "FROM residue",
                                  "FROM price ", "FROM climate_hour"}) {
            EXPECT_LE(queries.countOf(table), 1) << answer << ": " << queries.textsOf(table);
        }
    }

    [[nodiscard]] TrialId endedTrial()
    {
        const auto rows = journal->trials().list().value();
        for (const TrialRow& row : rows) {
            if (row.state == TrialState::Ended && row.harvested > 0) {
                return row.trial.id;
            }
        }
        ADD_FAILURE() << "the sample has no trial that ended";
        return {};
    }

    QueryCounter queries;
    SeasonFilter filter;
};

TEST_F(ReadsTest, ASeasonIsReadOnceWhateverIsAskedOfIt)
{
    queries.restart();
    ASSERT_TRUE(comparisonIn(*journal, filter));
    expectReadOnce("a comparison", 32);
    const int alone = queries.count();

    SeasonQuestion question;
    question.filter = filter;
    question.beside = spansOf(filter, Split::YearBefore);
    for (const Response response : {Response::YieldPerTray, Response::CostPerGram,
                                    Response::HeightOnDay, Response::Residue}) {
        question.asks.emplace_back().response = response;
    }
    question.parts = {SeasonPart::HeightFits, SeasonPart::Paybacks, SeasonPart::Ageing};
    queries.restart();
    ASSERT_TRUE(journal->review().season(question));
    expectReadOnce("four comparisons, all their parts and two seasons beside", 32);
    EXPECT_EQ(queries.count(), alone);
}

TEST_F(ReadsTest, AReportAddsTastingsAndProtocols)
{
    queries.restart();
    const auto answer = partsIn(*journal, filter);
    ASSERT_TRUE(answer && answer->tastings && answer->protocols);
    const auto panels = static_cast<int>(answer->tastings->closed.size());
    const auto protocols = static_cast<int>(answer->protocols->size());
    ASSERT_GT(panels, 0);
    ASSERT_GT(protocols, 0);
    expectReadOnce("a report of the season", 32 + 1 + 5 * panels + 2 * protocols);
}

TEST_F(ReadsTest, ATrialIsReadOnce)
{
    const TrialId trial = endedTrial();
    queries.restart();
    ASSERT_TRUE(trialAnswerIn(*journal, trial));
    std::cout << "a trial's answer: " << queries.count() << " queries\n";
    EXPECT_LE(queries.count(), 52);
    EXPECT_EQ(queries.countOf("FROM watering"), 1);
}

TEST_F(ReadsTest, APlanIsReadOnce)
{
    TrialDraft draft = journal->trials().newDraft().value();
    draft.trial.name = "Which bed?";
    draft.trays = journal->trials().draw(draft).value();
    queries.restart();
    ASSERT_TRUE(journal->review().plan(draft));
    expectReadOnce("a plan's outlook and fairness", 17);
}

} // namespace
} // namespace plumule
