#pragma once

#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/told.h"

#include <algorithm>

namespace plumule {

// A journal with an own variety that grows ten days, a lot of 1 kg, three media and their prices:
// numbers that are easily added up by hand. Four shelves of four places.
class TrialTest : public JournalTest
{
protected:
    void SetUp() override
    {
        RoomPlan plan = smallRoom();
        plan.placesPerShelf = 4;
        createJournal(plan);
        addVariety();
        addMedia();
        addPrices();
    }

    // Mix, mesh and peat, four trays of each in four blocks, tomorrow at 08:00.
    TrialDraft beds()
    {
        TrialDraft draft;
        draft.trial.name = "Cress on three beds";
        draft.trial.margin = grams(20);
        draft.trial.control = mix.id;
        draft.plan.variety = cress;
        draft.plan.seedLot = lot;
        draft.plan.sowOn = clock.today() + 1;
        draft.plan.sowMinute = 8 * 60;
        draft.plan.drawNumber = 7;
        draft.treatments = {treated(mix), treated(mesh), treated(peat)};
        return draft;
    }
    // With its places drawn.
    TrialDraft drawnBeds() { return drawn(beds()); }
    TrialDraft drawn(TrialDraft draft)
    {
        const auto layout = journal->trials().draw(draft);
        EXPECT_TRUE(layout) << told(layout.error());
        draft.trays = layout.value_or(std::vector<PlannedTray>());
        return draft;
    }
    static Treatment treated(const Medium& medium, Feeding feeding = Feeding::AsProtocol)
    {
        Treatment treatment;
        treatment.medium = medium.id;
        treatment.feeding = feeding;
        return treatment;
    }
    std::vector<TrayId> sown(const TrialDraft& draft)
    {
        const auto trays = journal->trials().sow(draft, draft.plan.sowAt());
        EXPECT_TRUE(trays) << told(trays.error());
        return trays.value_or(std::vector<TrayId>());
    }
    TrialId newestTrial() { return journal->trials().list().value().at(0).trial.id; }
    TraySheet sheetOf(TrayId tray) { return journal->trays().sheet(tray).value(); }

    void weigh(TrayId tray, double net, Moment at)
    {
        WeighingDraft weighing;
        weighing.tray = tray;
        weighing.bowls = {{grams(net + 40), grams(40)}};
        weighing.at = at;
        clock.set(std::max(clock.now(), at));
        weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet};
        const auto done = journal->harvests().record(weighing);
        ASSERT_TRUE(done) << told(done.error());
    }

    VarietyId cress;
    SeedLotId lot;
    Medium mix;  // inert, loose, 1.5 L a tray, 0.50 a litre
    Medium mesh; // reusable, 20 uses, 18.00; five pieces
    Medium peat; // nutrient-bearing, loose, 2 L a tray, 0.25 a litre

private:
    void addVariety()
    {
        Protocol protocol;
        protocol.variety.name = "Cress";
        protocol.variety.codePrefix = "CR";
        protocol.variety.seedPerTray = grams(10);
        const auto stage = [&](Stage which, int hours, int perDay, WateringMethod method,
                               double millilitresEach, WaterKind water) {
            ProtocolStage added;
            added.stage = which;
            added.lengthMinutes = hours * 60;
            added.wateringsPerDay = perDay;
            added.method = method;
            if (millilitresEach > 0) {
                added.amount = millilitres(millilitresEach);
            }
            added.water = water;
            protocol.stages.push_back(added);
        };
        stage(Stage::Soak, 8, 0, WateringMethod::None, 0, WaterKind::Plain);
        stage(Stage::UnderWeight, 48, 2, WateringMethod::Mist, 50, WaterKind::Plain);
        stage(Stage::Blackout, 48, 0, WateringMethod::None, 0, WaterKind::Plain);
        stage(Stage::Light, 144, 1, WateringMethod::Below, 200, WaterKind::Nutrient);
        cress = journal->varieties().save(protocol).value().variety.id;
        SeedLot bought;
        bought.variety = cress;
        bought.lotNumber = "L1";
        bought.bought = grams(1000);
        bought.price = money(20);
        lot = journal->varieties().saveLot(bought).value().id;
    }

    Medium added(const char* name, MediumForm form, bool bearsNutrient, double litresEach)
    {
        Medium medium;
        medium.name = name;
        medium.form = form;
        medium.isNutrientBearing = bearsNutrient;
        if (litresEach > 0) {
            medium.amountPerTray = litres(litresEach);
        } else {
            medium.isReusable = true;
            medium.plannedUses = 20;
        }
        return journal->media().save(medium).value();
    }
    void addMedia()
    {
        mix = added("Test mix", MediumForm::LooseMix, false, 1.5);
        mesh = added("Test mesh", MediumForm::Mesh, false, 0);
        peat = added("Test peat", MediumForm::LooseMix, true, 2);
        ASSERT_TRUE(journal->media().addPieces(mesh.id, 5, std::nullopt));
    }

    void price(PriceItem item, double units, std::optional<MediumId> medium = std::nullopt)
    {
        Price added;
        added.item = item;
        added.medium = medium;
        added.from = date(2026, 1, 1);
        added.amount = money(units);
        ASSERT_TRUE(journal->costs().savePrice(added));
    }
    void addPrices()
    {
        price(PriceItem::Medium, 0.5, mix.id);
        price(PriceItem::Medium, 18, mesh.id);
        price(PriceItem::Medium, 0.25, peat.id);
        price(PriceItem::Concentrate, 12.5);
        price(PriceItem::Water, 0.01);
        const auto recipes = journal->watering().recipes().value();
        for (WaterRecipe recipe : recipes) {
            recipe.dosePerLitre.reset();
            recipe.concentrate.clear();
            if (recipe.water == WaterKind::Nutrient) {
                recipe.concentrate = "Grow";
                recipe.dosePerLitre = millilitres(8);
            }
            ASSERT_TRUE(journal->watering().changeRecipe(recipe));
        }
    }
};

} // namespace plumule
