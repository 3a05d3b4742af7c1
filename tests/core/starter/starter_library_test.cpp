#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/starter/starter_varieties.h"

#include "core/starter/starter_yields.h"
#include "core/variety/variety_rules.h"
#include "tests/core/journal/journal_fixture.h"

#include <fstream>
#include <map>
#include <set>

namespace plumule {
namespace {

// A row of varieties.csv: ranges for a tray of 10 x 20 in.
struct PublishedCrop
{
    double seedLow = 0, seedHigh = 0, soakLow = 0, soakHigh = 0;
    double coveredLow = 0, coveredHigh = 0, harvestLow = 0, harvestHigh = 0;
    bool wasRead = false;
};

std::vector<std::string> cellsOf(const std::string& line)
{
    std::vector<std::string> cells(1);
    bool isQuoted = false;
    for (const char letter : line) {
        if (letter == '"') {
            isQuoted = !isQuoted;
        } else if (letter == ',' && !isQuoted) {
            cells.emplace_back();
        } else {
            cells.back() += letter;
        }
    }
    return cells;
}

std::map<std::string, PublishedCrop> publishedCrops()
{
    std::ifstream file(std::string(PLUMULE_REFERENCES) + "/handbook/varieties.csv");
    std::map<std::string, PublishedCrop> crops;
    std::string line;
    std::getline(file, line); // the header
    while (std::getline(file, line)) {
        const auto cells = cellsOf(line);
        const auto number = [&](std::size_t i) {
            return std::strtod(cells.at(i).c_str(), nullptr);
        };
        crops[cells.at(0)] = {number(3),  number(4),  number(9),
                              number(10), number(11), number(12),
                              number(13), number(14), cells.at(19) == "READ"};
    }
    return crops;
}

// Our names for the table's rows.
const std::map<std::string, std::string>& rowNames()
{
    static const std::map<std::string, std::string> kNames = {
        {"Amaranth", "amaranth"},
        {"Arugula", "arugula (rocket)"},
        {"Basil, sweet", "basil (sweet)"},
        {"Beet", "beet (clusters)"},
        {"Buckwheat, in hull", "buckwheat (in hull)"},
        {"Chard", "Swiss chard (clusters)"},
        {"Cilantro, split", "cilantro (split seed)"},
        {"Collard", "collard"},
        {"Cress, garden", "garden cress"},
        {"Dill", "dill"},
        {"Fenugreek", "fenugreek"},
        {"Kale", "kale"},
        {"Kohlrabi", "kohlrabi"},
        {"Lentil", "lentil"},
        {"Lettuce", "lettuce"},
        {"Mizuna", "mizuna"},
        {"Mustard", "mustard"},
        {"Onion", "onion / leek"},
        {"Pak choi", "pak choi"},
        {"Pea shoots", "pea shoots"},
        {"Radish", "radish"},
        {"Red cabbage", "red cabbage"},
        {"Salad mix, mild", "mixed mild salad (mesclun)"},
        {"Sunflower, in hull", "sunflower (in hull)"},
        {"Turnip", "turnip / rapini"},
        {"Wheatgrass", "wheat (grass)"},
    };
    return kNames;
}

int minutesOf(const Protocol& protocol, Stage kind)
{
    int minutes = 0;
    for (const ProtocolStage& stage : protocol.stages) {
        minutes += stage.stage == kind ? stage.lengthMinutes : 0;
    }
    return minutes;
}

void expectWithin(double low, double value, double high, const std::string& what)
{
    EXPECT_GE(value, low) << what;
    EXPECT_LE(value, high) << what;
}

TEST(StarterVarieties, StandWithinTheRangesOfTheTableAndNameItsSource)
{
    const auto crops = publishedCrops();
    int compared = 0;
    for (const Protocol& protocol : starterVarieties()) {
        const std::string& name = protocol.variety.name;
        if (name == "Broccoli") {
            continue; // the check value of common practice, below
        }
        ASSERT_TRUE(rowNames().contains(name)) << name << " has no row to compare with";
        const PublishedCrop& crop = crops.at(rowNames().at(name));
        const double covered =
            (minutesOf(protocol, Stage::UnderWeight) + minutesOf(protocol, Stage::Blackout)) /
            double{kMinutesPerDay};
        const double toHarvest =
            covered + minutesOf(protocol, Stage::Light) / double{kMinutesPerDay};
        expectWithin(crop.seedLow, inGrams(protocol.variety.seedPerTray.value()), crop.seedHigh,
                     name + " seed");
        expectWithin(crop.soakLow, minutesOf(protocol, Stage::Soak) / 60.0, crop.soakHigh,
                     name + " soak");
        expectWithin(crop.coveredLow, covered, crop.coveredHigh, name + " covered");
        expectWithin(crop.harvestLow, toHarvest, crop.harvestHigh, name + " harvest");
        if (crop.wasRead) {
            EXPECT_NE(protocol.variety.source.find("Utah State University Extension"),
                      std::string::npos)
                << name;
        } else {
            EXPECT_EQ(protocol.variety.source, "from memory") << name;
        }
        ++compared;
    }
    EXPECT_EQ(compared, 26);
}

// Common practice, no source: 25 g a tray, three days under weight, one day blackout, eight days
// light; misted till light, then half a US cup from below, twice a day each.
TEST(StarterVarieties, BroccoliIsAsCommonPracticeHasIt)
{
    for (const Protocol& protocol : starterVarieties()) {
        if (protocol.variety.name != "Broccoli") {
            continue;
        }
        EXPECT_EQ(protocol.variety.seedPerTray, grams(25));
        EXPECT_NE(protocol.variety.source.find("common practice, no source"), std::string::npos);
        ASSERT_EQ(protocol.stages.size(), 3U);
        EXPECT_EQ(minutesOf(protocol, Stage::UnderWeight), 3 * kMinutesPerDay);
        EXPECT_EQ(minutesOf(protocol, Stage::Blackout), 1 * kMinutesPerDay);
        EXPECT_EQ(minutesOf(protocol, Stage::Light), 8 * kMinutesPerDay);
        EXPECT_EQ(protocol.stages[1].method, WateringMethod::Mist);
        EXPECT_EQ(protocol.stages[1].water, WaterKind::Plain);
        EXPECT_EQ(protocol.stages[2].method, WateringMethod::Below);
        EXPECT_EQ(protocol.stages[2].water, WaterKind::Nutrient);
        EXPECT_NEAR(inMillilitres(protocol.stages[2].amount.value()), 118, 0.5);
        EXPECT_EQ(protocol.stages[2].wateringsPerDay, 2);
        return;
    }
    FAIL() << "there is no broccoli";
}

TEST(StarterVarieties, AreSoundAndHaveNamesCodesAndCuesOfTheirOwn)
{
    std::set<std::string> names;
    std::set<std::string> prefixes;
    for (const Protocol& protocol : starterVarieties()) {
        EXPECT_TRUE(checkProtocol(protocol)) << protocol.variety.name;
        EXPECT_TRUE(names.insert(protocol.variety.name).second) << protocol.variety.name;
        EXPECT_TRUE(prefixes.insert(protocol.variety.codePrefix).second)
            << protocol.variety.codePrefix;
        for (const ProtocolStage& stage : protocol.stages) {
            EXPECT_FALSE(stage.cue.empty()) << protocol.variety.name << " " << toText(stage.stage);
        }
    }
}

class StarterLibraryTest : public JournalTest
{};

TEST_F(StarterLibraryTest, ANewJournalHoldsEveryVarietyWithItsStages)
{
    const auto library = starterVarieties();
    ASSERT_EQ(journal->varieties().all()->size(), library.size());
    for (const Protocol& protocol : library) {
        const auto stored =
            journal->varieties().protocol(varietyNamed(protocol.variety.name)).value();
        EXPECT_EQ(stored.stages.size(), protocol.stages.size()) << protocol.variety.name;
        EXPECT_EQ(stored.variety.source, protocol.variety.source);
    }
}

TEST_F(StarterLibraryTest, MediaHaveAMarkerEachAndSayWhereTheirFiguresComeFrom)
{
    std::set<int> markers;
    int nutrientBearing = 0;
    const auto media = journal->media().all().value();
    for (const Medium& medium : media) {
        EXPECT_TRUE(markers.insert(medium.marker).second) << medium.name;
        EXPECT_NE(medium.source.find("from memory"), std::string::npos) << medium.name;
        EXPECT_TRUE(medium.surfaceBelowRim.has_value()) << medium.name;
        EXPECT_EQ(medium.amountPerTray.has_value(), medium.form == MediumForm::LooseMix);
        EXPECT_EQ(medium.plannedUses.has_value(), medium.isReusable);
        nutrientBearing += medium.isNutrientBearing ? 1 : 0;
        // Each can be stored again as it stands.
        EXPECT_TRUE(journal->media().save(medium)) << medium.name;
    }
    EXPECT_EQ(markers.size(), 8U);
    EXPECT_EQ(nutrientBearing, 2);
}

// 1.5 US fl oz per US gallon, pH 5.5 to 6.0: common practice, no source. EC: Moraru, Rusu, Mintas
// 2022, Foods 11:1327, Table 1 (1.2 to 1.8 mS/cm).
TEST_F(StarterLibraryTest, ThereIsARecipeForEachWater)
{
    const auto recipes = journal->watering().recipes().value();
    ASSERT_EQ(recipes.size(), 3U);
    EXPECT_FALSE(recipes[0].dosePerLitre);
    EXPECT_FALSE(recipes[0].phLow);
    EXPECT_EQ(recipes[1].phLow, 5.5);
    EXPECT_FALSE(recipes[1].dosePerLitre);
    const double published = 1.5 * kMillilitresPerUsFluidOunce / kMillilitresPerUsGallon * 1000;
    EXPECT_NEAR(inMillilitres(recipes[2].dosePerLitre.value()), published, 0.005);
    EXPECT_EQ(recipes[2].phHigh, 6.0);
    EXPECT_EQ(recipes[2].ecLow, 1200);
    EXPECT_EQ(recipes[2].ecHigh, 1800);
}

// From memory: 10 to 25 minutes a tray, all steps, over twelve days with two rounds each.
TEST_F(StarterLibraryTest, TheWorkOnATrayAddsUpToABelievableTime)
{
    double seconds = 0;
    int tasks = 0;
    const auto labour = journal->costs().labour().value();
    for (const LabourTask& task : labour) {
        const bool isPiece = task.kind == LabourKind::PieceWashing;
        const int times = task.kind == LabourKind::Watering    ? 24
                          : task.kind == LabourKind::StageMove ? 2
                                                               : 1;
        seconds += isPiece ? 0 : task.seconds * times;
        ++tasks;
    }
    EXPECT_EQ(tasks, 7);
    expectWithin(10, seconds / 60, 25, "minutes a tray");
}

// The yields of varieties.csv, whose notes name what was read.
TEST(StarterYields, EveryVarietyHasOneWithItsSource)
{
    const LibraryYield widest = libraryYield("no such variety");
    EXPECT_EQ(widest.source, "from memory");
    std::set<std::string> sources;
    for (const Protocol& protocol : starterVarieties()) {
        const LibraryYield yield = libraryYield(protocol.variety.name);
        EXPECT_LT(yield.gramsLow, yield.gramsHigh) << protocol.variety.name;
        EXPECT_GE(yield.gramsLow, widest.gramsLow);
        EXPECT_LE(yield.gramsHigh, widest.gramsHigh);
        EXPECT_FALSE(yield.source.empty());
        EXPECT_FALSE(yield == widest) << protocol.variety.name << " is not in the table";
        sources.insert(yield.source);
    }
    EXPECT_EQ(sources.size(), 5U);
    EXPECT_EQ(libraryYield("pea SHOOTS").gramsHigh, 3797);
}

} // namespace
} // namespace plumule
