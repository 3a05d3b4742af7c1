#include "core/base/bounds_reason.h"
#include "core/base/work_reason.h"
#include "core/cost/cost_reason.h"
#include "core/cost/cost_repository.h"
#include "core/exchange/table_keepers.h"
#include "core/exchange/table_look.h"
#include "core/harvest/harvest_reason.h"
#include "core/harvest/harvest_repository.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tasting/tasting_reason.h"
#include "core/tasting/tasting_repository.h"
#include "core/tasting/tasting_storing.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_reason.h"
#include "core/watering/watering_repository.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Date kToday = date(2026, 3, 12);

// A room with two growing trays and a discarded one, a mesh, and a tasting that is open.
class TableImportTest : public StoreTest
{
protected:
    TableImportTest()
    {
        Room room;
        room.name = "Room";
        RoomRepository(database).insert(room);
        radish.name = "Radish";
        radish.codePrefix = "RD";
        VarietyRepository(database).insert(radish);
        coir.name = "Coir";
        MediumRepository(database).insert(coir);
        mesh.name = "Mesh";
        mesh.isReusable = true;
        mesh.marker = 1;
        mesh.surfaceBelowRim = millimetres(20);
        MediumRepository(database).insert(mesh);
        RoomRepository(database).addRack("A", 1, 2);
        addTray("RD001", coir, TrayState::Growing);
        addTray("RD002", mesh, TrayState::Growing);
        addTray("RD003", coir, TrayState::Discarded);
        addTasting();
    }

    void addTray(const std::string& code, const Medium& medium, TrayState state)
    {
        Tray tray;
        tray.code = code;
        tray.variety = radish.id;
        tray.medium = medium.id;
        tray.sownOn = date(2026, 3, 1);
        tray.sownMinute = 480;
        tray.state = state;
        TrayRepository trays(database);
        trays.insert(tray);
        for (const Stage which : {Stage::UnderWeight, Stage::Light}) {
            TrayStage stage;
            stage.tray = tray.id;
            stage.stage = which;
            stage.position = which == Stage::Light ? 1 : 0;
            stage.plannedOn = tray.sownOn;
            stage.lengthMinutes = kMinutesPerDay;
            trays.insert(stage);
        }
    }
    void addTasting()
    {
        PanelDraft draft;
        draft.panel.name = "First taste";
        draft.panel.on = date(2026, 3, 10);
        draft.panel.drawNumber = 5;
        draft.media = {coir.id, mesh.id};
        draft.attributes = {"overall"};
        draft.tasters = {"Ann", "Ben"};
        TastingRepository tastings(database);
        tastings.insert(draft.panel);
        storePanelContents(tastings, draft);
        panel = tastings.record(draft.panel);
    }

    Result<ImportPreview> tryLook(TableKind kind, const std::string& text, TableAsk ask = {},
                                  const Progress& progress = {})
    {
        ask.kind = kind;
        const auto form = proposedForm(text, ask);
        if (!form) {
            return passOn(form);
        }
        return lookThrough(text, *form, *keeperFor(kind, database, kToday), progress);
    }
    ImportPreview look(TableKind kind, const std::string& text, const TableAsk& ask = {})
    {
        const auto preview = tryLook(kind, text, ask);
        EXPECT_TRUE(preview) << text;
        return preview.value_or(ImportPreview{});
    }
    // The reasons of the faults, one a faulty row of these.
    std::vector<Reason> reasonsOf(TableKind kind, const std::string& text)
    {
        std::vector<Reason> reasons;
        for (const Error& fault : look(kind, text).faults) {
            reasons.push_back(fault.reason);
        }
        return reasons;
    }
    std::int64_t store(TableKind kind, const std::string& text, TableAsk ask = {})
    {
        ask.kind = kind;
        const auto form = proposedForm(text, ask);
        EXPECT_TRUE(form);
        const auto stored =
            storeThrough(text, *form, *keeperFor(kind, database, kToday), Progress());
        EXPECT_TRUE(stored) << text;
        return stored.value_or(-1);
    }
    TrayId idOf(const std::string& code)
    {
        return TrayRepository(database).findByCode(code).value().id;
    }

    Variety radish;
    Medium coir;
    Medium mesh;
    PanelRecord panel;
};

TEST_F(TableImportTest, BringsInHeights)
{
    const std::string text = "Tray code;Date;Time;Plant height (cm);From\n"
                             "rd001;08.03.2026;09:15;6,5;\n"
                             "RD002;08.03.2026;;7;Rim\n";
    const ImportPreview preview = look(TableKind::Heights, text);
    EXPECT_THAT(preview.faults, IsEmpty());
    EXPECT_EQ(preview.form.dateOrder, DateOrder::DayMonthYear);
    EXPECT_EQ(preview.form.decimalMark, DecimalMark::Comma);
    EXPECT_THAT(preview.firstRows.at(0).cells,
                ElementsAre("rd001", "2026-03-08", "09:15", "65", ""));
    EXPECT_EQ(store(TableKind::Heights, text), 2);
    const auto first = TrayRepository(database).heights(idOf("RD001"));
    ASSERT_EQ(first.size(), 1U);
    EXPECT_EQ(first[0].reading, millimetres(65));
    EXPECT_EQ(first[0].minute, 9 * 60 + 15);
    const auto second = TrayRepository(database).heights(idOf("RD002"));
    ASSERT_EQ(second.size(), 1U);
    EXPECT_EQ(second[0].from, ReadFrom::Rim);
    EXPECT_EQ(second[0].minute, 7 * 60) << "the morning round";
}

TEST_F(TableImportTest, HoldsBackWhatIsThereAlready)
{
    const std::string text = "tray,date,height_mm\nRD001,2026-03-08,65\nRD001,2026-03-09,70\n";
    EXPECT_EQ(store(TableKind::Heights, text), 2);
    const std::string more = text + "RD001,2026-03-10,74\nRD001,2026-03-10,74.0\n";
    const ImportPreview preview = look(TableKind::Heights, more);
    EXPECT_TRUE(preview.isClean());
    EXPECT_EQ(preview.rows, 1);
    EXPECT_THAT(preview.held, ElementsAre(HeldRow{2, 0}, HeldRow{3, 0}, HeldRow{5, 4}));
    EXPECT_EQ(store(TableKind::Heights, more), 1);
    EXPECT_EQ(store(TableKind::Heights, more), 0);
    EXPECT_EQ(TrayRepository(database).heights(idOf("RD001")).size(), 3U);
}

TEST_F(TableImportTest, FaultsRowsAboutTraysWithTheirReasons)
{
    EXPECT_THAT(reasonsOf(TableKind::Heights, "tray,date,height_mm,read_from\n"
                                              "RD009,2026-03-08,65,\n"
                                              ",2026-03-08,65,\n"
                                              "RD001,2026-02-28,65,\n"
                                              "RD001,2026-03-13,65,\n"
                                              "RD001,2026-03-08,,\n"
                                              "RD001,2026-03-08,2000,\n"
                                              "RD001,2026-03-08,0.0001,\n"
                                              "RD001,2026-03-08,65,sideways\n"
                                              "RD001,2026-03-08,65,rim\n"
                                              "RD001,2026-03-08\n"
                                              "RD001,soon,65,\n"),
                ElementsAre(ExchangeReason::NameUnknown, ExchangeReason::CellMissing,
                            ExchangeReason::DayBeforeSowing, ExchangeReason::DayAhead,
                            ExchangeReason::CellMissing, ExchangeReason::CellForm,
                            ExchangeReason::CellTooFine, ExchangeReason::WordUnknown,
                            TrayReason::SurfaceUnknown, ExchangeReason::CellCount,
                            ExchangeReason::CellForm));
}

TEST_F(TableImportTest, BringsInWaterings)
{
    const std::string text = "tray,date,slot,time,method,water,amount_ml,between\n"
                             "RD001,2026-03-08,morning,07:05,below,nutrient,200,\n"
                             "RD001,2026-03-08,,18:30,mist,,,\n"
                             "RD001,2026-03-08,evening,20:00,below,plain,40,yes\n";
    EXPECT_EQ(store(TableKind::Waterings, text), 3);
    const auto given = WateringRepository(database).waterings(idOf("RD001"));
    ASSERT_EQ(given.size(), 3U);
    EXPECT_EQ(given[0].amount, millilitres(200));
    EXPECT_EQ(given[0].water, WaterKind::Nutrient);
    EXPECT_EQ(given[1].slot, Slot::Evening) << "told by its time";
    EXPECT_EQ(std::count_if(given.begin(), given.end(),
                            [](const Watering& each) { return each.isBetween; }),
              1);
    EXPECT_EQ(look(TableKind::Waterings, text).heldCount, 3);
    EXPECT_THAT(reasonsOf(TableKind::Waterings, "tray,date,slot,time,method\n"
                                                "RD001,2026-03-08,morning,07:30,below\n"
                                                "RD001,2026-03-09,morning,07:30,none\n"
                                                "RD002,2026-03-09,morning,07:30,mist\n"
                                                "RD002,2026-03-09,morning,07:31,mist\n"),
                ElementsAre(WateringReason::TickedAlready, WateringReason::MethodMissing,
                            WateringReason::TickedAlready));
}

TEST_F(TableImportTest, BringsInCutsAndEndsTheTrayWithTheLast)
{
    const std::string text = "tray,date,net_g,last\n"
                             "RD001,2026-03-08,100.5,no\n"
                             "RD001,2026-03-11,80,yes\n"
                             "RD002,2026-03-11,0.2,\n";
    EXPECT_EQ(store(TableKind::Cuts, text), 3);
    const auto cuts = HarvestRepository(database).ofTray(idOf("RD001"));
    ASSERT_EQ(cuts.size(), 2U);
    EXPECT_EQ(cuts[0].cut, 1);
    EXPECT_EQ(cuts[0].net, grams(100.5));
    EXPECT_FALSE(cuts[0].isLast);
    EXPECT_EQ(cuts[1].cut, 2);
    const Tray tray = TrayRepository(database).findByCode("RD001").value();
    EXPECT_EQ(tray.state, TrayState::Harvested);
    EXPECT_EQ(tray.endedOn, date(2026, 3, 11));
    EXPECT_EQ(look(TableKind::Cuts, text).heldCount, 3);
    EXPECT_THAT(reasonsOf(TableKind::Cuts, "tray,date,net_g,last\n"
                                           "RD001,2026-03-12,5,yes\n"
                                           "RD003,2026-03-12,5,yes\n"
                                           "RD002,2026-03-12,0.0004,yes\n"),
                ElementsAre(ExchangeReason::CutAfterLast, HarvestReason::TrayDiscarded,
                            ExchangeReason::CellTooFine));
}

TEST_F(TableImportTest, NumbersCutsOnAndSeesThoseOfTheSameFile)
{
    EXPECT_THAT(reasonsOf(TableKind::Cuts, "tray,date,net_g,last\n"
                                           "RD001,2026-03-08,100,yes\n"
                                           "RD001,2026-03-09,50,yes\n"),
                ElementsAre(ExchangeReason::CutAfterLast));
}

TEST_F(TableImportTest, BringsInResidues)
{
    const std::string text = "tray,date,residue (kg)\nRD001,2026-03-11,1.12\n";
    EXPECT_EQ(store(TableKind::Residues, text), 1);
    EXPECT_EQ(HarvestRepository(database).residuesOfTray(idOf("RD001")).at(0).net, grams(1120));
    EXPECT_THAT(reasonsOf(TableKind::Residues, "tray,date,net_g\nRD003,2026-03-11,900\n"),
                ElementsAre(HarvestReason::TrayDiscarded));
}

TEST_F(TableImportTest, BringsInWhenStagesBegan)
{
    const std::string text = "tray,stage,date,time\n"
                             "RD001,light,2026-03-05,07:00\n"
                             "RD001,Under weight,2026-03-01,08:00\n";
    EXPECT_EQ(store(TableKind::Stages, text), 2);
    const auto stages = TrayRepository(database).stages(idOf("RD001"));
    EXPECT_EQ(stages.at(0).started(), (Moment{date(2026, 3, 1), 480}));
    EXPECT_EQ(stages.at(1).started(), (Moment{date(2026, 3, 5), 420}));
    EXPECT_EQ(look(TableKind::Stages, text).heldCount, 2);
    EXPECT_THAT(reasonsOf(TableKind::Stages, "tray,stage,date\n"
                                             "RD001,under_weight,2026-03-07\n"
                                             "RD002,light,2026-03-05\n"
                                             "RD002,blackout,2026-03-03\n"),
                ElementsAre(ExchangeReason::StageOutOfOrder, ExchangeReason::StageOutOfOrder,
                            ExchangeReason::StageUnknown));
}

TEST_F(TableImportTest, BringsInPrices)
{
    const std::string text = "item,medium,from,amount,measure\n"
                             "medium,coir,2026-01-01,0.45,\n"
                             "water,,2026-01-01,2.5,cubic_metre\n"
                             "electricity,,2027-01-01,0.3,\n";
    EXPECT_EQ(store(TableKind::Prices, text), 3);
    const auto prices = CostRepository(database).prices();
    ASSERT_EQ(prices.size(), 3U);
    EXPECT_TRUE(std::any_of(prices.begin(), prices.end(), [&](const Price& each) {
        return each.medium == coir.id && each.amount == money(0.45);
    }));
    EXPECT_TRUE(std::any_of(prices.begin(), prices.end(), [](const Price& each) {
        return each.measure == PriceMeasure::CubicMetre;
    }));
    EXPECT_EQ(look(TableKind::Prices, text).heldCount, 3);
    EXPECT_THAT(reasonsOf(TableKind::Prices, "item,medium,from,amount\n"
                                             "medium,coir,2026-01-01,0.5\n"
                                             "medium,,2026-02-01,0.5\n"
                                             "medium,Felt,2026-02-01,0.5\n"
                                             "water,coir,2026-02-01,0.5\n"
                                             "gold,,2026-02-01,0.5\n"
                                             "water,,2026-02-01,-1\n"),
                ElementsAre(CostReason::DayTaken, ExchangeReason::CellMissing,
                            ExchangeReason::NameUnknown, ExchangeReason::CellForm,
                            ExchangeReason::WordUnknown, ExchangeReason::CellForm));
}

TEST_F(TableImportTest, BringsInSeedLots)
{
    const std::string text = "variety,lot_number,supplier,bought_on,bought_kg,price,"
                             "germination_percent,used_up,note\n"
                             "radish,L/7,\"Seeds, \"\"best\"\"\",2026-01-05,1,12.5,94.5,no,dry\n";
    const ImportPreview preview = look(TableKind::SeedLots, text);
    EXPECT_THAT(preview.faults, IsEmpty());
    EXPECT_EQ(store(TableKind::SeedLots, text), 1);
    const SeedLot lot = VarietyRepository(database).lots(radish.id, Listed::All).at(0);
    EXPECT_EQ(lot.lotNumber, "L/7");
    EXPECT_EQ(lot.supplier, "Seeds, \"best\"");
    EXPECT_EQ(lot.bought, grams(1000));
    EXPECT_EQ(lot.price, money(12.5));
    EXPECT_EQ(lot.germinationPercent, 94.5);
    EXPECT_EQ(look(TableKind::SeedLots, text).heldCount, 1);
    EXPECT_THAT(reasonsOf(TableKind::SeedLots, "variety,lot_number,germination_percent\n"
                                               "Radish,l/7,90\n"
                                               "Kale,L1,90\n"
                                               "Radish,L2,101\n"),
                ElementsAre(ExchangeReason::NumberTwice, ExchangeReason::NameUnknown,
                            ExchangeReason::CellForm));
}

TEST_F(TableImportTest, BringsInPieces)
{
    const std::string text = "medium,number,bought_on,retired_on,note\n"
                             "Mesh,1,2026-01-05,,\nMesh,2,2026-01-05,2026-02-01,torn\n";
    EXPECT_EQ(store(TableKind::Pieces, text), 2);
    EXPECT_EQ(MediumRepository(database).pieces(mesh.id, Listed::All).size(), 2U);
    EXPECT_EQ(look(TableKind::Pieces, text).heldCount, 2);
    EXPECT_THAT(reasonsOf(TableKind::Pieces, "medium,number,bought_on,retired_on\n"
                                             "Mesh,1,2026-01-06,\n"
                                             "Mesh,3,2026-01-06,2026-01-05\n"
                                             "Mesh,0,,\n"),
                ElementsAre(ExchangeReason::NumberTwice, ExchangeReason::RetiredBeforeBought,
                            ExchangeReason::CellForm));
}

TEST_F(TableImportTest, BringsInWaterReadings)
{
    const std::string text = "date,time,water,tray,pH,EC (mS/cm)\n"
                             "2026-03-08,07:10,nutrient,,6.1,1.2\n"
                             "2026-03-08,19:10,plain,RD001,,0.3\n";
    EXPECT_EQ(store(TableKind::WaterReadings, text), 2);
    const auto readings =
        WateringRepository(database).readings(date(2026, 3, 1), date(2026, 3, 31));
    ASSERT_EQ(readings.size(), 2U);
    EXPECT_EQ(readings[0].ec, 1200);
    EXPECT_EQ(readings[0].ph, 6.1);
    EXPECT_EQ(readings[1].slot, Slot::Evening);
    EXPECT_EQ(readings[1].tray, idOf("RD001"));
    EXPECT_THAT(reasonsOf(TableKind::WaterReadings, "date,ph,ec_us_cm\n"
                                                    "2026-03-08,,\n"
                                                    "2026-03-08,15,\n"
                                                    "2026-03-18,6,\n"),
                ElementsAre(WateringReason::ReadingMissing, ExchangeReason::CellForm,
                            ExchangeReason::DayAhead));
}

TEST_F(TableImportTest, BringsInScoresOfAnOpenTasting)
{
    const std::string code = panel.servings.at(0).code;
    const std::string other = panel.servings.at(1).code;
    const std::string text = "tasting,code,attribute,value\n"
                             "first taste," +
                             code + ",Overall,7\nFirst taste," + other + ",overall,9\n";
    EXPECT_EQ(store(TableKind::Scores, text), 2);
    EXPECT_EQ(TastingRepository(database).record(panel.panel).scores.size(), 2U);
    EXPECT_EQ(look(TableKind::Scores, text).heldCount, 2);
    const std::string third = panel.servings.at(2).code;
    EXPECT_THAT(reasonsOf(TableKind::Scores, "tasting,code,attribute,value\n"
                                             "First taste," +
                                                 code +
                                                 ",overall,3\n"
                                                 "First taste,000,overall,3\n"
                                                 "First taste," +
                                                 third +
                                                 ",smell,3\n"
                                                 "First taste," +
                                                 third +
                                                 ",overall,10\n"
                                                 "Second taste," +
                                                 third + ",overall,3\n"),
                ElementsAre(ExchangeReason::ScoreTaken, TastingReason::CodeUnknown,
                            ExchangeReason::NameUnknown, TastingReason::ScoreRange,
                            ExchangeReason::NameUnknown));
    panel.panel.closedOn = kToday;
    TastingRepository(database).update(panel.panel);
    EXPECT_THAT(reasonsOf(TableKind::Scores,
                          "tasting,code,attribute,value\nFirst taste," + third + ",overall,3\n"),
                ElementsAre(TastingReason::Closed));
}

TEST_F(TableImportTest, StoresNothingMoreAfterAFault)
{
    TableAsk ask;
    ask.kind = TableKind::Heights;
    const std::string text = "tray,date,height_mm\nRD001,2026-03-08,65\nRD009,2026-03-08,65\n"
                             "RD002,2026-03-08,65\n";
    const auto form = proposedForm(text, ask).value();
    const auto stored =
        storeThrough(text, form, *keeperFor(ask.kind, database, kToday), Progress());
    ASSERT_FALSE(stored);
    EXPECT_TRUE(stored.error().is(ExchangeReason::NameUnknown));
    EXPECT_EQ(stored.error().row->number, 3);
}

TEST_F(TableImportTest, StopsWhenAsked)
{
    std::stop_source stop;
    stop.request_stop();
    const auto stopped = tryLook(TableKind::Heights, "tray,date,height_mm\nRD001,2026-03-08,65\n",
                                 {}, Progress({}, stop.get_token()));
    EXPECT_TRUE(stopped.error().is(WorkReason::Stopped));
}

TEST_F(TableImportTest, KeepsTheFirstFaultsOfAFileOfFaults)
{
    std::string text = "tray,date,height_mm\n";
    for (int i = 0; i < 3'000; ++i) {
        text += "X" + std::to_string(i) + ",2026-03-08,65\n";
    }
    const ImportPreview preview = look(TableKind::Heights, text);
    EXPECT_EQ(preview.faultCount, 3'000);
    EXPECT_EQ(preview.faults.size(), 500U);
    EXPECT_EQ(preview.faults.front().row->number, 2);
}

TEST_F(TableImportTest, ReadsUnderWhatWasDecided)
{
    TableAsk ask;
    ask.columns = {{"height_mm", "a", "cm"}, {"tray", "b", ""}, {"date", "c", ""}};
    ask.dateOrder = DateOrder::MonthDayYear;
    ask.decimalMark = DecimalMark::Comma;
    const std::string text = "a;b;c\n1.234,5;RD001;03/04/2026\n";
    const ImportPreview big = look(TableKind::Heights, text, ask);
    ASSERT_EQ(big.faults.size(), 1U) << "12 m";
    ask.columns[0].unit = "mm";
    const ImportPreview preview = look(TableKind::Heights, "a;b;c\n234,5;RD001;03/04/2026\n", ask);
    EXPECT_THAT(preview.firstRows.at(0).cells, ElementsAre("RD001", "2026-03-04", "", "234.5", ""));
    ask.columns.push_back({"time", "d", ""});
    EXPECT_TRUE(tryLook(TableKind::Heights, text, ask).error().is(ExchangeReason::ColumnMissing));
    ask.columns.back() = {"time", "a", ""};
    EXPECT_TRUE(tryLook(TableKind::Heights, text, ask).error().is(ExchangeReason::HeaderTwice));
    ask.columns.back() = {"moon", "a", ""};
    EXPECT_TRUE(tryLook(TableKind::Heights, text, ask).error().is(ExchangeReason::ColumnUnknown));
}

TEST_F(TableImportTest, GuessesNoOrderOfDaysThatTheFileDoesNotTell)
{
    const std::string header = "tray,date,height_mm\n";
    EXPECT_THAT(reasonsOf(TableKind::Heights, header + "RD001,03/04/2026,65\n"),
                ElementsAre(ExchangeReason::DayAmbiguous));
    const ImportPreview told =
        look(TableKind::Heights, header + "RD001,03/04/2026,65\nRD001,02/28/2027,65\n");
    EXPECT_EQ(told.form.dateOrder, DateOrder::MonthDayYear);
}

// Whatever a file holds is answered, and nothing that was read breaks a bound of the journal.
TEST_F(TableImportTest, AnswersToAnyText)
{
    std::mt19937 random(7);
    const std::string pieces[] = {"tray", ",",         "\n",   "RD001",      "2026-03-08",
                                  "65",   "\"",        "date", ";",          "-",
                                  "\r\n", "height_mm", "ä",    "1e999",      "99999999999999999999",
                                  "=",    "'",         "\t",   "32/13/0000", "nan"};
    for (int i = 0; i < 400; ++i) {
        std::string text = i % 2 == 0 ? "tray,date,height_mm,net_g,stage,value,code\n" : "";
        for (std::size_t length = random() % 30; length > 0; --length) {
            text += pieces[random() % std::size(pieces)];
        }
        const TableKind kind = allTableKinds()[1 + random() % (allTableKinds().size() - 1)];
        (void)tryLook(kind, text);
    }
}

} // namespace
} // namespace plumule
