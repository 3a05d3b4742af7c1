#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <algorithm>

namespace plumule {
namespace {

// Trays are sown, lit, watered and weighed through the journal's own door.
class ReviewAnswersTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        variety = journal->varieties().all().value().front().id;
        Medium one;
        one.name = "Season mix";
        one.amountPerTray = litres(2);
        mix = journal->media().save(one).value().id;
        Medium two;
        two.name = "Season mesh";
        two.form = MediumForm::Mesh;
        two.isReusable = true;
        two.plannedUses = 60;
        mesh = journal->media().save(two).value().id;
    }

    TrayId sow(MediumId medium, Date day)
    {
        SowingDraft draft;
        draft.variety = variety;
        draft.medium = medium;
        draft.at = {day, 480};
        if (medium == mesh) {
            draft.pieces = {journal->media().addPieces(mesh, 1, std::nullopt).value().front().id};
        }
        const auto trays = journal->trays().sow(draft);
        EXPECT_TRUE(trays) << told(trays.error());
        return trays.value().front();
    }

    void weigh(TrayId tray, double net, Date day, bool isLast = true)
    {
        WeighingDraft draft;
        draft.tray = tray;
        draft.bowls = {{grams(net + 10), grams(10)}};
        draft.at = {day, 600};
        clock.set(std::max(clock.now(), draft.at));
        draft.isLast = isLast;
        draft.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                          Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        const auto harvest = journal->harvests().record(draft);
        ASSERT_TRUE(harvest) << told(harvest.error());
    }

    void price(PriceItem item, double units, std::optional<MediumId> medium = std::nullopt)
    {
        ASSERT_TRUE(journal->costs().savePrice({{}, item, medium, date(2025, 1, 1), money(units)}));
    }

    [[nodiscard]] SeasonReview review(SeasonFilter filter)
    {
        const auto answer = reviewIn(*journal, filter);
        EXPECT_TRUE(answer) << told(answer.error());
        return answer.value_or(SeasonReview());
    }
    [[nodiscard]] SeasonReview usual() { return review(journal->review().usualSeason()); }

    static const MediumSeason& named(const SeasonReview& review, const std::string& name)
    {
        const auto found =
            std::find_if(review.media.begin(), review.media.end(),
                         [&](const MediumSeason& season) { return season.medium.name == name; });
        EXPECT_NE(found, review.media.end());
        return found == review.media.end() ? review.media.front() : *found;
    }

    const Date sown = date(2026, 2, 1);
    VarietyId variety;
    MediumId mix;
    MediumId mesh;
};

TEST_F(ReviewAnswersTest, OfANewJournalIsEmpty)
{
    const SeasonReview season = usual();
    EXPECT_EQ(season.trays, 0);
    EXPECT_TRUE(season.media.empty());
    EXPECT_TRUE(season.leftOut.empty());
    EXPECT_EQ(season.currency, "EUR");
}

TEST_F(ReviewAnswersTest, SumsTheCutsOfEachTray)
{
    const TrayId twice = sow(mix, sown);
    weigh(twice, 200, sown + 10, false);
    weigh(twice, 90, sown + 20);
    weigh(sow(mix, sown), 270, sown + 12);
    const SeasonReview season = usual();
    ASSERT_EQ(season.trays, 2);
    const MediumSeason& medium = named(season, "Season mix");
    EXPECT_DOUBLE_EQ(medium.trays[0].yieldGrams, 290);
    EXPECT_EQ(medium.trays[0].days, 21);
    EXPECT_DOUBLE_EQ(medium.yield.mean, 280);
    EXPECT_TRUE(season.tooFew.empty());
}

TEST_F(ReviewAnswersTest, LeavesOutWhatIsNotFinishedAndSaysSo)
{
    const TrayId again = sow(mix, sown);
    weigh(again, 200, sown + 10, false);
    const TrayId mouldy = sow(mix, sown);
    ASSERT_TRUE(journal->trays().discard(mouldy, "mould", {sown + 3, 500}));
    const TrayId aside = sow(mix, sown);
    weigh(aside, 90, sown + 12);
    ASSERT_TRUE(journal->trays().setAside(aside, "tipped over"));
    sow(mesh, sown);
    const SeasonReview season = usual();
    EXPECT_EQ(season.trays, 0);
    ASSERT_EQ(season.leftOut.size(), 4u);
    std::multiset<int> why;
    for (const LeftOutTray& tray : season.leftOut) {
        why.insert(static_cast<int>(tray.why));
    }
    EXPECT_EQ(why, (std::multiset<int>{0, 1, 2, 3}));
}

TEST_F(ReviewAnswersTest, CountsByTheDayOfTheLastCut)
{
    weigh(sow(mix, sown), 200, sown + 10);
    weigh(sow(mix, sown), 210, sown + 14);
    SeasonFilter filter;
    filter.from = sown + 11;
    filter.to = sown + 14;
    EXPECT_EQ(review(filter).trays, 1);
    filter.to = sown + 13;
    EXPECT_EQ(review(filter).trays, 0);
    filter.from = sown + 10;
    filter.to = sown + 10;
    EXPECT_EQ(review(filter).trays, 1);
}

TEST_F(ReviewAnswersTest, OfAShortSpanReadsTheSameAsOfTheWholeJournal)
{
    for (int i = 0; i < 6; ++i) {
        weigh(sow(i % 2 == 0 ? mix : mesh, sown + i), 200 + i, sown + 10 + i);
    }
    price(PriceItem::Medium, 0.55, mix);
    SeasonFilter shortSpan;
    shortSpan.from = shortSpan.to = sown + 12;
    const SeasonReview part = review(shortSpan);
    ASSERT_EQ(part.trays, 1);
    const SeasonReview whole = usual();
    const auto& trays = named(whole, "Season mix").trays;
    const SeasonTray& one = part.media[0].trays[0];
    const auto same = std::find_if(trays.begin(), trays.end(),
                                   [&](const SeasonTray& tray) { return tray.code == one.code; });
    ASSERT_NE(same, trays.end());
    EXPECT_EQ(same->yieldGrams, one.yieldGrams);
    EXPECT_EQ(same->cost, one.cost);
    EXPECT_TRUE(one.cost);
}

TEST_F(ReviewAnswersTest, CostsATrayAsItsOwnSheetDoes)
{
    price(PriceItem::Medium, 0.55, mix);
    price(PriceItem::Electricity, 0.25);
    price(PriceItem::Labour, 15);
    price(PriceItem::Water, 0.004);
    price(PriceItem::Waste, 0.1);
    RoomLayout layout = journal->room().layout().value();
    Shelf shelf = layout.shelves.front();
    shelf.lightMilliwatts = 60'000;
    shelf.lightMinutes = 960;
    ASSERT_TRUE(journal->room().changeRoom(layout.room, {{shelf, layout.placesOn(shelf.id)}}));
    clock.set({sown, 490});
    const TrayId tray = sow(mix, sown);
    ASSERT_TRUE(journal->trays().moveTo(tray, layout.spots().front().place, {sown, 490}));
    for (const Slot slot : {Slot::Morning, Slot::Evening}) {
        (void)journal->watering().tick(tray, sown + 1, slot);
    }
    int moves = 0;
    while (journal->trays().moveOn(tray, {sown + 3 + moves, 480}) && moves < 4) {
        ++moves;
    }
    ASSERT_GT(moves, 0);
    weigh(tray, 250, sown + 12);
    clock.set({sown + 20, 490});
    const SeasonReview season = usual();
    const TraySheet sheet = journal->trays().sheet(tray).value();
    const MediumSeason& medium = named(season, "Season mix");
    ASSERT_TRUE(medium.costPerGram);
    EXPECT_NEAR(*medium.costPerGram, sheet.costPerGram.value(), 1e-12);
    EXPECT_NEAR(medium.trays[0].cost.value(), sheet.cost.total(), 1e-12);
    EXPECT_GT(sheet.cost.light.value_or(0), 0);
    EXPECT_EQ(medium.meanCost.unknownParts(), sheet.cost.unknownParts());
}

TEST_F(ReviewAnswersTest, PaysBackAtTheUsesOfTheHandbookExample)
{
    // References handbook, section 6 (computed there): 18.00 a mesh, 1.10 a filling, 0.75 a
    // cleaning: 3 minutes at 15.00 an hour.
    price(PriceItem::Medium, 0.55, mix);
    price(PriceItem::Medium, 18, mesh);
    price(PriceItem::Washing, 0);
    price(PriceItem::Labour, 15);
    const std::vector<LabourTask> tasks = journal->costs().labour().value();
    for (LabourTask task : tasks) {
        task.seconds = task.kind == LabourKind::PieceWashing ? 180 : 0;
        ASSERT_TRUE(journal->costs().changeLabour(task));
    }
    weigh(sow(mix, sown), 250, sown + 12);
    weigh(sow(mesh, sown), 250, sown + 12);
    EXPECT_EQ(named(usual(), "Season mesh").paysBackAt, 52);
    for (LabourTask task : tasks) {
        if (task.kind == LabourKind::PieceWashing) {
            task.seconds = 90;
            ASSERT_TRUE(journal->costs().changeLabour(task));
        }
    }
    EXPECT_EQ(named(usual(), "Season mesh").paysBackAt, 25);
}

TEST_F(ReviewAnswersTest, BringsRimReadingsToTheSurface)
{
    Medium deep;
    deep.name = "Deep mix";
    deep.surfaceBelowRim = millimetres(12);
    const MediumId medium = journal->media().save(deep).value().id;
    const TrayId tray = sow(medium, sown);
    ASSERT_TRUE(journal->trays().noteHeight(tray, millimetres(30), ReadFrom::Rim, {sown + 4, 480}));
    ASSERT_TRUE(
        journal->trays().noteHeight(tray, millimetres(44), ReadFrom::Surface, {sown + 4, 490}));
    weigh(tray, 250, sown + 12);
    const SeasonReview season = usual();
    const auto& heights = season.media.at(0).heights;
    ASSERT_EQ(heights.size(), 1u);
    EXPECT_EQ(heights[0].day, 5);
    EXPECT_DOUBLE_EQ(heights[0].height.mean, 43);
}

TEST_F(ReviewAnswersTest, RefusesASpanUpsideDown)
{
    SeasonFilter filter;
    filter.from = date(2026, 3, 1);
    filter.to = date(2026, 2, 28);
    const auto answer = reviewIn(*journal, filter);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().kind, ErrorKind::Invalid);
}

TEST_F(ReviewAnswersTest, StopsWhenAsked)
{
    std::stop_source source;
    const Progress progress([&](double) { source.request_stop(); }, source.get_token());
    const auto answer = partsIn(*journal, journal->review().usualSeason(), progress);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().kind, ErrorKind::Cancelled);
}

TEST_F(ReviewAnswersTest, UsualSeasonIsTheLastTwelveMonths)
{
    const SeasonFilter filter = journal->review().usualSeason();
    EXPECT_EQ(filter.to, date(2026, 3, 2));
    EXPECT_EQ(filter.from, date(2025, 3, 3));
    EXPECT_TRUE(filter.varieties.empty());
}

} // namespace
} // namespace plumule
