#include "core/journal/medium/medium_entries.h"
#include "core/journal/rules/rule_reason.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/medium/medium_reason.h"
#include "core/tasting/tasting_draw.h"
#include "core/tasting/tasting_reason.h"
#include "core/trial/trial_reason.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/told.h"

#include <fstream>
#include <sstream>

namespace plumule {
namespace {

class TastingEntriesTest : public JournalTest
{
protected:
    std::vector<MediumId> media(std::size_t count)
    {
        while (journal->media().all()->size() < count) {
            Medium medium;
            medium.name = "Invented bed " + std::to_string(journal->media().all()->size());
            EXPECT_TRUE(journal->media().save(medium));
        }
        std::vector<MediumId> ids;
        const auto all = journal->media().all();
        for (const Medium& each : *all) {
            if (ids.size() < count) {
                ids.push_back(each.id);
            }
        }
        return ids;
    }
    PanelDraft draftWith(TastingMethod method, std::size_t samples, int tasters)
    {
        PanelDraft draft = journal->tastings().newDraft(std::nullopt).value();
        draft.panel.name = "First tasting";
        draft.panel.method = method;
        draft.media = media(samples);
        draft.attributes = {"liking"};
        for (int taster = 1; taster <= tasters; ++taster) {
            draft.tasters.push_back("Taster " + std::to_string(taster));
        }
        return draft;
    }
    PanelId plan(TastingMethod method, std::size_t samples, int tasters)
    {
        const auto saved = journal->tastings().save(draftWith(method, samples, tasters));
        EXPECT_TRUE(saved) << told(saved.error());
        return saved->id;
    }
    // Types in what every taster gave each sample, by the codes the servings go under.
    void typeIn(PanelId panel, const std::vector<std::vector<int>>& values)
    {
        const PanelRecord record = journal->tastings().record(panel).value();
        const auto media = journal->tastings().draft(panel)->media;
        const auto plated = journal->tastings().plating(panel).value();
        for (const PlatedServing& each : plated) {
            const auto sample = static_cast<std::size_t>(std::distance(
                media.begin(), std::find(media.begin(), media.end(), each.medium.id)));
            const auto taster = static_cast<std::size_t>(tasterOf(record, each.serving)->position);
            ASSERT_TRUE(journal->tastings().enter(panel, each.serving.code, record.attributes[0].id,
                                                  values[taster][sample]));
        }
    }
    // Names the odd serving for the first `right` tasters, and one of the two alike for the others.
    void nameOdd(PanelId panel, int right)
    {
        const PanelRecord record = journal->tastings().record(panel).value();
        const auto plated = journal->tastings().plating(panel).value();
        for (std::size_t first = 0; first < plated.size(); first += 3) {
            std::size_t odd = first;
            for (std::size_t i = first; i < first + 3; ++i) {
                const auto alike = std::count_if(
                    plated.begin() + long(first), plated.begin() + long(first) + 3,
                    [&](const auto& each) { return each.medium.id == plated[i].medium.id; });
                odd = alike == 1 ? i : odd;
            }
            const bool isRight = static_cast<int>(first / 3) < right;
            const std::size_t named = isRight ? odd : first + (odd - first + 1) % 3;
            ASSERT_TRUE(journal->tastings().enter(panel, plated[named].serving.code,
                                                  record.attributes[0].id, 1));
        }
    }
};

TEST_F(TastingEntriesTest, APanelIsPlannedServedAndListed)
{
    const PanelDraft draft = draftWith(TastingMethod::Hedonic, 4, 5);
    expectUndoable([&] { return journal->tastings().save(draft); });
    EXPECT_EQ(journal->nextUndo()->intention, "tasting.plan");
    EXPECT_EQ(journal->nextUndo()->subject, "First tasting");
    const auto rows = journal->tastings().list();
    ASSERT_EQ(rows->size(), 1u);
    EXPECT_EQ(rows->at(0).samples, 4);
    EXPECT_EQ(rows->at(0).tasters, 5);
    EXPECT_EQ(rows->at(0).scores, 0);
    EXPECT_EQ(rows->at(0).scoresWanted, 20);
    const auto record = journal->tastings().record(rows->at(0).panel.id);
    EXPECT_EQ(record->servings.size(), 20u);
    EXPECT_EQ(journal->tastings().list(TrialId{99})->size(), 0u);
}

TEST_F(TastingEntriesTest, AnOpenPanelTellsNobodyWhatIsUnderACode)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, 2);
    const auto record = journal->tastings().record(panel);
    for (const Serving& serving : record->servings) {
        EXPECT_FALSE(serving.sample.isStored()) << serving.code;
    }
    EXPECT_EQ(journal->tastings().plating(panel)->size(), 6u);
    const auto entered =
        journal->tastings().enter(panel, record->servings[0].code, record->attributes[0].id, 5);
    EXPECT_FALSE(entered->serving.sample.isStored());
    ASSERT_TRUE(journal->tastings().close(panel));
    const auto closed = journal->tastings().record(panel);
    for (const Serving& serving : closed->servings) {
        EXPECT_TRUE(serving.sample.isStored()) << serving.code;
    }
}

TEST_F(TastingEntriesTest, TheMediaOfATrialAreThePanelsToBeginWith)
{
    Trial trial;
    trial.name = "Which bed?";
    const TrialId id = journal->trials().save(trial)->id;
    EXPECT_TRUE(journal->tastings().newDraft(id)->media.empty());
    SowingDraft sowing;
    sowing.variety = varietyNamed("Broccoli");
    sowing.medium = mediumNamed("Coir mix");
    sowing.count = 2;
    sowing.at = clock.now();
    sowing.trial = id;
    ASSERT_TRUE(journal->trays().sow(sowing));
    EXPECT_EQ(journal->tastings().newDraft(id)->media,
              std::vector<MediumId>{mediumNamed("Coir mix")});
}

TEST_F(TastingEntriesTest, APlanIsChangedUntilTheFirstScore)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, 2);
    PanelDraft draft = journal->tastings().draft(panel).value();
    draft.tasters.push_back("Late guest");
    draft.attributes = {"crunch", "flavour"};
    expectUndoable([&] { return journal->tastings().save(draft); });
    const auto record = journal->tastings().record(panel);
    EXPECT_EQ(record->servings.size(), 9u);
    EXPECT_EQ(record->attributes.size(), 2u);
    ASSERT_TRUE(
        journal->tastings().enter(panel, record->servings[4].code, record->attributes[1].id, 8));
    expectRefused(ErrorKind::Conflict, TastingReason::HasScores,
                  [&] { return journal->tastings().save(draft); });
}

TEST_F(TastingEntriesTest, RefusesAPanelThatIsNotSound)
{
    PanelDraft draft = draftWith(TastingMethod::Hedonic, 3, 2);
    draft.media.push_back({99});
    expectRefused(ErrorKind::NotFound, MediumReason::Unknown,
                  [&] { return journal->tastings().save(draft); });
    draft = draftWith(TastingMethod::Hedonic, 3, 2);
    draft.panel.trial = TrialId{99};
    expectRefused(ErrorKind::NotFound, TrialReason::Unknown,
                  [&] { return journal->tastings().save(draft); });
    draft = draftWith(TastingMethod::Hedonic, 3, 2);
    draft.panel.name = journal->media().all()->at(0).name + " and others";
    expectRefused(ErrorKind::Conflict, TastingReason::NamesAMedium,
                  [&] { return journal->tastings().save(draft); });
    draft.panel.name = " ";
    expectRefused(ErrorKind::Missing, TastingReason::NameMissing,
                  [&] { return journal->tastings().save(draft); });
    draft.panel.name = "Again";
    draft.panel.id = {99};
    expectRefused(ErrorKind::NotFound, TastingReason::Unknown,
                  [&] { return journal->tastings().save(draft); });
}

TEST_F(TastingEntriesTest, ScoresAreTypedByCodeCorrectedAndTakenOut)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, 2);
    const auto record = journal->tastings().record(panel);
    const Serving serving = record->servings[3];
    const PanelAttributeId attribute = record->attributes[0].id;
    expectUndoable([&] { return journal->tastings().enter(panel, serving.code, attribute, 6); });
    EXPECT_EQ(journal->nextUndo()->intention, "tasting.score");
    const auto again = journal->tastings().enter(panel, serving.code, attribute, 8);
    ASSERT_TRUE(again);
    EXPECT_EQ(again->before, 6);
    EXPECT_EQ(again->taster.name, "Taster 2");
    EXPECT_EQ(again->serving.turn, 1);
    EXPECT_EQ(journal->tastings().record(panel)->scores.size(), 1u);
    EXPECT_EQ(journal->tastings().list()->at(0).scores, 1);
    expectUndoable([&] { return journal->tastings().clear(panel, serving.code, attribute); });
    expectRefused(ErrorKind::NothingThere, TastingReason::NoScore,
                  [&] { return journal->tastings().clear(panel, serving.code, attribute); });
}

TEST_F(TastingEntriesTest, RefusesScoresThatCantBe)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, 2);
    const auto record = journal->tastings().record(panel);
    const std::string code = record->servings[0].code;
    const PanelAttributeId attribute = record->attributes[0].id;
    expectRefused(ErrorKind::Invalid, TastingReason::ScoreRange,
                  [&] { return journal->tastings().enter(panel, code, attribute, 10); });
    expectRefused(ErrorKind::NotFound, TastingReason::CodeUnknown,
                  [&] { return journal->tastings().enter(panel, "99", attribute, 5); });
    expectRefused(ErrorKind::NotFound, TastingReason::AttributeUnknown,
                  [&] { return journal->tastings().enter(panel, code, {99}, 5); });
    expectRefused(ErrorKind::NotFound, TastingReason::Unknown,
                  [&] { return journal->tastings().enter({99}, code, attribute, 5); });
    expectRefused(ErrorKind::TooFew, TastingReason::NoScores,
                  [&] { return journal->tastings().close(panel); });
    expectRefused(ErrorKind::Conflict, TastingReason::Open,
                  [&] { return journal->tastings().result(panel); });
}

TEST_F(TastingEntriesTest, AClosedPanelIsFinal)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, 2);
    typeIn(panel, {{5, 6}, {4, 8}});
    ASSERT_TRUE(journal->tastings().close(panel));
    const auto record = journal->tastings().record(panel);
    EXPECT_EQ(record->panel.closedOn, clock.today());
    const std::string code = record->servings[0].code;
    const PanelAttributeId attribute = record->attributes[0].id;
    expectRefused(ErrorKind::Conflict, TastingReason::Closed,
                  [&] { return journal->tastings().enter(panel, code, attribute, 5); });
    expectRefused(ErrorKind::Conflict, TastingReason::Closed,
                  [&] { return journal->tastings().clear(panel, code, attribute); });
    expectRefused(ErrorKind::Conflict, TastingReason::Closed,
                  [&] { return journal->tastings().close(panel); });
    // Opening it again by way of its plan is refused too.
    PanelDraft draft = journal->tastings().draft(panel).value();
    draft.panel.closedOn.reset();
    expectRefused(ErrorKind::Conflict, TastingReason::Closed,
                  [&] { return journal->tastings().save(draft); });
    // Its media were shown.
    expectRefused(ErrorKind::Conflict, RuleReason::TastingStaysClosed,
                  [&] { return journal->undo(); });
    const auto entries = journal->latestEntries(2).value();
    ASSERT_EQ(entries.at(1).intention, "tasting.score");
    expectRefused(ErrorKind::Conflict, RuleReason::TastingIsFinal,
                  [&] { return journal->undo(entries[1].id); });
    // A tasting that was removed comes back whole, as closed as it was.
    expectUndoable([&] { return journal->tastings().remove(panel); });
}

TEST_F(TastingEntriesTest, ARankGivenTwiceIsToldAndCantBeClosed)
{
    const PanelId panel = plan(TastingMethod::Ranking, 3, 1);
    const auto record = journal->tastings().record(panel);
    const PanelAttributeId attribute = record->attributes[0].id;
    const auto enter = [&](std::size_t turn, int rank) {
        return journal->tastings().enter(panel, record->servings[turn].code, attribute, rank);
    };
    EXPECT_FALSE(enter(0, 1)->clashingCode);
    EXPECT_EQ(enter(1, 1)->clashingCode, record->servings[0].code);
    ASSERT_TRUE(enter(2, 3));
    const auto refused = journal->tastings().close(panel);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error(),
              fail(ErrorKind::Conflict, TastingReason::RankTwice, "Taster 1", "liking",
                   record->servings[0].code + ", " + record->servings[1].code)
                  .value());
    EXPECT_FALSE(enter(1, 2)->clashingCode);
    EXPECT_TRUE(journal->tastings().close(panel));
}

TEST_F(TastingEntriesTest, ATriangleKeepsOneChoiceATaster)
{
    const PanelId panel = plan(TastingMethod::Triangle, 2, 2);
    const auto record = journal->tastings().record(panel);
    ASSERT_EQ(record->servings.size(), 6u);
    const PanelAttributeId attribute = record->attributes[0].id;
    ASSERT_TRUE(journal->tastings().enter(panel, record->servings[0].code, attribute, 1));
    expectUndoable(
        [&] { return journal->tastings().enter(panel, record->servings[2].code, attribute, 1); });
    const auto scores = journal->tastings().record(panel)->scores;
    ASSERT_EQ(scores.size(), 1u);
    EXPECT_EQ(scores[0].serving, record->servings[2].id);
    EXPECT_EQ(journal->tastings().list()->at(0).scoresWanted, 2);
}

TEST_F(TastingEntriesTest, APanelIsRemovedWithItsScores)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, 2);
    typeIn(panel, {{5, 6}, {4, 8}});
    expectUndoable([&] { return journal->tastings().remove(panel); });
    EXPECT_TRUE(journal->tastings().list()->empty());
    expectRefused(ErrorKind::NotFound, TastingReason::Unknown,
                  [&] { return journal->tastings().remove(panel); });
}

// The cells of a CSV without quotes.
std::vector<std::vector<std::string>> publishedRows(const std::string& file)
{
    std::ifstream stream(std::string(PLUMULE_REFERENCES) + "/" + file);
    EXPECT_TRUE(stream) << file;
    std::vector<std::vector<std::string>> rows;
    for (std::string line; std::getline(stream, line);) {
        std::istringstream cells(line);
        rows.emplace_back();
        for (std::string cell; std::getline(cells, cell, ',');) {
            rows.back().push_back(cell);
        }
    }
    return rows;
}

// Of 12 judges and 4 grasses: ranks of 1 to 4 with halves, doubled, so that they are whole and
// below 9.
std::vector<std::vector<int>> conoverRanks()
{
    auto table = publishedRows("handbook/stat_data/conover_grass_friedman.csv");
    std::vector<std::vector<int>> values(12, std::vector<int>(4));
    const auto column = [&](const char* name) {
        const auto& header = table[0];
        return static_cast<std::size_t>(
            std::distance(header.begin(), std::find(header.begin(), header.end(), name)));
    };
    const std::size_t judge = column("judge");
    const std::size_t grass = column("trt");
    const std::size_t value = column("evaluation");
    EXPECT_LT(std::max({judge, grass, value}), table[0].size());
    std::map<std::string, std::size_t> grasses;
    for (std::size_t row = 1; row < table.size(); ++row) {
        const std::size_t sample = grasses.emplace(table[row][grass], grasses.size()).first->second;
        values.at(std::stoul(table[row][judge]) - 1).at(sample) =
            static_cast<int>(2 * std::stod(table[row][value]));
    }
    return values;
}

TEST_F(TastingEntriesTest, GivesThePublishedResultOfRanksTypedInByCode)
{
    // Conover's 12 judges and 4 grasses, ties among them (Conover 1999, p. 372, as quoted in the
    // tutorial of an R package): rank sums 38, 23.5, 24.5, 34; χ² 8.0973, p 0.044; F 3.19. Typed in
    // as scores, since a ranking here has no ties.
    const PanelId panel = plan(TastingMethod::Hedonic, 4, 12);
    typeIn(panel, conoverRanks());
    ASSERT_TRUE(journal->tastings().close(panel));
    const auto result = journal->tastings().result(panel);
    ASSERT_TRUE(result) << told(result.error());
    const AttributeResult& liking = result->attributes[0];
    EXPECT_EQ(liking.tasters, 12);
    std::vector<double> sums;
    for (const SampleScores& sample : liking.samples) {
        sums.push_back(sample.rankSum);
    }
    EXPECT_EQ(sums, (std::vector<double>{38, 23.5, 24.5, 34}));
    EXPECT_NEAR(liking.friedman->chiSquare, 8.0973, 0.00005);
    EXPECT_NEAR(liking.friedman->p, 0.04404, 0.000005);
    EXPECT_NEAR(liking.friedman->imanDavenportF, 3.19, 0.005);
    EXPECT_NEAR(liking.friedman->pF, 0.036, 0.0005);
    EXPECT_EQ(liking.pairs.size(), 6u);
}

TEST_F(TastingEntriesTest, GivesTheIsoStyleRankingExampleOfEightAssessors)
{
    // ISO 8587 Annex A, read second-hand: 8 assessors, 5 samples, rank sums 17, 31, 32, 23, 17;
    // F 10.6 against 9.5. Only the sums are published: these ranks of ours add up to them.
    const std::vector<std::vector<int>> ranks = {{1, 4, 5, 3, 2}, {2, 5, 4, 3, 1}, {1, 3, 5, 4, 2},
                                                 {3, 4, 5, 1, 2}, {2, 5, 3, 4, 1}, {1, 4, 5, 2, 3},
                                                 {4, 1, 3, 5, 2}, {3, 5, 2, 1, 4}};
    const PanelId panel = plan(TastingMethod::Ranking, 5, 8);
    typeIn(panel, ranks);
    ASSERT_TRUE(journal->tastings().close(panel));
    const AttributeResult liking = journal->tastings().result(panel)->attributes[0];
    EXPECT_EQ(liking.friedman->rankSums, (std::vector<double>{17, 31, 32, 23, 17}));
    EXPECT_NEAR(liking.friedman->chiSquare, 10.6, 1e-9);
    EXPECT_LT(liking.friedman->p, 0.05);
    // Newell and MacFarlane 1987, Table 1: 18 for 8 panellists and 5 samples.
    EXPECT_NEAR(liking.criticalDifference.value(), 18, 1);
    EXPECT_TRUE(liking.isShown());
    EXPECT_FALSE(liking.tastersWanted);
}

TEST_F(TastingEntriesTest, ATriangleIsShownFromTheCountsOfThePublishedTableOn)
{
    // FAO V7180E, Appendix A: of 6 tasters 5, of 12 tasters 8, of 24 tasters 13 right at 5 %.
    const auto table = publishedRows("handbook/sensory_triangle_fao.csv");
    int checked = 0;
    for (const auto& row : table) {
        if (row[0] != "6" && row[0] != "12" && row[0] != "24") {
            continue;
        }
        const int tasters = std::stoi(row[0]);
        const int needed = std::stoi(row[2]);
        for (const int right : {needed, needed - 1}) {
            const PanelId panel = plan(TastingMethod::Triangle, 2, tasters);
            nameOdd(panel, right);
            ASSERT_TRUE(journal->tastings().close(panel));
            const TriangleResult triangle = *journal->tastings().result(panel)->triangle;
            EXPECT_EQ(triangle.test.n, tasters);
            EXPECT_EQ(triangle.test.right, right);
            EXPECT_EQ(triangle.fewestRight, needed);
            EXPECT_EQ(triangle.isShown(), right == needed) << tasters;
            ++checked;
        }
    }
    EXPECT_EQ(checked, 6);
}

} // namespace
} // namespace plumule
