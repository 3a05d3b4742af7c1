#include "core/watering/watering_repository.h"

#include "tests/core/storage/store_fixture.h"

namespace plumule {
namespace {

const Date kToday = date(2026, 3, 2);

class WateringRepositoryTest : public StoreTest
{
protected:
    WateringRepositoryTest()
    {
        database.execute("INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0);"
                         "INSERT INTO medium VALUES (1, 'Mat', 'mat', 0, 0, NULL, NULL, NULL, 0, "
                         "'', '', 0)");
        for (const char* code : {"CR001", "CR002", "CR003"}) {
            storeTray(code, 1, 1, ", sown_on, state", ", '2026-02-20', 'growing'");
        }
        Statement statement = database.prepare("SELECT id FROM tray ORDER BY code");
        while (statement.step()) {
            trays.push_back(statement.get<TrayId>(0));
        }
    }

    Watering give(TrayId tray, Date on, Slot slot)
    {
        Watering watering;
        watering.tray = tray;
        watering.on = on;
        watering.slot = slot;
        watering.minute = slot == Slot::Morning ? 420 : 1080;
        waterings.insert(watering);
        return watering;
    }

    WateringRepository waterings{database};
    std::vector<TrayId> trays;
};

TEST_F(WateringRepositoryTest, KeepsAWateringExactly)
{
    Watering given = give(trays[0], kToday, Slot::Evening);
    EXPECT_EQ(waterings.find(given.id), given);
    given.method = WateringMethod::Below;
    given.water = WaterKind::Nutrient;
    given.amount = millilitres(118);
    waterings.update(given);
    EXPECT_EQ(waterings.find(trays[0], kToday, Slot::Evening), given);
    EXPECT_FALSE(waterings.find(trays[0], kToday, Slot::Morning));
    waterings.remove(given.id);
    EXPECT_FALSE(waterings.find(given.id));
}

TEST_F(WateringRepositoryTest, ComesOldestFirstWithMorningBeforeEvening)
{
    const Watering evening = give(trays[0], kToday, Slot::Evening);
    const Watering morning = give(trays[0], kToday, Slot::Morning);
    const Watering before = give(trays[0], kToday - 1, Slot::Evening);
    const Watering other = give(trays[1], kToday, Slot::Morning);
    EXPECT_EQ(waterings.waterings(trays[0]), (std::vector{before, morning, evening}));
    EXPECT_EQ(waterings.wateringsSince({trays[0]}, kToday), (std::vector{morning, evening}));
    EXPECT_EQ(waterings.wateringsSince(trays, kToday).size(), 3u);
    EXPECT_EQ(other.tray, trays[1]);
}

TEST_F(WateringRepositoryTest, WhatWasGivenBetweenRoundsIsToldApartFromATick)
{
    const Watering tick = give(trays[0], kToday, Slot::Morning);
    Watering between = tick;
    between.id = {};
    between.minute = 660;
    between.isBetween = true;
    waterings.insert(between);
    EXPECT_EQ(waterings.find(between.id), between);
    EXPECT_EQ(waterings.find(tick.id), tick);
    EXPECT_EQ(waterings.find(trays[0], kToday, Slot::Morning), tick);
    const std::vector<Watering> both{tick, between};
    EXPECT_EQ(waterings.waterings(trays[0]), both);
    EXPECT_EQ(waterings.wateringsSince({trays[0]}, kToday), both);
    waterings.remove(between.id);
    EXPECT_EQ(database.scalar("SELECT count(*) FROM watering_between"), 0);
    EXPECT_EQ(waterings.waterings(trays[0]), std::vector{tick});
}

TEST_F(WateringRepositoryTest, KeepsLooksThatFoundNoNeed)
{
    WateringLook look{{}, trays[0], kToday, Slot::Morning, 425};
    waterings.insert(look);
    WateringLook before{{}, trays[0], kToday - 3, Slot::Evening, 1090};
    waterings.insert(before);
    EXPECT_EQ(waterings.findLook(trays[0], kToday, Slot::Morning), look);
    EXPECT_FALSE(waterings.findLook(trays[1], kToday, Slot::Morning));
    EXPECT_EQ(waterings.looksSince(trays, kToday - 3), (std::vector{before, look}));
    EXPECT_EQ(waterings.looksSince(trays, kToday - 2), std::vector{look});
    waterings.remove(look.id);
    EXPECT_FALSE(waterings.findLook(trays[0], kToday, Slot::Morning));
}

TEST_F(WateringRepositoryTest, FindsTheNewestWateringBeforeARound)
{
    const Watering longAgo = give(trays[1], kToday - 40, Slot::Evening);
    const Watering lastEvening = give(trays[0], kToday - 1, Slot::Evening);
    const Watering morning = give(trays[0], kToday, Slot::Morning);
    give(trays[0], kToday, Slot::Evening);
    const auto beforeMorning = waterings.lastBefore(trays, kToday, Slot::Morning);
    EXPECT_EQ(beforeMorning.at(trays[0]), lastEvening);
    EXPECT_EQ(beforeMorning.at(trays[1]), longAgo);
    EXPECT_EQ(beforeMorning.count(trays[2]), 0u) << "never watered";
    EXPECT_EQ(waterings.lastBefore(trays, kToday, Slot::Evening).at(trays[0]), morning);
    EXPECT_TRUE(waterings.lastBefore({trays[0]}, kToday - 1, Slot::Evening).empty());
}

TEST_F(WateringRepositoryTest, KeepsRecipesInTheOrderOfTheirKinds)
{
    WaterRecipe nutrient;
    nutrient.concentrate = "Mix";
    nutrient.dosePerLitre = millilitres(11.72);
    nutrient.phLow = 5.5;
    WaterRecipe plain;
    plain.water = WaterKind::Plain;
    waterings.insert(nutrient);
    waterings.insert(plain);
    EXPECT_EQ(waterings.recipes(), (std::vector{plain, nutrient}));
    nutrient.ecHigh = 1800;
    waterings.update(nutrient);
    EXPECT_EQ(waterings.find(nutrient.id), nutrient);
}

TEST_F(WateringRepositoryTest, KeepsReadingsOfADaySpanAndOfATray)
{
    WaterReading mix{{}, kToday, Slot::Evening, 1080, WaterKind::PhSet, std::nullopt, 5.8, 1400};
    WaterReading ofTray{{},       kToday - 3,   Slot::Morning, 420, WaterKind::Nutrient,
                        trays[0], std::nullopt, 1250};
    waterings.insert(mix);
    waterings.insert(ofTray);
    EXPECT_EQ(waterings.readings(kToday - 5, kToday), (std::vector{ofTray, mix}));
    EXPECT_EQ(waterings.readings(kToday, kToday), std::vector{mix});
}

} // namespace
} // namespace plumule
