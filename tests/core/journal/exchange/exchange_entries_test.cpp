#include "core/base/work_reason.h"
#include "core/exchange/exchange_reason.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/storage/history.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

const std::string kColumns = "code,variety,medium,sown,seed_g,harvested,net_g,trial,block,rack,"
                             "shelf,place,seed_lot,residue_g,height_mm,note\n";

class ExchangeEntriesTest : public JournalTest
{
protected:
    std::filesystem::path fileOf(const std::string& text, const std::string& name = "trays.csv")
    {
        std::ofstream file(folder.path() / name, std::ios::binary);
        file << text;
        return folder.path() / name;
    }
    ExchangeEntries& exchange() { return journal->exchange(); }
    ImportPreview previewOfText(const std::string& rows)
    {
        return exchange().preview(fileOf(kColumns + rows)).value();
    }
    Result<ImportOutcome> import(const std::string& rows)
    {
        return exchange().importTrays(previewOfText(rows), "trays.csv");
    }
    TraySheet sheetOf(const std::string& code)
    {
        return journal->trays().sheet(journal->trays().find(code).value()).value();
    }
};

// PlantGrowth of R's datasets (Dobson 1983): the means of its three groups are published as 5.032,
// 4.661 and 5.526 g.
TEST_F(ExchangeEntriesTest, BringsInThePublishedPlantWeights)
{
    const auto preview = exchange().preview(std::filesystem::path(PLUMULE_REFERENCES) /
                                            "plant_weights_as_trays.csv");
    ASSERT_TRUE(preview);
    ASSERT_TRUE(preview->isClean());
    EXPECT_THAT(preview->newMedia, ElementsAre("ctrl", "trt1", "trt2"));
    const auto outcome = exchange().importTrays(*preview, "plant_weights_as_trays.csv");
    ASSERT_TRUE(outcome);
    EXPECT_EQ(outcome->trays, 30);
    EXPECT_EQ(outcome->varieties, 1);
    EXPECT_EQ(outcome->media, 3);

    const std::map<std::string, double> published = {
        {"ctrl", 5.032}, {"trt1", 4.661}, {"trt2", 5.526}};
    for (const auto& [medium, mean] : published) {
        TrayFilter filter;
        filter.medium = mediumNamed(medium);
        const auto rows = journal->trays().list(filter).value();
        ASSERT_EQ(rows.size(), 10U) << medium;
        double sum = 0;
        for (const TrayListRow& row : rows) {
            sum += inGrams(row.yield.value());
        }
        EXPECT_NEAR(sum / 10, mean, 1e-9) << medium;
    }
    const auto season =
        reviewIn(*journal, {date(2026, 1, 1), date(2026, 1, 31), {}, {}, {}, {}, {}});
    ASSERT_TRUE(season);
    ASSERT_EQ(season->media.size(), 3U);
    for (const MediumSeason& medium : season->media) {
        EXPECT_EQ(medium.yield.n, 10);
        EXPECT_NEAR(medium.yield.mean, published.at(medium.medium.name), 1e-9);
    }
}

TEST_F(ExchangeEntriesTest, TakesAnImportBackInOneStep)
{
    expectUndoable([&] {
        return import("RD901,New radish,New felt,2026-02-02,30,2026-02-11,289.5,T9,1,Z,1,2,L1,1120,"
                      "84.5,Even\n"
                      "RD902,New radish,Coir mix,2026-02-20,30,,,T9,2,A,1,1,L1,,,\n");
    });
    EXPECT_EQ(journal->latestEntries(1)->front().subject, "trays.csv");
}

TEST_F(ExchangeEntriesTest, BringsInAllThatARowSays)
{
    ASSERT_TRUE(import("RD901,New radish,New felt,2026-02-02,30,2026-02-11,289.5,T9,1,Z,top,2,L1,"
                       "1120,84.5,Even\n"
                       "RD902,New radish,Coir mix,2026-02-28,30,,,,,A,1,1,,,,\n"));
    const TraySheet harvested = sheetOf("RD901");
    const Tray& tray = harvested.record.tray;
    EXPECT_EQ(tray.state, TrayState::Harvested);
    EXPECT_EQ(tray.seed, grams(30));
    EXPECT_EQ(tray.block, 1);
    EXPECT_EQ(tray.endedOn, date(2026, 2, 11));
    EXPECT_EQ(harvested.record.trialCode, "T9");
    EXPECT_EQ(harvested.record.seedLot, "L1");
    EXPECT_EQ(harvested.record.medium.name, "New felt");
    EXPECT_FALSE(harvested.record.medium.isReusable);
    EXPECT_EQ(harvested.harvests.at(0).net, grams(289.5));
    EXPECT_EQ(harvested.residues.at(0).net, grams(1120));
    EXPECT_EQ(harvested.heights.at(0).reading, millimetres(84.5));
    EXPECT_EQ(harvested.heights.at(0).on, date(2026, 2, 11));
    EXPECT_EQ(harvested.notes.at(0).text, "Even");
    ASSERT_EQ(harvested.stays.size(), 1U);
    EXPECT_EQ(harvested.stays[0].toOn, date(2026, 2, 11));

    const TraySheet growing = sheetOf("RD902");
    EXPECT_EQ(growing.record.tray.state, TrayState::Growing);
    ASSERT_TRUE(growing.spot);
    EXPECT_EQ(growing.spot->rack + growing.spot->shelf, "A1");
    EXPECT_FALSE(growing.stays.at(0).toOn);
    EXPECT_FALSE(growing.record.stages.empty());
    EXPECT_THAT(growing.harvests, IsEmpty());
    EXPECT_EQ(journal->watering().round(clock.today(), Slot::Morning)->trays.size(), 1U);
}

TEST_F(ExchangeEntriesTest, GivesAHarvestedTrayAStayOnlyWhereItsPlaceIsTold)
{
    ASSERT_TRUE(import("RD901,New radish,Coir mix,2026-02-02,30,2026-02-11,289.5,,,,,,,,,\n"));
    EXPECT_THAT(sheetOf("RD901").stays, IsEmpty());
}

TEST_F(ExchangeEntriesTest, MakesThePlacesThatAreNotThere)
{
    const ImportPreview preview =
        previewOfText("RD901,New radish,Coir mix,2026-03-01,,,,,,A,1,5,,,,\n"
                      "RD902,New radish,Coir mix,2026-03-01,,,,,,Cellar,low,1,,,,\n");
    EXPECT_THAT(preview.newPlaces, ElementsAre("A/1/4", "A/1/5", "Cellar/low/1"));
    ASSERT_TRUE(exchange().importTrays(preview, "trays.csv"));
    const RoomLayout layout = journal->room().layout().value();
    EXPECT_EQ(layout.racks.size(), 3U);
    EXPECT_EQ(layout.placesOn(layout.shelves.front().id), 5);
    EXPECT_EQ(sheetOf("RD902").spot->rack, "Cellar");
}

TEST_F(ExchangeEntriesTest, GivesEachNewVarietyAPrefixOfItsOwnAndAPlainProtocol)
{
    ASSERT_TRUE(import("X1,Zz one,Coir mix,2026-03-01,,,,,,,,,,,,\n"
                       "X2,Zz two,Coir mix,2026-03-01,,,,,,,,,,,,\n"
                       "X3,\xC3\x9C,Coir mix,2026-03-01,,,,,,,,,,,,\n"));
    std::set<std::string> prefixes;
    const auto varieties = journal->varieties().all().value();
    for (const Variety& variety : varieties) {
        prefixes.insert(variety.codePrefix);
        EXPECT_EQ(variety.codePrefix.size(), 2U);
    }
    EXPECT_EQ(prefixes.size(), varieties.size());
    const Protocol protocol = journal->varieties().protocol(varietyNamed("Zz one")).value();
    EXPECT_EQ(protocol.stages.size(), 2U);
    EXPECT_TRUE(journal->varieties().save(protocol)) << "what import makes can be saved by hand";
}

TEST_F(ExchangeEntriesTest, BringsInNothingWhereOneRowIsWrong)
{
    const ImportPreview preview =
        previewOfText("RD901,New radish,Coir mix,2026-02-02,30,,,,,,,,,,,\n"
                      "RD901,New radish,Coir mix,2026-02-03,30,,,,,,,,,,,\n");
    ASSERT_EQ(preview.faults.size(), 1U);
    expectRefused(ErrorKind::Duplicate, ExchangeReason::CodeTaken,
                  [&] { return exchange().importTrays(preview, "trays.csv"); });
}

TEST_F(ExchangeEntriesTest, SeesThatTheJournalHasChangedSinceThePreview)
{
    const std::string row = "RD901,New radish,Coir mix,2026-03-01,30,,,,,A,1,1,,,,\n";
    const ImportPreview twice = previewOfText(row);
    const ImportPreview samePlace =
        previewOfText("RD902,New radish,Coir mix,2026-03-01,30,,,,,A,1,1,,,,\n");
    ASSERT_TRUE(exchange().importTrays(twice, "trays.csv"));
    expectRefused(ErrorKind::Duplicate, ExchangeReason::CodeTaken,
                  [&] { return exchange().importTrays(twice, "trays.csv"); });
    expectRefused(ErrorKind::Conflict, ExchangeReason::PlaceTaken,
                  [&] { return exchange().importTrays(samePlace, "trays.csv"); });
    EXPECT_EQ(previewOfText(row).held, (std::vector{HeldRow{2, 0}})) << "it is there already";
    const ImportPreview other =
        previewOfText("RD901,New radish,Coir mix,2026-03-01,31,,,,,A,1,1,,,,\n");
    ASSERT_EQ(other.faults.size(), 1U) << "another tray of that code";
    EXPECT_TRUE(other.faults.front().is(ExchangeReason::CodeTaken));
}

TEST_F(ExchangeEntriesTest, StopsWhenAsked)
{
    std::stop_source stop;
    stop.request_stop();
    const Progress progress({}, stop.get_token());
    const ImportPreview preview =
        previewOfText("RD901,New radish,Coir mix,2026-02-02,30,,,,,,,,,,,\n");
    expectRefused(ErrorKind::Cancelled, WorkReason::Stopped,
                  [&] { return exchange().importTrays(preview, "trays.csv", progress); });
}

TEST_F(ExchangeEntriesTest, SaysWhyATableCannotBeRead)
{
    EXPECT_EQ(exchange().preview(folder.path() / "none.csv").error().kind, ErrorKind::Unreadable);
    EXPECT_EQ(exchange().preview(fileOf("")).error().kind, ErrorKind::TooFew);
    const auto open =
        exchange().preview(fileOf("code,variety,medium,sown,seed_g,harvested,net_g\nRD1,\"open\n"));
    ASSERT_FALSE(open);
    EXPECT_TRUE(open.error().is(ExchangeReason::OpenQuote));
    EXPECT_EQ(open.error().row, (RowAt{"", 2}));
}

TEST_F(ExchangeEntriesTest, WritesATableThatBringsTheSameTraysIntoAnotherJournal)
{
    ASSERT_TRUE(import("RD901,New radish,New felt,2026-02-02,30.5,2026-02-11,289.5,T9,1,Z,top,2,L1,"
                       "1120,84.5,\"Even, \"\"good\"\"\"\n"
                       "RD902,New radish,Coir mix,2026-02-28,,,,,,A,1,1,,,,\n"));
    const std::string written = exchange().traysAsCsv().value();
    EXPECT_EQ(written, kColumns +
                           "RD901,New radish,New felt,2026-02-02,30.5,2026-02-11,289.5,T9,1,Z,top,"
                           "2,L1,1120,84.5,\"Even, \"\"good\"\"\"\n"
                           "RD902,New radish,Coir mix,2026-02-28,,,,,,A,1,1,,,,\n");
    TemporaryFolder other;
    auto second = Journal::create(other.path() / "second.plumule", smallRoom(), clock);
    ASSERT_TRUE(second);
    const auto preview = (*second)->exchange().preview(fileOf(written, "out.csv"));
    ASSERT_TRUE(preview->isClean());
    ASSERT_TRUE((*second)->exchange().importTrays(*preview, "out.csv"));
    EXPECT_EQ((*second)->exchange().traysAsCsv().value(), written);
}

TEST_F(ExchangeEntriesTest, WritesNoPlaceForAGrowingTrayThatWasTakenOffTheRacksNorADiscardedTray)
{
    ASSERT_TRUE(import("RD901,New radish,Coir mix,2026-02-28,,,,,,A,1,1,,,,\n"
                       "RD902,New radish,Coir mix,2026-02-28,,,,,,A,1,2,,,,\n"));
    ASSERT_TRUE(
        journal->trays().moveTo(journal->trays().find("RD901").value(), std::nullopt, clock.now()));
    ASSERT_TRUE(
        journal->trays().discard(journal->trays().find("RD902").value(), "mould", clock.now()));
    EXPECT_EQ(exchange().traysAsCsv().value(),
              kColumns + "RD901,New radish,Coir mix,2026-02-28,,,,,,,,,,,,\n");
}

} // namespace
} // namespace plumule
