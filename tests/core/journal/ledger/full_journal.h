#pragma once

#include "core/climate/logger_time.h"
#include "core/journal/climate/climate_entries.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/merge/merge_entries.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/journal/week/week_entries.h"
#include "tests/core/journal/trial/trial_fixture.h"
#include "tests/support/told.h"

#include <fstream>

namespace plumule {

// A journal with at least one row in every table: a trial in its ninth day, half of it cut, one
// planned, loose trays, one tasting that is open and one that is closed, a logger's hours, timed
// work, and a copy that was brought back.
class FullJournalTest : public TrialTest
{
protected:
    void SetUp() override
    {
        TrialTest::SetUp();
        const TrialDraft draft = drawnBeds();
        trays = sown(draft);
        ASSERT_EQ(trays.size(), 12U);
        clock.set(draft.plan.sowAt());
        growAndCutHalf();
        keepADiary();
        buyAndFeed();
        planAnother();
        sowLoose();
        taste();
        promise();
        repeat();
        readTheAir();
        timeTheWork();
        bringACopyBack();
    }

    std::vector<TrayId> trays;
    std::vector<PanelId> panels; // open, closed
    TrialId plannedTrial;

private:
    void growAndCutHalf()
    {
        ASSERT_TRUE(journal->watering().tickAll(trays, clock.today(), Slot::Morning));
        for (const int days : {2, 2}) {
            clock.set(clock.now() + days * kMinutesPerDay);
            for (const TrayId tray : trays) {
                ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
            }
        }
        ASSERT_TRUE(journal->watering().tickAll(trays, clock.today(), Slot::Morning));
        clock.set(clock.now() + 5 * kMinutesPerDay);
        for (std::size_t i = 0; i < 8; ++i) {
            weigh(trays[i], 200 + 10 * double(i), clock.now());
        }
        WeighingDraft residue;
        residue.tray = trays[1];
        residue.bowls = {{grams(130), grams(30)}};
        residue.at = clock.now();
        ASSERT_TRUE(journal->harvests().recordResidue(residue));
        ASSERT_TRUE(journal->trays().setAside(trays[7], "knocked over"));
    }

    void keepADiary()
    {
        const Moment now = clock.now();
        for (std::size_t i = 0; i < 10; ++i) {
            ASSERT_TRUE(journal->trays().noteHeight(trays[i], millimetres(40 + double(i)),
                                                    ReadFrom::Surface, now));
        }
        ASSERT_TRUE(journal->trays().writeNote(trays[8], "pale tips", now));
        const auto file = folder.path() / "picture.jpg";
        std::ofstream(file) << "not looked at";
        ASSERT_TRUE(journal->trays().attachPhoto(trays[8], file, "tips", now));
        WaterReading reading;
        reading.on = now.date;
        reading.minute = now.minute;
        reading.water = WaterKind::Nutrient;
        reading.ph = 6.1;
        reading.ec = 1200;
        ASSERT_TRUE(journal->watering().noteReading(reading));
        reading.tray = trays[9];
        ASSERT_TRUE(journal->watering().noteReading(reading));
        ASSERT_TRUE(journal->watering().giveBetween(
            {{trays[9]}, WateringMethod::Below, WaterKind::Plain, millilitres(40), now}));
        ASSERT_TRUE(journal->varieties().countLot(lot, grams(800), "counted"));
        ASSERT_TRUE(journal->stock().markSeedLow({{}, cress, 10, grams(50)}));
        StockItem tubs;
        tubs.name = "Tubs";
        tubs.kind = StockKind::Packaging;
        ASSERT_TRUE(journal->stock().enter(tubs, StockEvent::Counted, now.date, plumule::pieces(40),
                                           "one crushed"));
        const auto pieces = journal->media().pieces(mesh.id).value();
        for (const PieceRecord& piece : pieces) {
            if (piece.uses > 0 && !piece.isInUse) {
                const SanitisingDraft how{"peroxide", 3, StrengthUnit::Percent, 10, "Bo"};
                ASSERT_TRUE(journal->media().sanitise({piece.piece.id}, how));
            }
        }
    }

    void buyAndFeed()
    {
        Price water{{}, PriceItem::Water, std::nullopt, clock.today(), money(4.87)};
        water.measure = PriceMeasure::ThousandUsGallons;
        ASSERT_TRUE(journal->costs().savePrice(water));
        Medium fed = peat;
        fed.isAsRun = true;
        ASSERT_TRUE(journal->media().save(fed));
    }

    void planAnother()
    {
        TrialDraft next = beds();
        next.trial.name = "Cress on two beds";
        next.treatments = {treated(mix), treated(peat)};
        next.plan.traysEach = 2;
        next.plan.blocks = 2;
        next.plan.spread = grams(20);
        next.plan.sowOn = clock.today() + 1;
        const auto stored = journal->trials().savePlan(drawn(next));
        ASSERT_TRUE(stored) << told(stored.error());
        plannedTrial = stored->trial.id;
    }

    void sowLoose()
    {
        SowingDraft draft;
        draft.variety = cress;
        draft.seedLot = lot;
        draft.medium = peat.id;
        draft.at = clock.now();
        draft.sownBy = "Ada";
        ASSERT_TRUE(journal->trays().sow(draft));
        const auto second = journal->trays().sow(draft);
        ASSERT_TRUE(second);
        ASSERT_TRUE(journal->trays().discard(second->front(), "mould", clock.now()));
    }

    void promise()
    {
        Order order;
        order.variety = cress;
        order.medium = mix.id;
        order.amount = grams(400);
        order.day = clock.today();
        order.recurs = Recurrence::Weekly;
        order.endsOn = clock.today() + 60;
        order.customer = "Canteen";
        order.note = "in two boxes";
        const auto stored = journal->orders().save(order);
        ASSERT_TRUE(stored) << told(stored.error());
        const auto cuts = journal->orders().cutsFor({order.day, stored->id}).value();
        ASSERT_FALSE(cuts.empty());
        ASSERT_TRUE(journal->orders().setCuts({order.day, stored->id}, {cuts.front().cut.id}));
    }

    // Once skipped.
    void repeat()
    {
        Repeat weekly;
        weekly.variety = cress;
        weekly.medium = peat.id;
        weekly.trays = 2;
        weekly.everyDays = 7;
        weekly.from = clock.today() + 1;
        const auto saved = journal->week().save(weekly);
        ASSERT_TRUE(saved) << told(saved.error());
        ASSERT_TRUE(journal->week().skip(saved->id, weekly.from));
    }

    void taste()
    {
        for (const char* name : {"Open", "Closed"}) {
            PanelDraft draft = journal->tastings().newDraft(newestSownTrial()).value();
            draft.panel.name = name;
            draft.media = {mix.id, mesh.id, peat.id};
            draft.attributes = {"liking"};
            draft.tasters = {"One", "Two", "Three"};
            const auto saved = journal->tastings().save(draft);
            ASSERT_TRUE(saved) << told(saved.error());
            panels.push_back(saved->id);
            const PanelRecord record = journal->tastings().record(saved->id).value();
            int value = 0;
            for (const Serving& serving : record.servings) {
                ASSERT_TRUE(journal->tastings().enter(saved->id, serving.code,
                                                      record.attributes[0].id, 3 + value++ % 5));
            }
        }
        ASSERT_TRUE(journal->tastings().close(panels[1]));
    }

    void readTheAir()
    {
        ClimateEntries& climate = journal->climate();
        const ShelfId shelf = journal->room().layout()->shelves.front().id;
        ASSERT_TRUE(climate.setLampLight({{shelf, 150.0}}));
        const auto table = csvFrom("time,temp,rh,ppfd\n2026-02-01 06:00,19.5,60,150\n"
                                   "2026-02-01 06:30,20,61,149\n2026-02-01 07:00,20.5,62,151\n");
        ASSERT_TRUE(table) << told(table.error());
        const LoggerColumns columns = proposedColumns(*table);
        const auto readings = readingsOf(*table, columns, SystemZone(), clock.now());
        ASSERT_TRUE(readings) << told(readings.error());
        const ClimateLogger door{{}, "door", {}, shelf, {}};
        ASSERT_TRUE(climate.bringIn(*readings, columns, door, FaultyLines::Refuse, "door.csv"));
    }

    // Once done, and once running.
    void timeTheWork()
    {
        WorkTime work;
        work.task = LabourKind::Watering;
        work.on = clock.today();
        work.minute = 425;
        work.seconds = 300;
        work.times = 20;
        ASSERT_TRUE(journal->workTimes().save(work));
        ASSERT_TRUE(journal->workTimes().begin(LabourKind::Harvesting));
    }

    // Both sides made a variety of one name; the copy took something back and could do it again.
    void bringACopyBack()
    {
        const auto taken = journal->copies().beginCopy("Laptop");
        ASSERT_TRUE(taken) << told(taken.error());
        const auto file = folder.path() / "laptop.plumule";
        ASSERT_TRUE(journal->copies().writeCopyTo(*taken, file, {}));
        {
            const auto laptop = Journal::open(file, clock).value();
            for (Journal* side : {journal.get(), laptop.get()}) {
                Protocol salad = side->varieties().protocol(cress).value();
                salad.variety.id = {};
                salad.variety.name = "Salad of two hands";
                salad.variety.codePrefix = "ST";
                const auto saved = side->varieties().save(salad);
                ASSERT_TRUE(saved) << told(saved.error());
            }
            ASSERT_TRUE(laptop->trays().writeNote(trays[8], "seen away", clock.now()));
            ASSERT_TRUE(laptop->trays().writeNote(trays[9], "thought better of", clock.now()));
            ASSERT_TRUE(laptop->undo());
        }
        auto copy = openCopy(file);
        ASSERT_TRUE(copy) << told(copy.error());
        const auto coming = journal->copies().comeBack(std::move(*copy));
        ASSERT_TRUE(coming) << told(coming.error());
        const auto plan = (*coming)->plan({});
        ASSERT_TRUE(plan) << told(plan.error());
        const auto backup = journal->backUpInto(BackupStore::of(journal->path()), {});
        ASSERT_TRUE(backup) << told(backup.error());
        const auto brought = (*coming)->bringTogether(
            *plan, [](const MergeItem&, std::int64_t) { return std::string(); }, *backup);
        ASSERT_TRUE(brought) << told(brought.error());
    }

    TrialId newestSownTrial()
    {
        return journal->trays().sheet(trays[0])->record.tray.trial.value();
    }
};

} // namespace plumule
