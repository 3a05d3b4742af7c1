#include "core/base/bounds_reason.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/storage/faults.h"
#include "tests/core/journal/ledger/full_journal.h"

#include <cmath>
#include <cstdio>
#include <gmock/gmock.h>
#include <limits>

namespace plumule {
namespace {

// Values that no grower types and that a table or a slip of the keyboard may bring.
constexpr double kReals[] = {1e308,
                             -1e308,
                             1e18,
                             -1e18,
                             std::numeric_limits<double>::infinity(),
                             std::numeric_limits<double>::quiet_NaN()};
constexpr std::int64_t kCounts[] = {std::numeric_limits<std::int64_t>::max(),
                                    std::numeric_limits<std::int64_t>::min(), 20'000'000'000'000};
constexpr int kWholes[] = {std::numeric_limits<int>::max(), std::numeric_limits<int>::min(),
                           1'500'000'000};
constexpr Date kDays[] = {{std::numeric_limits<std::int32_t>::max()},
                          {std::numeric_limits<std::int32_t>::min()},
                          {2'932'896},   // 9999-12-31
                          {-719'528},    // the year 0
                          {23'957'000}}; // a year that would wrap round to one of ours
const std::string kTexts[] = {"\xFF\xFE no UTF-8", std::string("null\0in it", 10),
                              std::string(30'000, 'x'), "half of a pair \xED\xA0\x80"};

class HostileValuesTest : public FullJournalTest
{
protected:
    void SetUp() override
    {
        FullJournalTest::SetUp();
        growing = trays[9];
        now = clock.now();
        before = dump();
    }

    // `act` with one hostile value must be refused in words and change nothing, or, where the value
    // happens to be a possible one, leave a sound journal.
    template <class Act>
    void hurt(const std::string& what, Act act)
    {
        SCOPED_TRACE(what);
        ++tried;
        const auto answer = act();
        if (answer) {
            accepted.push_back(what);
            EXPECT_THAT(journal->faults().value(), testing::IsEmpty());
            ASSERT_TRUE(!journal->didLastIntentionChange() || journal->undo());
            EXPECT_EQ(dump(), before);
            return;
        }
        EXPECT_FALSE(answer.error().reason.family().empty());
        EXPECT_FALSE(answer.error().is(JournalReason::Unexpected)) << told(answer.error());
        EXPECT_NE(answer.error().kind, ErrorKind::Damaged) << told(answer.error());
        EXPECT_EQ(dump(), before);
    }
    template <class Values, class Act>
    void each(const char* what, const Values& values, Act act)
    {
        int turn = 0;
        for (const auto& value : values) {
            hurt(std::string(what) + ", value " + std::to_string(turn++),
                 [&] { return act(value); });
        }
    }

    // Few are possible after all.
    void expectMostRefused() const
    {
        for (const std::string& what : accepted) {
            std::printf("  accepted: %s\n", what.c_str());
        }
        EXPECT_LE(accepted.size() * 10, static_cast<std::size_t>(tried));
    }

    SowingDraft sowing()
    {
        SowingDraft draft;
        draft.variety = cress;
        draft.medium = peat.id;
        draft.at = now;
        return draft;
    }
    WeighingDraft weighing()
    {
        WeighingDraft draft;
        draft.tray = growing;
        draft.bowls = {{grams(300), grams(40)}};
        draft.at = now;
        draft.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                          Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        return draft;
    }

    TrayId growing;
    Moment now;
    std::string before;
    std::vector<std::string> accepted;
    int tried = 0;
};

TEST_F(HostileValuesTest, OfSowingAreRefused)
{
    auto& entries = journal->trays();
    each("seed", kCounts, [&](std::int64_t value) {
        SowingDraft draft = sowing();
        draft.seedPerTray = milligrams(value);
        return entries.sow(draft);
    });
    each("seed in grams", kReals, [&](double value) {
        SowingDraft draft = sowing();
        draft.seedPerTray = grams(value);
        return entries.sow(draft);
    });
    each("day", kDays, [&](Date value) {
        SowingDraft draft = sowing();
        draft.at.date = value;
        return entries.sow(draft);
    });
    each("minute", kWholes, [&](int value) {
        SowingDraft draft = sowing();
        draft.at.minute = value;
        return entries.sow(draft);
    });
    each("count", kWholes, [&](int value) {
        SowingDraft draft = sowing();
        draft.count = value;
        return entries.sow(draft);
    });
    each("block", kWholes, [&](int value) {
        SowingDraft draft = sowing();
        draft.block = value;
        return entries.sow(draft);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTheWordsOfASowingAreRefused)
{
    auto& entries = journal->trays();
    each("sown by", kTexts, [&](const std::string& value) {
        SowingDraft draft = sowing();
        draft.sownBy = value;
        return entries.sow(draft);
    });
    each("code", kTexts, [&](const std::string& value) {
        SowingDraft draft = sowing();
        draft.code = value;
        return entries.sow(draft);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfStagesAreRefused)
{
    auto& entries = journal->trays();
    each("not yet", kWholes, [&](int value) { return entries.notYet(growing, value); });
    each("day of moving on", kDays, [&](Date value) {
        return entries.moveOn(growing, Moment{value, 0});
    });
    each("minute of moving on", kWholes, [&](int value) {
        return entries.moveOn(growing, Moment{now.date, value});
    });
    each("start", kDays, [&](Date value) {
        return entries.correctStart(growing, Stage::Blackout, Moment{value, 0});
    });
    each("day of the end", kDays, [&](Date value) {
        return entries.discard(growing, "mould", Moment{value, 0});
    });
    each("why it ended", kTexts,
         [&](const std::string& value) { return entries.discard(growing, value, now); });
    each("why it is set aside", kTexts,
         [&](const std::string& value) { return entries.setAside(growing, value); });
    each("day of a move", kDays, [&](Date value) {
        return entries.moveTo(growing, std::nullopt, Moment{value, 0});
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTheDiaryAreRefused)
{
    auto& entries = journal->trays();
    each("height", kReals, [&](double value) {
        return entries.noteHeight(growing, millimetres(value), ReadFrom::Surface, now);
    });
    each("height from the rim", kCounts, [&](std::int64_t value) {
        return entries.noteHeight(growing, micrometres(value), ReadFrom::Rim, now);
    });
    each("day of a height", kDays, [&](Date value) {
        return entries.noteHeight(growing, millimetres(40), ReadFrom::Surface, Moment{value, 0});
    });
    each("note", kTexts,
         [&](const std::string& value) { return entries.writeNote(growing, value, now); });
    each("day of a note", kDays, [&](Date value) {
        return entries.writeNote(growing, "pale", Moment{value, 0});
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTheScaleAreRefused)
{
    auto& entries = journal->harvests();
    const auto both = [&](const char* what, auto change) {
        each(what, kCounts, [&](std::int64_t value) {
            WeighingDraft draft = weighing();
            change(draft, milligrams(value));
            return entries.record(draft);
        });
        each(what, kReals, [&](double value) {
            WeighingDraft draft = weighing();
            change(draft, grams(value));
            return entries.recordResidue(draft);
        });
    };
    both("gross", [](WeighingDraft& draft, Mass value) { draft.bowls[0].gross = value; });
    both("tare", [](WeighingDraft& draft, Mass value) { draft.bowls[0].tare = value; });
    both("two bowls", [](WeighingDraft& draft, Mass value) {
        draft.bowls = {{value, grams(0)}, {value, grams(0)}};
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfAWeighingsMomentAndCorrectionAreRefused)
{
    auto& entries = journal->harvests();
    each("day", kDays, [&](Date value) {
        WeighingDraft draft = weighing();
        draft.at.date = value;
        return entries.record(draft);
    });
    each("minute", kWholes, [&](int value) {
        WeighingDraft draft = weighing();
        draft.at.minute = value;
        return entries.record(draft);
    });
    each("note", kTexts, [&](const std::string& value) {
        WeighingDraft draft = weighing();
        draft.note = value;
        return entries.record(draft);
    });
    const HarvestId cut = entries.atScale("CR001")->cuts.front().id;
    each("correction", kCounts, [&](std::int64_t value) {
        CutCorrection correction;
        correction.cut = cut;
        correction.bowls = {{milligrams(value), grams(0)}};
        correction.accepted = weighing().accepted;
        return entries.correct(correction);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfWateringAreRefused)
{
    auto& entries = journal->watering();
    each("amount", kCounts, [&](std::int64_t value) {
        return entries.giveBetween(
            {{growing}, WateringMethod::Below, WaterKind::Plain, microlitres(value), now});
    });
    each("moment", kDays, [&](Date value) {
        return entries.giveBetween(
            {{growing}, WateringMethod::Below, WaterKind::Plain, std::nullopt, Moment{value, 0}});
    });
    each("minute", kWholes, [&](int value) {
        return entries.giveBetween({{growing},
                                    WateringMethod::Below,
                                    WaterKind::Plain,
                                    std::nullopt,
                                    Moment{now.date, value}});
    });
    each("day of a tick", kDays,
         [&](Date value) { return entries.tick(growing, value, Slot::Morning); });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfReadingsAreRefused)
{
    auto& entries = journal->watering();
    const auto reading = [&](auto change) {
        WaterReading draft;
        draft.on = now.date;
        draft.minute = now.minute;
        draft.ph = 6;
        change(draft);
        return entries.noteReading(draft);
    };
    each("pH", kReals,
         [&](double value) { return reading([&](WaterReading& draft) { draft.ph = value; }); });
    each("EC", kReals,
         [&](double value) { return reading([&](WaterReading& draft) { draft.ec = value; }); });
    each("day of a reading", kDays,
         [&](Date value) { return reading([&](WaterReading& draft) { draft.on = value; }); });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfRemarksAndRecipesAreRefused)
{
    auto& entries = journal->watering();
    const auto remark = [&](auto change) {
        TrayRemark draft;
        draft.tray = growing;
        draft.date = now.date;
        draft.at = now;
        change(draft);
        return entries.writeDown(draft);
    };
    each("given", kCounts, [&](std::int64_t value) {
        return remark([&](TrayRemark& draft) { draft.given = microlitres(value); });
    });
    each("height of a remark", kReals, [&](double value) {
        return remark([&](TrayRemark& draft) { draft.height = millimetres(value); });
    });
    each("note of a remark", kTexts, [&](const std::string& value) {
        return remark([&](TrayRemark& draft) { draft.note = value; });
    });
    WaterRecipe recipe = entries.recipes()->back();
    each("dose", kCounts, [&](std::int64_t value) {
        WaterRecipe changed = recipe;
        changed.dosePerLitre = microlitres(value);
        return entries.changeRecipe(changed);
    });
    each("pH of a recipe", kReals, [&](double value) {
        WaterRecipe changed = recipe;
        changed.phHigh = value;
        return entries.changeRecipe(changed);
    });
    each("concentrate", kTexts, [&](const std::string& value) {
        WaterRecipe changed = recipe;
        changed.concentrate = value;
        return entries.changeRecipe(changed);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfVarietiesAreRefused)
{
    auto& entries = journal->varieties();
    const Protocol protocol = entries.protocol(cress).value();
    const auto changed = [&](auto change) {
        Protocol draft = protocol;
        change(draft);
        return entries.save(draft);
    };
    each("seed of a variety", kCounts, [&](std::int64_t value) {
        return changed([&](Protocol& draft) { draft.variety.seedPerTray = milligrams(value); });
    });
    each("length of a stage", kWholes, [&](int value) {
        return changed([&](Protocol& draft) { draft.stages[1].lengthMinutes = value; });
    });
    each("lengths of all stages", kWholes, [&](int value) {
        return changed([&](Protocol& draft) {
            for (ProtocolStage& stage : draft.stages) {
                stage.lengthMinutes = value;
            }
        });
    });
    each("waterings a day", kWholes, [&](int value) {
        return changed([&](Protocol& draft) { draft.stages[1].wateringsPerDay = value; });
    });
    each("amount of a stage", kCounts, [&](std::int64_t value) {
        return changed([&](Protocol& draft) { draft.stages[1].amount = microlitres(value); });
    });
    each("name of a variety", kTexts, [&](const std::string& value) {
        return changed([&](Protocol& draft) { draft.variety.name = value; });
    });
    each("cue", kTexts, [&](const std::string& value) {
        return changed([&](Protocol& draft) { draft.stages[1].cue = value; });
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfLotsAreRefused)
{
    auto& entries = journal->varieties();
    const auto bought = [&](auto change) {
        SeedLot draft;
        draft.variety = cress;
        draft.lotNumber = "L9";
        draft.bought = grams(100);
        change(draft);
        return entries.saveLot(draft);
    };
    each("weight of a lot", kCounts, [&](std::int64_t value) {
        return bought([&](SeedLot& draft) { draft.bought = milligrams(value); });
    });
    each("price of a lot", kReals,
         [&](double value) { return bought([&](SeedLot& draft) { draft.price = money(value); }); });
    each("germination", kReals, [&](double value) {
        return bought([&](SeedLot& draft) { draft.germinationPercent = value; });
    });
    each("day of a lot", kDays,
         [&](Date value) { return bought([&](SeedLot& draft) { draft.boughtOn = value; }); });
    each("supplier", kTexts, [&](const std::string& value) {
        return bought([&](SeedLot& draft) { draft.supplier = value; });
    });
    each("seed counted", kCounts,
         [&](std::int64_t value) { return entries.countLot(lot, milligrams(value), "counted"); });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfMediaAreRefused)
{
    const auto medium = [&](auto change) {
        Medium draft = peat;
        change(draft);
        return journal->media().save(draft);
    };
    each("uses", kWholes,
         [&](int value) { return medium([&](Medium& draft) { draft.plannedUses = value; }); });
    each("surface", kCounts, [&](std::int64_t value) {
        return medium([&](Medium& draft) { draft.surfaceBelowRim = micrometres(value); });
    });
    each("amount of a medium", kReals, [&](double value) {
        return medium([&](Medium& draft) { draft.amountPerTray = litres(value); });
    });
    each("marker", kWholes,
         [&](int value) { return medium([&](Medium& draft) { draft.marker = value; }); });
    each("name of a medium", kTexts, [&](const std::string& value) {
        return medium([&](Medium& draft) { draft.name = value; });
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfPiecesAndPricesAreRefused)
{
    each("pieces", kWholes,
         [&](int value) { return journal->media().addPieces(mesh.id, value, std::nullopt); });
    each("day of pieces", kDays,
         [&](Date value) { return journal->media().addPieces(mesh.id, 1, value); });
    each("price", kReals, [&](double value) {
        return journal->costs().savePrice(
            {{}, PriceItem::Water, std::nullopt, now.date, money(value)});
    });
    each("day of a price", kDays, [&](Date value) {
        return journal->costs().savePrice({{}, PriceItem::Water, std::nullopt, value, money(1)});
    });
    LabourTask task = journal->costs().labour()->front();
    each("time of work", kWholes, [&](int value) {
        task.seconds = value;
        return journal->costs().changeLabour(task);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTheRoomAreRefused)
{
    const Room room = journal->room().layout()->room;
    each("round", kWholes, [&](int value) {
        Room changed = room;
        changed.eveningMinute = value;
        return journal->room().changeRoom(changed);
    });
    each("size of a tray", kCounts, [&](std::int64_t value) {
        Room changed = room;
        changed.trayLength = micrometres(value);
        return journal->room().changeRoom(changed);
    });
    each("name of the room", kTexts, [&](const std::string& value) {
        Room changed = room;
        changed.name = value;
        return journal->room().changeRoom(changed);
    });
    each("shelves", kWholes, [&](int value) { return journal->room().addRack("Z", value, 1); });
    each("places", kWholes, [&](int value) { return journal->room().addRack("Z", 1, value); });
    each("name of a rack", kTexts,
         [&](const std::string& value) { return journal->room().addRack(value, 1, 1); });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTrialsAreRefused)
{
    const TrialDraft planned = journal->trials().draft(plannedTrial).value();
    const auto plan = [&](auto change) {
        TrialDraft draft = planned;
        change(draft);
        return journal->trials().savePlan(draft);
    };
    each("margin", kCounts, [&](std::int64_t value) {
        return plan([&](TrialDraft& draft) { draft.trial.margin = milligrams(value); });
    });
    each("spread", kReals, [&](double value) {
        return plan([&](TrialDraft& draft) { draft.plan.spread = grams(value); });
    });
    each("day of sowing", kDays,
         [&](Date value) { return plan([&](TrialDraft& draft) { draft.plan.sowOn = value; }); });
    each("blocks", kWholes,
         [&](int value) { return plan([&](TrialDraft& draft) { draft.plan.blocks = value; }); });
    each("trays each", kWholes,
         [&](int value) { return plan([&](TrialDraft& draft) { draft.plan.traysEach = value; }); });
    each("question", kTexts, [&](const std::string& value) {
        return plan([&](TrialDraft& draft) { draft.trial.question = value; });
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfTastingsAreRefused)
{
    const auto panel = [&](auto change) {
        PanelDraft draft = journal->tastings().draft(panels[0]).value();
        draft.panel.id = {};
        draft.panel.name = "Another";
        change(draft);
        return journal->tastings().save(draft);
    };
    each("day of a tasting", kDays,
         [&](Date value) { return panel([&](PanelDraft& draft) { draft.panel.on = value; }); });
    each("name of a tasting", kTexts, [&](const std::string& value) {
        return panel([&](PanelDraft& draft) { draft.panel.name = value; });
    });
    each("taster", kTexts, [&](const std::string& value) {
        return panel([&](PanelDraft& draft) { draft.tasters[0] = value; });
    });
    const PanelRecord open = journal->tastings().record(panels[0]).value();
    each("score", kWholes, [&](int value) {
        return journal->tastings().enter(panels[0], open.servings[0].code, open.attributes[0].id,
                                         value);
    });
    expectMostRefused();
}

TEST_F(HostileValuesTest, OfSeasonsAreRefused)
{
    const auto season = [&](auto change) {
        Season draft;
        draft.name = "Spring";
        draft.startsOn = now.date + 1;
        change(draft);
        return journal->seasons().save(draft);
    };
    each("day of a season", kDays,
         [&](Date value) { return season([&](Season& draft) { draft.startsOn = value; }); });
    each("trials of a season", kWholes,
         [&](int value) { return season([&](Season& draft) { draft.plannedTrials = value; }); });
    each("name of a season", kTexts, [&](const std::string& value) {
        return season([&](Season& draft) { draft.name = value; });
    });
    expectMostRefused();
}

// What the ledger refuses says which cell of which table, and what there may be.
TEST_F(HostileValuesTest, RefusedByTheLedgerNameTheFieldAndItsBounds)
{
    SeedLot draft;
    draft.variety = cress;
    draft.lotNumber = "L9";
    draft.bought = grams(20'000'000);
    const auto refused = journal->varieties().saveLot(draft);
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(BoundsReason::Amount)) << told(refused.error());
    EXPECT_EQ(refused.error().row->table, "seed_lot");
    EXPECT_EQ(refused.error().values,
              (std::vector<std::string>{"20000000000", "bought_mg", "0", "1e+10"}));
}

} // namespace
} // namespace plumule
