#include "core/exchange/tray_table.h"

#include "core/harvest/harvest_repository.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"
#include "tests/core/exchange/tray_preview.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

const std::string kAllColumns = "code,variety,medium,sown,seed_g,harvested,net_g,trial,block,rack,"
                                "shelf,place,seed_lot,residue_g,height_mm,note\n";

// One rack of one shelf of two places, one variety with a protocol, one medium.
class TrayTableTest : public StoreTest
{
protected:
    TrayTableTest()
    {
        Room room;
        room.name = "Test room";
        room.morningMinute = 6 * 60;
        RoomRepository(database).insert(room);
        RoomRepository(database).addRack("A", 1, 2);
        radish.variety.name = "Radish";
        radish.variety.codePrefix = "RD";
        ProtocolStage light;
        light.stage = Stage::Light;
        light.lengthMinutes = 5 * kMinutesPerDay;
        radish.stages = {light};
        VarietyRepository(database).insert(radish.variety);
        VarietyRepository(database).storeStages(radish.variety.id, radish.stages);
        coir.name = "Coir mix";
        MediumRepository(database).insert(coir);
    }

    ImportPreview previewOfRows(const std::string& rows)
    {
        return previewOf(kAllColumns + rows, knownNamesIn(database));
    }
    ImportOutcome store(const std::string& rows)
    {
        const auto outcome = storeTrays(database, previewOfRows(rows), {});
        EXPECT_TRUE(outcome);
        return outcome.value_or(ImportOutcome{});
    }
    TrayRecord recordOf(const std::string& code)
    {
        TrayRepository trays(database);
        return trays.record(trays.findByCode(code).value().id).value();
    }

    Protocol radish;
    Medium coir;
};

TEST_F(TrayTableTest, KnowsTheJournalByName)
{
    store("RD001,Radish,Coir mix,2026-03-01,30,,,T1,1,A,1,2,L7,,,\n");
    const KnownNames known = knownNamesIn(database);
    EXPECT_THAT(known.codes, ElementsAre("RD001"));
    EXPECT_THAT(known.varieties, ElementsAre("Radish"));
    EXPECT_THAT(known.media, ElementsAre("Coir mix"));
    EXPECT_THAT(known.trials, ElementsAre("T1"));
    EXPECT_THAT(known.seedLots, ElementsAre("Radish/L7"));
    EXPECT_THAT(known.places, UnorderedElementsAre("A/1/1", "A/1/2"));
    EXPECT_THAT(known.taken, ElementsAre("A/1/2"));
}

TEST_F(TrayTableTest, UsesWhatIsKnownHoweverItIsWritten)
{
    const ImportOutcome outcome = store("RD001,radish,COIR MIX,2026-03-01,30,,,t1,1,a,1,2,L7,,,\n"
                                        "RD002,RADISH,coir mix,2026-03-01,30,,,T1,1,A,1,1,l7,,,\n");
    EXPECT_EQ(outcome.trays, 2);
    EXPECT_EQ(outcome.varieties, 0);
    EXPECT_EQ(outcome.media, 0);
    EXPECT_EQ(outcome.trials, 1);
    EXPECT_EQ(recordOf("RD001").tray.variety, radish.variety.id);
    EXPECT_EQ(recordOf("RD001").tray.seedLot, recordOf("RD002").tray.seedLot);
    EXPECT_EQ(RoomRepository(database).racks().size(), 1U);
}

TEST_F(TrayTableTest, GivesATrayTheStagesOfItsVariety)
{
    store("RD001,Radish,Coir mix,2026-03-01,30,,,,,,,,,,,\n");
    const TrayRecord record = recordOf("RD001");
    ASSERT_EQ(record.stages.size(), 1U);
    EXPECT_EQ(record.stages[0].stage, Stage::Light);
    EXPECT_EQ(record.stages[0].started(), (Moment{date(2026, 3, 1), 6 * 60}));
}

TEST_F(TrayTableTest, GivesATrayPlainStagesWhereItsVarietyHasNone)
{
    std::vector<ProtocolStage> none;
    VarietyRepository(database).storeStages(radish.variety.id, none);
    store("RD001,Radish,Coir mix,2026-03-01,30,,,,,,,,,,,\n");
    EXPECT_EQ(recordOf("RD001").stages.size(), 2U);
    EXPECT_THAT(VarietyRepository(database).stages(radish.variety.id), IsEmpty());
}

TEST_F(TrayTableTest, GivesNewMediaMarkersOfTheirOwn)
{
    store("RD001,Radish,Felt,2026-03-01,,,,,,,,,,,,\n"
          "RD002,Radish,Jute,2026-03-01,,,,,,,,,,,,\n");
    std::set<int> markers;
    for (const auto& [id, medium] : MediumRepository(database).byId()) {
        markers.insert(medium.marker);
    }
    EXPECT_EQ(markers.size(), 3U);
}

TEST_F(TrayTableTest, EndsAHarvestedTrayAtTheMorningRoundOfItsDay)
{
    store("RD001,Radish,Coir mix,2026-03-01,30,2026-03-09,280,,,A,1,2,,900,,\n");
    const Tray tray = recordOf("RD001").tray;
    EXPECT_EQ(tray.state, TrayState::Harvested);
    EXPECT_EQ(tray.endedOn, date(2026, 3, 9));
    EXPECT_EQ(tray.endedMinute, 6 * 60);
    const auto cuts = HarvestRepository(database).ofTray(tray.id);
    ASSERT_EQ(cuts.size(), 1U);
    EXPECT_EQ(cuts[0].net, grams(280));
    EXPECT_TRUE(cuts[0].isLast);
    EXPECT_THAT(HarvestRepository(database).bowls(cuts[0].id), IsEmpty());
    EXPECT_THAT(TrayRepository(database).occupied(), IsEmpty());
}

TEST_F(TrayTableTest, WritesTheMeanHeightOfTheLastDayAboveTheSurface)
{
    coir.surfaceBelowRim = millimetres(20);
    MediumRepository(database).update(coir);
    store("RD001,Radish,Coir mix,2026-03-01,30,2026-03-09,280,,,,,,,,80,\n");
    TrayRepository trays(database);
    const TrayId id = trays.findByCode("RD001")->id;
    Height rim{{}, id, date(2026, 3, 9), 500, millimetres(65), ReadFrom::Rim};
    Height before{{}, id, date(2026, 3, 8), 500, millimetres(10), ReadFrom::Surface};
    trays.insert(rim);
    trays.insert(before);
    // 80 above the surface, and 65 above the rim that stands 20 over it.
    EXPECT_THAT(csvOfTrays(database), testing::HasSubstr(",82.5,"));
}

TEST_F(TrayTableTest, WritesTheOldestSowingFirst)
{
    store("RD002,Radish,Coir mix,2026-03-01,,,,,,,,,,,,\n"
          "RD001,Radish,Coir mix,2026-03-01,,,,,,,,,,,,\n"
          "RD003,Radish,Coir mix,2026-02-01,,,,,,,,,,,,\n");
    EXPECT_EQ(csvOfTrays(database), kAllColumns + "RD003,Radish,Coir mix,2026-02-01,,,,,,,,,,,,\n"
                                                  "RD001,Radish,Coir mix,2026-03-01,,,,,,,,,,,,\n"
                                                  "RD002,Radish,Coir mix,2026-03-01,,,,,,,,,,,,\n");
}

TEST_F(TrayTableTest, ReportsHowFarItIs)
{
    std::string rows;
    for (int i = 1; i <= 450; ++i) {
        rows += "RD" + std::to_string(i) + ",Radish,Coir mix,2026-03-01,,,,,,,,,,,,\n";
    }
    std::vector<double> fractions;
    const Progress progress([&](double fraction) { fractions.push_back(fraction); }, {});
    const auto outcome = storeTrays(database, previewOfRows(rows), progress);
    ASSERT_TRUE(outcome);
    EXPECT_EQ(outcome->trays, 450);
    ASSERT_EQ(fractions.size(), 3U);
    EXPECT_TRUE(std::is_sorted(fractions.begin(), fractions.end()));
    EXPECT_LE(fractions.back(), 1.0);
}

} // namespace
} // namespace plumule
