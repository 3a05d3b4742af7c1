#include "ui/watering/round_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(RoundTextShelves, GroupsTraysByShelfAndThoseWithoutAPlaceLast)
{
    Round round;
    Spot first;
    first.rack = "A";
    first.shelf = "2";
    first.shelfId = {1};
    Spot second = first;
    second.shelf = "3";
    second.shelfId = {2};
    for (const auto& spot : {std::optional(first), std::optional(first), std::optional(second),
                             std::optional<Spot>()}) {
        RoundTray tray;
        tray.spot = spot;
        round.trays.push_back(tray);
    }
    round.trays[1].stage = Stage::Light;
    const auto shelves = shelvesOf(round);
    ASSERT_EQ(shelves.size(), 3U);
    EXPECT_EQ(shelves[0].trays.size(), 2U);
    EXPECT_EQ(shelfName(shelves[0]), QString::fromUtf8("Rack A · shelf 2"));
    EXPECT_EQ(shelfWork(round, shelves[0]), "1 under weight, 1 in light");
    EXPECT_EQ(shelfWork(round, shelves[1]), "under weight, mist from above");
    EXPECT_EQ(shelfName(shelves[2]), "No place yet");
}

TEST(RoundTextShelves, DecisionsStandOnTheirShelfInWalkingOrder)
{
    Round round;
    const auto spotAt = [](std::int64_t shelf, int rank) {
        Spot spot;
        spot.shelfId = {shelf};
        spot.rank = rank;
        return std::optional(spot);
    };
    const auto decisionAt = [](std::optional<Spot> spot, const char* variety) {
        StageDecision decision;
        decision.spot = spot;
        decision.variety = variety;
        return decision;
    };
    for (const auto& spot : {spotAt(1, 0), spotAt(3, 8), std::optional<Spot>()}) {
        round.trays.emplace_back();
        round.trays.back().spot = spot;
    }
    round.decisions = {decisionAt(spotAt(1, 0), "Cress"), decisionAt(spotAt(2, 4), "Cress"),
                       decisionAt(spotAt(2, 5), "Radish"), decisionAt(spotAt(2, 6), "Cress"),
                       decisionAt(std::nullopt, "Cress")};
    const auto shelves = shelvesOf(round);
    ASSERT_EQ(shelves.size(), 4U);
    EXPECT_EQ(shelves[0].trays.size(), 1U);
    EXPECT_EQ(shelves[0].decisions.size(), 1U);
    EXPECT_TRUE(shelves[1].trays.empty());
    using Groups = std::vector<std::vector<std::size_t>>;
    EXPECT_EQ(shelves[1].decisions, (Groups{{1, 3}, {2}})) << "of one variety together";
    EXPECT_EQ(shelfWork(round, shelves[1]), "no water in this round");
    EXPECT_TRUE(shelves[2].decisions.empty());
    EXPECT_EQ(shelves[3].decisions, (Groups{{4}}));
    EXPECT_EQ(shelves[3].trays, std::vector<std::size_t>{2});
}

// Trays of one shelf, all indices of the round.
ShelfGroup wholeShelf(const Round& round)
{
    ShelfGroup shelf;
    for (std::size_t i = 0; i < round.trays.size(); ++i) {
        shelf.trays.push_back(i);
    }
    return shelf;
}

TEST(RoundTextShelves, TraysOfOneStageAreOneCountHoweverTheyAreWatered)
{
    Round round;
    round.trays.resize(3);
    for (RoundTray& tray : round.trays) {
        tray.stage = Stage::Light;
        tray.method = WateringMethod::Below;
    }
    EXPECT_EQ(shelfWork(round, wholeShelf(round)),
              standing(Stage::Light) + ", " + nameOf(WateringMethod::Below));
    round.trays[1].method = WateringMethod::Mist;
    EXPECT_EQ(shelfWork(round, wholeShelf(round)), "3 in light");
    round.trays[2].stage = Stage::Blackout;
    EXPECT_EQ(shelfWork(round, wholeShelf(round)), "1 in blackout, 2 in light");
}

TEST(RoundTextShelves, AsNeededIsSaidWhereAllAre)
{
    Round round;
    round.trays.resize(2);
    for (RoundTray& tray : round.trays) {
        tray.stage = Stage::Light;
        tray.isAsNeeded = true;
    }
    EXPECT_EQ(shelfWork(round, wholeShelf(round)),
              "in light, as needed: lift each, water those that feel dry");
    round.trays[1].isAsNeeded = false;
    EXPECT_FALSE(shelfWork(round, wholeShelf(round)).contains("as needed"));
}

TEST(RoundTextShelves, DecisionsAreOneOnlyWhereTheSameIsAsked)
{
    Round round;
    round.decisions.resize(2);
    const auto groups = [&] { return shelvesOf(round).at(0).decisions.size(); };
    EXPECT_EQ(groups(), 1U);
    round.decisions[1].cue = "Roots seen?";
    EXPECT_EQ(groups(), 2U);
    round.decisions[1] = round.decisions[0];
    round.decisions[1].daysLate = 1;
    EXPECT_EQ(groups(), 2U);
    round.decisions[1] = round.decisions[0];
    round.decisions[1].to = Stage::Light;
    EXPECT_EQ(groups(), 2U);
    EXPECT_TRUE(shelvesOf(Round()).empty());
}

TEST(RoundTextShelves, CodesInARowAreDrawnTogetherAndManyAreCounted)
{
    EXPECT_EQ(codesText({"RC083"}), "RC083");
    EXPECT_EQ(codesText({"RC083", "RC084"}), "RC083, RC084");
    EXPECT_EQ(codesText({"RC083", "RC084", "RC085", "RC086"}), QString::fromUtf8("RC083–086"));
    EXPECT_EQ(codesText({"RC083", "RC085", "RC086"}), "RC083, RC085, RC086");
    EXPECT_EQ(codesText({"RC099", "RC100", "RC101"}), QString::fromUtf8("RC099–101"));
    EXPECT_EQ(codesText({"A1", "B2", "C3", "D4", "E5", "F7", "G9"}),
              "A1, B2, C3, D4, E5 and 2 more");
    EXPECT_EQ(codesText({"mat", "mesh", "mix"}), "mat, mesh, mix");
}

TEST(RoundTextShelves, CodesThatAreInNoRowAreNamed)
{
    EXPECT_EQ(codesText({"RC083", "PE084", "PE085"}), "RC083, PE084, PE085");
    EXPECT_EQ(codesText({"RC998", "RC999", "RC1000"}), "RC998, RC999, RC1000");
    EXPECT_EQ(codesText({"RC085", "RC084", "RC083"}), "RC085, RC084, RC083");
    EXPECT_EQ(codesText({"R999999999", "R1000000000", "R1000000001"}),
              "R999999999, R1000000000, R1000000001");
    EXPECT_EQ(codesText({}), "");
}

TEST(RoundTextShelves, FromTheSeventhOnCodesAreCounted)
{
    std::vector<std::string> codes = {"A1", "A3", "A5", "A7", "A9", "B1"};
    EXPECT_EQ(codesText(codes), "A1, A3, A5, A7, A9, B1") << "one more would be no shorter";
    codes.push_back("%1%2");
    codes[0] = "A%1";
    EXPECT_EQ(codesText(codes), "A%1, A3, A5, A7, A9 and 2 more");
}

} // namespace
} // namespace plumule::ui
