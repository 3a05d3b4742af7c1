#include "core/variety/variety_repository.h"

#include "tests/core/storage/store_fixture.h"

namespace plumule {
namespace {

class VarietyRepositoryTest : public StoreTest
{
protected:
    Variety storeVariety(const std::string& name, const std::string& prefix)
    {
        Variety variety;
        variety.name = name;
        variety.codePrefix = prefix;
        varieties.insert(variety);
        return variety;
    }

    SeedLot storeLot(VarietyId variety, const std::string& number, std::optional<Mass> bought)
    {
        SeedLot lot;
        lot.variety = variety;
        lot.lotNumber = number;
        lot.bought = bought;
        varieties.insert(lot);
        return lot;
    }

    void sow(const std::string& code, const SeedLot& lot, const std::string& seedMg)
    {
        database.execute("INSERT OR IGNORE INTO medium VALUES (1, 'Felt', 'mat', 0, 0, NULL, NULL, "
                         "NULL, 0, '', '', 0)");
        storeTray(code, lot.variety.value, 1, ", seed_lot_id, seed_mg, sown_on, state",
                  ", " + std::to_string(lot.id.value) + ", " + seedMg +
                      ", '2026-03-01', 'growing'");
    }

    VarietyRepository varieties{database};
};

TEST_F(VarietyRepositoryTest, KeepsAVarietyExactly)
{
    Variety variety;
    variety.name = "Pea, tendril";
    variety.codePrefix = "PE";
    variety.seedPerTray = grams(150.25);
    variety.source = "from memory";
    variety.note = "soak overnight";
    variety.isRetired = true;
    varieties.insert(variety);
    EXPECT_EQ(varieties.find(variety.id), variety);
    variety.seedPerTray.reset();
    variety.isRetired = false;
    varieties.update(variety);
    EXPECT_EQ(varieties.find(variety.id), variety);
    EXPECT_EQ(varieties.byId().at(variety.id), variety);
}

TEST_F(VarietyRepositoryTest, ListsByNameAndHidesTheRetired)
{
    storeVariety("radish", "RD");
    storeVariety("Beet", "BE");
    Variety retired = storeVariety("Amaranth", "AM");
    retired.isRetired = true;
    varieties.update(retired);
    std::vector<std::string> names;
    for (const Variety& variety : varieties.all(Listed::InUse)) {
        names.push_back(variety.name);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"Beet", "radish"}));
    EXPECT_EQ(varieties.all(Listed::All).size(), 3U);
}

TEST_F(VarietyRepositoryTest, FindsByNameWhateverTheLetterCase)
{
    const Variety radish = storeVariety("Radish", "RD");
    EXPECT_EQ(varieties.findByName("rADISH")->id, radish.id);
    EXPECT_FALSE(varieties.findByName("Radis"));
}

ProtocolStage stageOf(Stage kind, int minutes)
{
    ProtocolStage stage;
    stage.stage = kind;
    stage.lengthMinutes = minutes;
    return stage;
}

TEST_F(VarietyRepositoryTest, KeepsStagesInOrderAndTheirIds)
{
    const Variety pea = storeVariety("Pea", "PE");
    ProtocolStage light = stageOf(Stage::Light, 7 * kMinutesPerDay);
    light.cue = "snaps";
    light.wateringsPerDay = 2;
    light.method = WateringMethod::Below;
    light.amount = millilitres(118);
    light.water = WaterKind::Nutrient;
    light.waterOnNutrientBearing = WaterKind::Plain;
    std::vector<ProtocolStage> stages{stageOf(Stage::Soak, 360), stageOf(Stage::UnderWeight, 2880),
                                      light};
    varieties.storeStages(pea.id, stages);
    EXPECT_EQ(varieties.stages(pea.id), stages);
    EXPECT_EQ(stages[2].position, 2);

    std::vector<ProtocolStage> changed{stages[0], stageOf(Stage::Blackout, 1440), stages[2]};
    changed[0].lengthMinutes = 480;
    varieties.storeStages(pea.id, changed);
    EXPECT_EQ(varieties.stages(pea.id), changed);
    EXPECT_EQ(changed[0].id, stages[0].id);
    EXPECT_EQ(changed[2].id, stages[2].id);
    EXPECT_EQ(varieties.protocol(pea.id)->stages.size(), 3U);
}

TEST_F(VarietyRepositoryTest, AVarietyGoesWithItsStages)
{
    const Variety pea = storeVariety("Pea", "PE");
    std::vector<ProtocolStage> stages{stageOf(Stage::Light, 60)};
    varieties.storeStages(pea.id, stages);
    varieties.remove(pea.id);
    EXPECT_FALSE(varieties.protocol(pea.id));
    EXPECT_EQ(database.scalar("SELECT count(*) FROM protocol_stage"), 0);
}

TEST_F(VarietyRepositoryTest, KeepsALotExactly)
{
    SeedLot lot = storeLot(storeVariety("Pea", "PE").id, "L-7", std::nullopt);
    EXPECT_EQ(varieties.find(lot.id), lot);
    lot.supplier = "Invented Seeds";
    lot.boughtOn = date(2026, 1, 15);
    lot.bought = grams(1000);
    lot.price = money(12.3456);
    lot.germinationPercent = 93.5;
    lot.note = "cool and dry";
    lot.isUsedUp = true;
    varieties.update(lot);
    EXPECT_EQ(varieties.find(lot.id), lot);
    EXPECT_EQ(varieties.lotsById().at(lot.id), lot);
    EXPECT_EQ(varieties.findLot(lot.variety, "l-7"), lot);
}

TEST_F(VarietyRepositoryTest, StockIsWhatTraysAndCountsLeave)
{
    const Variety pea = storeVariety("Pea", "PE");
    const SeedLot weighed = storeLot(pea.id, "A", grams(1000));
    const SeedLot unweighed = storeLot(pea.id, "B", std::nullopt);
    const SeedLot untouched = storeLot(storeVariety("Beet", "BE").id, "C", grams(50));
    sow("PE001", weighed, "150000");
    sow("PE002", weighed, "149500");
    sow("PE003", weighed, "NULL");
    sow("PE004", unweighed, "150000");
    StockCorrection correction{{}, weighed.id, date(2026, 3, 2), -grams(20), "spilt"};
    varieties.insert(correction);

    const auto all = varieties.stock(std::nullopt, Listed::InUse);
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].lot, untouched) << "by variety's name";
    EXPECT_EQ(all[0].left, grams(50));
    EXPECT_EQ(all[1].sown, grams(299.5));
    EXPECT_EQ(all[1].left, grams(680.5));
    EXPECT_EQ(all[2].sown, grams(150));
    EXPECT_FALSE(all[2].left);
    EXPECT_EQ(varieties.stock(pea.id, Listed::InUse).size(), 2U);
    EXPECT_EQ(varieties.stockOf(weighed.id)->left, grams(680.5));
    EXPECT_EQ(varieties.corrections(weighed.id), (std::vector<StockCorrection>{correction}));
}

TEST_F(VarietyRepositoryTest, HidesLotsThatAreUsedUp)
{
    const Variety pea = storeVariety("Pea", "PE");
    SeedLot lot = storeLot(pea.id, "A", grams(100));
    lot.isUsedUp = true;
    varieties.update(lot);
    EXPECT_TRUE(varieties.lots(pea.id, Listed::InUse).empty());
    EXPECT_EQ(varieties.lots(pea.id, Listed::All).size(), 1U);
}

TEST_F(VarietyRepositoryTest, KnowsWhatHangsOnIt)
{
    const Variety pea = storeVariety("Pea", "PE");
    EXPECT_FALSE(varieties.isInUse(pea.id));
    const SeedLot lot = storeLot(pea.id, "A", grams(100));
    EXPECT_TRUE(varieties.isInUse(pea.id)) << "a lot";
    EXPECT_FALSE(varieties.isInUse(lot.id));
    sow("PE001", lot, "1000");
    EXPECT_TRUE(varieties.isInUse(lot.id)) << "a tray";
    EXPECT_THROW(varieties.remove(lot.id), StorageFailure) << "the store itself holds on to it";
}

TEST_F(VarietyRepositoryTest, AWordThatIsNoStageIsDamage)
{
    const Variety pea = storeVariety("Pea", "PE");
    database.execute("INSERT INTO protocol_stage VALUES (1, " + std::to_string(pea.id.value) +
                     ", 0, 'noon', 60, '', 0, 'none', NULL, 'plain', NULL)");
    EXPECT_THROW((void)varieties.stages(pea.id), StorageFailure);
}

} // namespace
} // namespace plumule
