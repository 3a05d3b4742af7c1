#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "core/review/facts/review_reason.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include <fstream>

namespace plumule {
namespace {

class SeasonEntriesTest : public JournalTest
{
protected:
    void harvest(const std::string& rows)
    {
        const std::filesystem::path file = folder.path() / "trays.csv";
        std::ofstream(file) << "code,variety,medium,sown,seed_g,harvested,net_g\n" << rows;
        ASSERT_TRUE(journal->exchange().importTrays(journal->exchange().preview(file).value(),
                                                    "trays.csv"));
    }
    void harvestTwo()
    {
        harvest("X1,New radish,Felt one,2026-01-05,,2026-01-16,240\n"
                "X2,New radish,Felt two,2026-01-05,,2026-01-16,280\n");
    }
    static Season named(const char* name, Date day)
    {
        Season season;
        season.name = name;
        season.startsOn = day;
        return season;
    }
    [[nodiscard]] std::vector<std::string> names()
    {
        const auto seasons = journal->seasons().all();
        std::vector<std::string> list;
        for (const SeasonSpanOfDays& span : *seasons) {
            list.push_back(span.season.name);
        }
        return list;
    }
};

using Names = std::vector<std::string>;

TEST_F(SeasonEntriesTest, TheFirstIsMadeAtTheFirstHarvest)
{
    EXPECT_TRUE(names().empty());
    EXPECT_EQ(journal->review().seriesOf(journal->review().usualSeason()).kind, SeriesKind::ByHand);
    harvestTwo();
    EXPECT_EQ(names(), Names{"2026"});
    const SeasonFilter usual = journal->review().usualSeason();
    EXPECT_EQ(usual.sownFrom, date(2026, 1, 5));
    const Series series = journal->review().seriesOf(usual);
    EXPECT_EQ(series.kind, SeriesKind::Season);
    EXPECT_EQ(series.name, "2026");
    SeasonFilter ofVariety = usual;
    ofVariety.varieties = {VarietyId{1}};
    EXPECT_EQ(journal->review().seriesOf(ofVariety).kind, SeriesKind::Season);
    SeasonFilter ofDays = usual;
    ofDays.from = ofDays.from + 1;
    EXPECT_EQ(journal->review().seriesOf(ofDays).kind, SeriesKind::ByHand);
}

TEST_F(SeasonEntriesTest, ANewOneKeepsTheOneBeforeAndIsTakenBackAsOneStep)
{
    harvestTwo();
    Season autumn = named("Autumn", date(2026, 9, 1));
    autumn.plannedTrials = 5;
    autumn.mainMetric = Response::CostPerGram;
    const auto saved = journal->seasons().save(autumn);
    ASSERT_TRUE(saved);
    EXPECT_TRUE(saved->id.isStored());
    EXPECT_EQ(names(), (Names{"2026", "Autumn"}));
    EXPECT_EQ(journal->seasons().all()->back().season, *saved);
    EXPECT_EQ(journal->seasons().all()->front().sownUntil, date(2026, 8, 31));
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(names(), Names{"2026"});
    ASSERT_TRUE(journal->redo());
    EXPECT_EQ(names(), (Names{"2026", "Autumn"}));
    EXPECT_TRUE(journal->faults()->empty());
}

TEST_F(SeasonEntriesTest, TheUndeclaredOneIsRenamedAndStored)
{
    harvestTwo();
    Season first = journal->seasons().all()->front().season;
    first.name = "First year";
    ASSERT_TRUE(journal->seasons().save(first));
    EXPECT_EQ(names(), Names{"First year"});
    EXPECT_TRUE(journal->seasons().all()->front().season.id.isStored());
}

TEST_F(SeasonEntriesTest, ASeasonWhoseTraysAreHarvestedStays)
{
    harvestTwo();
    const auto early = journal->seasons().save(named("Early", date(2026, 1, 2)));
    ASSERT_FALSE(early);
    EXPECT_TRUE(early.error().reason.is(ReviewReason::SeasonHarvested));
    const Season later = journal->seasons().save(named("Later", date(2026, 2, 1))).value();
    ASSERT_TRUE(journal->seasons().remove(later.id));
    EXPECT_EQ(names(), Names{"2026"});
    const Season first = journal->seasons().all()->front().season;
    EXPECT_FALSE(journal->seasons().remove(first.id));
    EXPECT_FALSE(journal->seasons().remove(SeasonId{4711}));
}

TEST_F(SeasonEntriesTest, MediaAreGroupedInTheGrowersWords)
{
    harvestTwo();
    const auto media = journal->media().all().value();
    const auto idOf = [&](const std::string& name) {
        for (const Medium& medium : media) {
            if (medium.name == name) {
                return medium.id;
            }
        }
        return MediumId{};
    };
    ASSERT_TRUE(journal->media().setGroup(idOf("Felt one"), " cloth "));
    ASSERT_TRUE(journal->media().setGroup(idOf("Felt two"), "wool"));
    EXPECT_EQ(journal->media().groups()->at(idOf("Felt one")), "cloth");
    SeasonQuestion question;
    question.filter = journal->review().usualSeason();
    question.asks.emplace_back().groups = Grouping::Own;
    const auto answer = journal->review().season(question);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->comparisons.front().groups.size(), 2u);
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(journal->media().groups()->size(), 1u);
    ASSERT_TRUE(journal->media().setGroup(idOf("Felt one"), ""));
    EXPECT_TRUE(journal->media().groups()->empty());
    EXPECT_FALSE(journal->media().setGroup(MediumId{4711}, "wool"));
}

} // namespace
} // namespace plumule
