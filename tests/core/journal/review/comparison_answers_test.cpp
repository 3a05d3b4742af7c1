#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <algorithm>
#include <fstream>

namespace plumule {
namespace {

class ComparisonAnswersTest : public JournalTest
{
protected:
    void import(const std::filesystem::path& file)
    {
        const auto preview = journal->exchange().preview(file);
        ASSERT_TRUE(preview) << told(preview.error());
        const auto outcome = journal->exchange().importTrays(*preview, file.filename().string());
        ASSERT_TRUE(outcome) << told(outcome.error());
    }
    void importRows(const std::string& columns, const std::string& rows)
    {
        const std::filesystem::path file = folder.path() / "trays.csv";
        std::ofstream(file) << columns << "\n" << rows;
        import(file);
    }

    [[nodiscard]] SeasonFilter usual() const { return journal->review().usualSeason(); }

    [[nodiscard]] SeasonComparison compare(const SeasonFilter& filter,
                                           Response response = Response::YieldPerTray)
    {
        const auto answer = comparisonIn(*journal, filter, response);
        EXPECT_TRUE(answer) << told(answer.error());
        return answer.value_or(SeasonComparison());
    }

    // A reusable medium with one piece that carries two trays one after the other.
    void growTwiceOnOnePiece(const std::string& name, PlaceId place, const std::string& person)
    {
        Medium medium;
        medium.name = name;
        medium.form = MediumForm::Mesh;
        medium.isReusable = true;
        medium.plannedUses = 60;
        const MediumId id = journal->media().save(medium).value().id;
        const PieceId piece = journal->media().addPieces(id, 1, std::nullopt).value().front().id;
        for (const int later : {0, 20}) {
            SowingDraft draft;
            draft.variety = journal->varieties().all().value().front().id;
            draft.medium = id;
            draft.pieces = {piece};
            draft.places = {place};
            draft.at = {date(2026, 1, 2) + later, 480};
            draft.sownBy = person;
            const auto trays = journal->trays().sow(draft);
            ASSERT_TRUE(trays) << told(trays.error());
            WeighingDraft weighing;
            weighing.tray = trays->front();
            weighing.bowls = {{grams(250 + later), grams(10)}};
            weighing.at = {draft.at.date + 12, 600};
            weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet,
                                 Doubt::TareForgotten};
            ASSERT_TRUE(journal->harvests().record(weighing));
            ASSERT_TRUE(journal->media().sanitise({piece}, "peroxide"));
        }
    }

    void fillWithSample()
    {
        const Done filled = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
        ASSERT_TRUE(filled) << told(filled.error());
    }

    static const Finding* find(const SeasonComparison& answer, Aspect aspect)
    {
        const auto found =
            std::find_if(answer.fairness.begin(), answer.fairness.end(),
                         [&](const Finding& finding) { return finding.aspect == aspect; });
        return found == answer.fairness.end() ? nullptr : &*found;
    }
};

// Dobson 1983, An Introduction to Statistical Modelling, table 7.1 (R's PlantGrowth); the numbers
// are R 4's anova(), emmeans and TukeyHSD, as in references/expected.json.
TEST_F(ComparisonAnswersTest, ReproducesThePublishedPlantWeights)
{
    import(std::filesystem::path(PLUMULE_REFERENCES) / "plant_weights_as_trays.csv");
    const SeasonComparison answer = compare(usual());
    ASSERT_EQ(answer.n, 30);
    const TrayModel& model = answer.model;
    ASSERT_EQ(model.model.terms.size(), 1u);
    const ModelTerm& medium = model.model.terms[0];
    EXPECT_NEAR(*medium.f, 4.846, 5e-4);
    EXPECT_NEAR(*medium.p, 0.0159, 5e-5);
    EXPECT_EQ(medium.df1, 2);
    EXPECT_EQ(medium.df2, 27);
    ASSERT_EQ(model.pairs.size(), 3u);
    EXPECT_NEAR(*model.pairs[2].difference, 0.865, 1e-9);
    EXPECT_NEAR(*model.pairs[2].p, 0.0120, 5e-5);
    EXPECT_NEAR(model.sd, 0.6234, 1e-4);
    ASSERT_EQ(answer.pairs.size(), 3u);
    const MediaPair& pair = answer.pairs[2];
    EXPECT_EQ(answer.means[pair.a].medium.name, "trt2");
    EXPECT_EQ(answer.means[pair.b].medium.name, "trt1");
    EXPECT_EQ(pair.verdict, stats::Verdict::More);
    EXPECT_EQ(answer.pairs[0].verdict, stats::Verdict::CantTellYet);
    EXPECT_EQ(answer.margin, (Margin{10, MarginFrom::Default}));
    EXPECT_EQ(answer.scope, stats::AnswerScope::TheseSowings) << "they are one sowing";
}

TEST_F(ComparisonAnswersTest, OneTrayEachGivesNoVerdictButTheTraysItTakes)
{
    importRows("code,variety,medium,sown,seed_g,harvested,net_g",
               "X1,New radish,Felt one,2026-01-05,,2026-01-16,240\n"
               "X2,New radish,Felt two,2026-01-05,,2026-01-16,280\n");
    const SeasonComparison answer = compare(usual());
    ASSERT_EQ(answer.pairs.size(), 1u);
    EXPECT_EQ(answer.pairs[0].verdict, stats::Verdict::NoVerdict);
    EXPECT_EQ(answer.pairs[0].why, stats::NoVerdictReason::OneTrayEach);
    ASSERT_TRUE(answer.pairs[0].more && answer.pairs[0].more->trials);
    EXPECT_GE(*answer.pairs[0].more->trials, 2);
}

TEST_F(ComparisonAnswersTest, TakesTheBlocksOfAnImportedTrial)
{
    importRows("code,variety,medium,sown,seed_g,harvested,net_g,trial,block",
               "X1,New radish,Felt one,2026-01-05,,2026-01-16,240,T9,1\n"
               "X2,New radish,Felt two,2026-01-05,,2026-01-16,251,T9,1\n"
               "X3,New radish,Felt one,2026-01-05,,2026-01-16,280,T9,2\n"
               "X4,New radish,Felt two,2026-01-05,,2026-01-16,289,T9,2\n"
               "X5,New radish,Felt one,2026-01-05,,2026-01-16,260,T9,3\n"
               "X6,New radish,Felt two,2026-01-05,,2026-01-16,272,T9,3\n");
    const SeasonComparison answer = compare(usual());
    ASSERT_NE(answer.model.model.find(ModelPart::Block), nullptr);
    EXPECT_EQ(answer.model.model.block, BlockKind::BlockOfTrial);
    EXPECT_NEAR(*answer.model.pairs.at(0).difference, 32.0 / 3, 1e-9);
    EXPECT_LT(*answer.model.pairs[0].p, 0.01);
    EXPECT_NEAR(*answer.pairs.at(0).percent, 4.1, 0.1);
    EXPECT_EQ(answer.pairs[0].verdict, stats::Verdict::RealButTooSmall) << "blocks taken off";
}

TEST_F(ComparisonAnswersTest, ReadsShelvesPeopleAndUsesOfPieces)
{
    const RoomLayout layout = journal->room().layout().value();
    growTwiceOnOnePiece("Own mesh", layout.places.front().id, "Mo");
    growTwiceOnOnePiece("Own mat", layout.places.back().id, "Ada");
    const SeasonComparison answer = compare(usual());
    ASSERT_EQ(answer.n, 4);
    ASSERT_NE(find(answer, Aspect::Person), nullptr);
    EXPECT_EQ(find(answer, Aspect::Person)->confounding, Confounding::Fully);
    EXPECT_EQ(find(answer, Aspect::Person)->media.at(1).levels,
              (std::vector<AspectLevel>{{"Ada", 2}}));
    ASSERT_NE(find(answer, Aspect::Shelf), nullptr);
    EXPECT_EQ(find(answer, Aspect::Shelf)->media.at(0).levels,
              (std::vector<AspectLevel>{{"A/1", 2}}));
    EXPECT_EQ(find(answer, Aspect::Shelf)->media.at(1).levels,
              (std::vector<AspectLevel>{{"B/2", 2}}));
    ASSERT_NE(find(answer, Aspect::PieceUses), nullptr);
    EXPECT_EQ(find(answer, Aspect::PieceUses)->confounding, Confounding::Alike);
    EXPECT_EQ(find(answer, Aspect::PieceUses)->media.at(0).numbers, (AspectNumbers{1.5, 1, 2}));
}

TEST_F(ComparisonAnswersTest, TheSampleRoomSaysWhatWasPutIntoIt)
{
    fillWithSample();
    SeasonFilter filter = usual();
    filter.from = filter.from - 60;
    const SeasonComparison answer = compare(filter);
    EXPECT_LT(answer.n, reviewIn(*journal, filter)->trays) << "one sowing grows on";
    EXPECT_EQ(static_cast<int>(answer.trays.size()), reviewIn(*journal, filter)->trays);
    EXPECT_EQ(answer.model.model.find(ModelPart::Trial)->place, TermPlace::Random);
    EXPECT_EQ(answer.margin.from, MarginFrom::Trials);
    EXPECT_NEAR(answer.margin.percent, 6.5, 0.1) << "20 g of the mean yield";
    EXPECT_EQ(answer.scope, stats::AnswerScope::NextSowing);
    const auto verdictFor = [&](const std::string& a, const std::string& b) {
        for (const MediaPair& pair : answer.pairs) {
            if (answer.means[pair.a].medium.name == a && answer.means[pair.b].medium.name == b) {
                return pair.verdict;
            }
        }
        ADD_FAILURE() << a << " and " << b;
        return stats::Verdict::NoVerdict;
    };
    EXPECT_EQ(verdictFor("Steel mesh", "Coir mix"), stats::Verdict::More);
    EXPECT_EQ(verdictFor("Steel mesh", "Jute felt"), stats::Verdict::More);
    ASSERT_NE(find(answer, Aspect::Feeding), nullptr);
    EXPECT_EQ(find(answer, Aspect::Feeding)->fullyInTrials, std::vector<std::string>{"T2"});
    EXPECT_NE(find(answer, Aspect::Shelf), nullptr);
    EXPECT_NE(find(answer, Aspect::Person), nullptr);
}

TEST_F(ComparisonAnswersTest, OfTheUnfairTrialSaysFeedingFirst)
{
    fillWithSample();
    SeasonFilter filter = usual();
    filter.from = filter.from - 60;
    const auto trials = journal->trials().all();
    ASSERT_TRUE(trials.has_value());
    for (const Trial& trial : *trials) {
        if (trial.code == "T2") {
            filter.trials = {trial.id};
        }
    }
    ASSERT_FALSE(filter.trials.empty());
    const SeasonComparison answer = compare(filter);
    EXPECT_EQ(answer.fairness.at(0).aspect, Aspect::Feeding);
    EXPECT_EQ(answer.fairness.at(0).confounding, Confounding::Fully);
    EXPECT_EQ(suggestionsFor(answer.fairness).at(0), Advice::FeedAllAlike);
}

TEST_F(ComparisonAnswersTest, EveryResponseOfTheSampleRoomHasAnAnswer)
{
    fillWithSample();
    for (const Response response :
         {Response::YieldPerTray, Response::YieldPerTraySown, Response::YieldPerArea,
          Response::YieldPerSeed, Response::YieldPerDay, Response::CostPerGram,
          Response::HeightOnDay, Response::DaysToHarvest, Response::Residue}) {
        const SeasonComparison answer = compare(usual(), response);
        SCOPED_TRACE(toText(response));
        EXPECT_GT(answer.n, 20);
        EXPECT_EQ(answer.pairs.size(), answer.means.size() * (answer.means.size() - 1) / 2);
        EXPECT_TRUE(std::any_of(answer.pairs.begin(), answer.pairs.end(),
                                [](const MediaPair& pair) { return pair.lower.has_value(); }));
        EXPECT_GT(answer.spreadPercent.value_or(0), 0);
    }
}

TEST_F(ComparisonAnswersTest, FitsHeightsOfTheSampleRoom)
{
    fillWithSample();
    const auto fits = partsIn(*journal, usual())->heights;
    ASSERT_FALSE(fits.empty());
    EXPECT_GT(fits.size(), 6u);
    for (const HeightFit& fit : fits) {
        EXPECT_FALSE(fit.curve.empty()) << fit.variety << " " << fit.medium.name;
        EXPECT_GT(fit.topRate.value, 1);
        EXPECT_LT(fit.topRate.value, 60);
    }
}

TEST_F(ComparisonAnswersTest, TakesAMarginInPercent)
{
    import(std::filesystem::path(PLUMULE_REFERENCES) / "plant_weights_as_trays.csv");
    ComparisonAsk ask;
    ask.marginPercent = 60;
    const auto answer = comparisonIn(*journal, usual(), ask);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->margin, (Margin{60, MarginFrom::Asked}));
    EXPECT_EQ(answer->pairs.at(2).verdict, stats::Verdict::RealButTooSmall);
    EXPECT_EQ(answer->pairs.at(0).verdict, stats::Verdict::SameWithinMargin);
}

TEST_F(ComparisonAnswersTest, IsEmptyInANewJournal)
{
    const SeasonComparison answer = compare(usual());
    EXPECT_EQ(answer.n, 0);
    EXPECT_TRUE(answer.pairs.empty());
    EXPECT_TRUE(partsIn(*journal, usual())->heights.empty());
}

TEST_F(ComparisonAnswersTest, RefusesASpanUpsideDownAndStopsWhenAsked)
{
    SeasonFilter filter = usual();
    std::swap(filter.from, filter.to);
    EXPECT_EQ(comparisonIn(*journal, filter, Response::Residue).error().kind, ErrorKind::Invalid);
    std::stop_source source;
    const Progress progress([&](double) { source.request_stop(); }, source.get_token());
    const auto stopped = comparisonIn(*journal, usual(), {}, {}, progress);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
}

} // namespace
} // namespace plumule
