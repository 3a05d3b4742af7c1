#include "core/review/answer/season_answer.h"

#include "core/base/work_reason.h"
#include "core/medium/medium_reason.h"
#include "core/tasting/tasting_reason.h"
#include "tests/core/review/comparison/comparison_samples.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

class SeasonAnswerTest : public testing::Test
{
protected:
    SeasonAnswerTest()
    {
        question.filter = season.filter;
        season.addTrays(kMix, {240, 250, 260}, {1}, TrialId{7});
        season.addTrays(kMesh, {270, 280, 290}, {2}, TrialId{7});
    }

    Result<SeasonAnswer> answer(const Progress& progress = {})
    {
        AnswerFacts facts;
        facts.season = std::move(season.facts);
        facts.panels = panels;
        facts.protocols = protocols;
        facts.today = date(2026, 4, 1);
        return answerOf(question, std::move(facts), progress);
    }

    static PanelRecord panelOf(std::int64_t id, std::optional<Date> closedOn, MediumId second)
    {
        PanelRecord record;
        record.panel.id = {id};
        record.panel.closedOn = closedOn;
        record.samples = {{{1}, {id}, 0, kMix}, {{2}, {id}, 1, second}};
        return record;
    }

    ComparisonSamples season;
    SeasonQuestion question;
    Result<std::vector<PanelRecord>> panels;
    Result<std::vector<Protocol>> protocols;
};

TEST_F(SeasonAnswerTest, GivesWhatIsAskedForAndNoMore)
{
    question.asks.resize(2);
    question.asks[1].response = Response::DaysToHarvest;
    question.series.name = "Spring";
    season.facts.cost.layout.room.name = "Cellar";
    season.facts.cost.layout.room.units = UnitSystem::UsCustomary;
    const auto found = answer();
    ASSERT_TRUE(found);
    EXPECT_EQ(found->room, "Cellar");
    EXPECT_EQ(found->units, UnitSystem::UsCustomary);
    EXPECT_EQ(found->madeOn, date(2026, 4, 1));
    EXPECT_EQ(found->series.name, "Spring");
    EXPECT_EQ(found->review.trays, 6);
    ASSERT_THAT(found->comparisons, SizeIs(2));
    EXPECT_EQ(&found->comparison(Response::DaysToHarvest), &found->comparisons[1]);
    EXPECT_EQ(found->comparison(Response::YieldPerTray).n, 6);
    EXPECT_THAT(found->heights, IsEmpty());
    EXPECT_THAT(found->paybacks, IsEmpty());
    EXPECT_THAT(found->ageing, IsEmpty());
    EXPECT_THAT(found->beside, IsEmpty());
}

TEST_F(SeasonAnswerTest, NamesWhatWasChosen)
{
    RoomLayout& layout = season.facts.cost.layout;
    layout.racks = {{RackId{1}, "A", 0}};
    layout.shelves.resize(3);
    layout.shelves[0].id = {1};
    layout.shelves[0].rack = {1};
    layout.shelves[0].name = "1";
    layout.shelves[1].id = {2};
    layout.shelves[1].rack = {1};
    layout.shelves[1].name = "2";
    layout.shelves[2].id = {3};
    layout.shelves[2].rack = {99};
    layout.shelves[2].name = "alone";
    question.filter.shelves = {ShelfId{3}, ShelfId{2}};
    question.filter.varieties = {VarietyId{2}, VarietyId{55}};
    question.filter.trials = {TrialId{7}};
    EXPECT_THAT(answer()->chosen, ElementsAre("Pea", "T7", "A2", "alone"));
}

TEST_F(SeasonAnswerTest, ShowsOtherSpansBeside)
{
    SeasonFilter before = season.filter;
    before.from = date(2025, 1, 1);
    before.to = date(2025, 3, 31);
    question.beside = {before, season.filter};
    const auto found = answer();
    ASSERT_THAT(found->beside, SizeIs(2));
    EXPECT_EQ(found->beside[0].review.trays, 0);
    EXPECT_EQ(found->beside[1].review.trays, 6);
}

TEST_F(SeasonAnswerTest, AsksWhatIfOfEveryPart)
{
    season.price(PriceItem::Medium, 1, kMix); // 2 L of it a tray of 250 g on average
    question.whatIf.mediumPrices[kMix] = money(3);
    ComparisonAsk costs;
    costs.response = Response::CostPerGram;
    question.asks = {costs};
    const auto found = answer();
    ASSERT_TRUE(found);
    EXPECT_NEAR(*found->review.media.at(0).costPerGram, 6.0 / 250, 1e-12);
    EXPECT_NEAR(*found->comparisons.at(0).means.at(0).mean, 6.0 / 250, 1e-12);
}

TEST_F(SeasonAnswerTest, CountsOpenTastingsAndTellsNothingOfThem)
{
    panels = std::vector{panelOf(1, std::nullopt, kMesh), panelOf(2, date(2026, 3, 3), kMesh),
                         panelOf(3, date(2026, 3, 4), {55})};
    question.parts = {SeasonPart::Tastings};
    const auto found = answer();
    ASSERT_TRUE(found->tastings);
    EXPECT_EQ(found->tastings->open, 1);
    ASSERT_THAT(found->tastings->closed, SizeIs(2));
    EXPECT_EQ(found->tastings->closed[0].panel.id, PanelId{2});
    ASSERT_TRUE(found->tastings->closed[0].result);
    EXPECT_THAT(found->tastings->closed[0].result->media, SizeIs(2));
    ASSERT_FALSE(found->tastings->closed[1].result);
    EXPECT_TRUE(found->tastings->closed[1].result.error().is(MediumReason::Unknown));
}

TEST_F(SeasonAnswerTest, APartThatFailsSaysSoAndCostsTheOthersNothing)
{
    panels = fail(ErrorKind::Damaged, TastingReason::Unknown);
    protocols = fail(ErrorKind::Damaged, MediumReason::Unknown);
    question.parts = {SeasonPart::Tastings, SeasonPart::Protocols};
    question.asks.resize(1);
    const auto found = answer();
    ASSERT_TRUE(found);
    EXPECT_EQ(found->tastings.error().kind, ErrorKind::Damaged);
    EXPECT_TRUE(found->protocols.error().is(MediumReason::Unknown));
    EXPECT_EQ(found->comparisons.at(0).n, 6);
}

TEST_F(SeasonAnswerTest, WhatWasNotAskedForDoesNotFail)
{
    panels = fail(ErrorKind::Damaged, TastingReason::Unknown);
    protocols = fail(ErrorKind::Damaged, TastingReason::Unknown);
    const auto found = answer();
    ASSERT_TRUE(found);
    EXPECT_TRUE(found->tastings);
    EXPECT_TRUE(found->protocols);
}

TEST_F(SeasonAnswerTest, SaysHowFarItIsAndEndsWithAllOfIt)
{
    question.asks.resize(3);
    question.parts = {SeasonPart::HeightFits, SeasonPart::Paybacks, SeasonPart::Ageing,
                      SeasonPart::Tastings};
    panels = std::vector<PanelRecord>();
    std::vector<double> told;
    const Progress progress([&](double fraction) { told.push_back(fraction); }, {});
    ASSERT_TRUE(answer(progress));
    ASSERT_GE(told.size(), 4u);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_EQ(told.back(), 1);
    EXPECT_LT(told[told.size() - 2], 1);
}

TEST_F(SeasonAnswerTest, StopsAfterTheQuestionThatItIsAt)
{
    question.asks.resize(3);
    std::stop_source stop;
    int reports = 0;
    const Progress progress(
        [&](double) {
            if (++reports == 2) { // read, and one question answered
                stop.request_stop();
            }
        },
        stop.get_token());
    const auto found = answer(progress);
    ASSERT_FALSE(found);
    EXPECT_EQ(found.error().kind, ErrorKind::Cancelled);
    EXPECT_TRUE(found.error().is(WorkReason::Stopped));
    EXPECT_EQ(reports, 2);
}

TEST(PanelOfSpan, IsOfItsDaysAndTrials)
{
    SeasonFilter filter;
    filter.from = date(2026, 1, 1);
    filter.to = date(2026, 1, 31);
    Panel panel;
    const auto isOfSpanOn = [&](Date day) {
        panel.on = day;
        return isOfSpan(panel, filter);
    };
    EXPECT_TRUE(isOfSpanOn(filter.from));
    EXPECT_TRUE(isOfSpanOn(filter.to));
    EXPECT_FALSE(isOfSpanOn(filter.from - 1));
    EXPECT_FALSE(isOfSpanOn(filter.to + 1));
    filter.trials = {TrialId{4}};
    EXPECT_FALSE(isOfSpanOn(filter.from)) << "it is of no trial";
    panel.trial = TrialId{4};
    EXPECT_TRUE(isOfSpanOn(filter.from));
    panel.trial = TrialId{5};
    EXPECT_FALSE(isOfSpanOn(filter.from));
}

} // namespace
} // namespace plumule
