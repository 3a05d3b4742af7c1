#include "core/journal/rules/standing_rules_repository.h"

#include "core/medium/medium_rules.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

using Rows = std::set<std::int64_t>;

BrokenRule broken(RuleReason reason, std::vector<std::string> values)
{
    return {reason, std::move(values)};
}

// Each rule's rows are written by hand: kept, then broken once.
class StandingRulesRepositoryTest : public StoreTest
{
protected:
    StandingRulesRepositoryTest()
    {
        database.execute(
            "INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0);"
            "INSERT INTO medium VALUES (1, 'Mesh', 'mesh', 0, 1, 20, NULL, NULL, 0, '', '', 0);"
            "INSERT INTO piece VALUES (1, 1, 7, NULL, NULL, '');"
            "INSERT INTO rack VALUES (1, 'A', 0);"
            "INSERT INTO shelf VALUES (1, 1, '2', 0, NULL, NULL);"
            "INSERT INTO place VALUES (1, 1, 3), (2, 1, 4)");
    }

    // `more` are further columns with their values.
    void tray(int id, const std::string& state, const std::string& columns = "",
              const std::string& values = "")
    {
        const std::string number = std::to_string(id);
        database.execute("INSERT INTO tray (id, code, variety_id, medium_id, sown_on, "
                         "sown_minute, state" +
                         columns + ") VALUES (" + number + ", 'CR" + number +
                         "', 1, 1, '2026-03-01', 480, '" + state + "'" + values + ")");
    }
    // On the piece; ended at 10:00 of that day of March, or growing.
    void onPiece(int id, const std::string& endedOn)
    {
        if (endedOn.empty()) {
            tray(id, "growing", ", piece_id", ", 1");
        } else {
            tray(id, "harvested", ", piece_id, ended_on, ended_minute",
                 ", 1, '2026-03-" + endedOn + "', 600");
        }
    }
    void add(const std::string& table, const std::string& values)
    {
        database.execute("INSERT INTO " + table + " VALUES (" + values + ")");
    }
    void set(const std::string& change) { database.execute("UPDATE " + change); }

    std::vector<BrokenRule> among(TouchedRows touched)
    {
        rules.addOwners(touched);
        return rules.brokenAmong(touched);
    }
    std::vector<BrokenRule> of(const char* table, Rows rows) { return among({{table, rows}}); }

    StandingRulesRepository rules{database};
};

TEST_F(StandingRulesRepositoryTest, APlaceHoldsOneTray)
{
    tray(11, "growing");
    tray(12, "growing");
    add("stay", "1, 11, 1, '2026-03-01', 480, NULL, NULL");
    add("stay", "2, 12, 2, '2026-03-01', 480, NULL, NULL");
    EXPECT_THAT(of("stay", {1, 2}), IsEmpty());
    set("stay SET place_id = 1 WHERE id = 2");
    EXPECT_THAT(of("stay", {1}),
                ElementsAre(broken(RuleReason::PlaceTaken, {"A2", "3", "CR11", "CR12"})));
    EXPECT_THAT(of("stay", {2}),
                ElementsAre(broken(RuleReason::PlaceTaken, {"A2", "3", "CR12", "CR11"})));
    EXPECT_THAT(of("stay", {9}), IsEmpty()) << "it is asked of the rows touched alone";
}

TEST_F(StandingRulesRepositoryTest, NorDidItHoldTwoSinceTheStep)
{
    tray(11, "growing");
    tray(12, "harvested", ", ended_on, ended_minute", ", '2026-03-09', 480");
    add("stay", "1, 11, 1, '2026-03-01', 480, NULL, NULL");
    add("stay", "7, 12, 1, '2026-03-05', 480, '2026-03-09', 480");
    EXPECT_THAT(among({{"stay", {1}}, {"step", {5}}}),
                ElementsAre(broken(RuleReason::PlaceTaken, {"A2", "3", "CR11", "CR12"})));
    EXPECT_THAT(among({{"stay", {1}}, {"step", {8}}}), IsEmpty()) << "it stood there before";
    set("stay SET to_on = '2026-03-05', to_minute = 600 WHERE id = 1");
    EXPECT_THAT(among({{"stay", {1}}, {"step", {5}}}), IsEmpty())
        << "left and taken on one day, whatever the minutes";
}

TEST_F(StandingRulesRepositoryTest, ATrayStandsAtOnePlace)
{
    tray(11, "growing");
    add("stay", "1, 11, 1, '2026-03-01', 480, '2026-03-04', 600");
    add("stay", "2, 11, 2, '2026-03-04', 600, NULL, NULL");
    EXPECT_THAT(of("stay", {1, 2}), IsEmpty());
    set("stay SET from_minute = 599 WHERE id = 2"); // a minute at both
    EXPECT_THAT(of("stay", {2}), ElementsAre(broken(RuleReason::TrayTwice, {"CR11"})));
    set("stay SET from_on = '2026-03-05', from_minute = 0 WHERE id = 2");
    EXPECT_THAT(of("stay", {2}), IsEmpty());
    set("stay SET to_on = NULL, to_minute = NULL WHERE id = 1");
    EXPECT_THAT(of("stay", {1}), ElementsAre(broken(RuleReason::TrayTwice, {"CR11"})));
}

TEST_F(StandingRulesRepositoryTest, WhatHasEndedStandsNowhere)
{
    tray(11, "discarded", ", ended_on", ", '2026-03-04'");
    add("stay", "1, 11, 1, '2026-03-01', 480, '2026-03-04', 600");
    EXPECT_THAT(of("tray", {11}), IsEmpty());
    set("stay SET to_on = NULL");
    EXPECT_THAT(of("tray", {11}), ElementsAre(broken(RuleReason::EndedTrayStands, {"CR11"})));
    EXPECT_THAT(of("stay", {1}), ElementsAre(broken(RuleReason::EndedTrayStands, {"CR11"})))
        << "the stay is the tray's";
}

TEST_F(StandingRulesRepositoryTest, APieceCarriesOneGrowingTray)
{
    onPiece(11, "04");
    onPiece(12, "");
    add("sanitising", "1, 1, '2026-03-04', 600, 'heat'");
    EXPECT_THAT(of("tray", {11, 12}), IsEmpty());
    set("tray SET state = 'growing', ended_on = NULL, ended_minute = NULL WHERE id = 11");
    EXPECT_THAT(of("tray", {11}),
                ElementsAre(broken(RuleReason::PieceTaken, {"Mesh", "7", "CR11", "CR12"})));
}

TEST_F(StandingRulesRepositoryTest, ARetiredPieceCarriesNone)
{
    onPiece(11, "");
    EXPECT_THAT(of("piece", {1}), IsEmpty());
    set("piece SET retired_on = '2026-03-02'");
    EXPECT_THAT(of("piece", {1}),
                ElementsAre(broken(RuleReason::PieceRetired, {"Mesh", "7", "CR11"})));
    EXPECT_THAT(of("tray", {11}),
                ElementsAre(broken(RuleReason::PieceRetired, {"Mesh", "7", "CR11"})))
        << "the piece is the tray's";
    set("tray SET state = 'discarded', ended_on = '2026-03-02'");
    EXPECT_THAT(of("piece", {1}), IsEmpty());
}

TEST_F(StandingRulesRepositoryTest, WhatGrowsOnAPieceCameAfterAWashing)
{
    onPiece(11, "04");
    onPiece(12, "");
    const auto unwashed = broken(RuleReason::PieceNotSanitised, {"Mesh", "7", "CR12"});
    EXPECT_THAT(of("piece", {1}), ElementsAre(unwashed)) << "never washed";
    add("sanitising", "1, 1, '2026-03-04', 599, 'heat'");
    EXPECT_THAT(of("piece", {1}), ElementsAre(unwashed)) << "a minute before the use ended";
    set("sanitising SET minute = 600");
    EXPECT_THAT(of("piece", {1}), IsEmpty());
}

TEST_F(StandingRulesRepositoryTest, AWashingStandsBetweenTwoUsesThatAreOver)
{
    onPiece(11, "04");
    onPiece(12, "09");
    add("sanitising", "1, 1, '2026-03-06', 480, 'heat'");
    EXPECT_THAT(of("sanitising", {1}), IsEmpty());
    set("sanitising SET on_date = '2026-03-10'");
    EXPECT_THAT(of("sanitising", {1}),
                ElementsAre(broken(RuleReason::PieceNotSanitised, {"Mesh", "7", "CR12"})));
    EXPECT_THAT(of("tray", {12}), IsEmpty()) << "a tray is corrected without washing it again";
}

TEST_F(StandingRulesRepositoryTest, NamesAreGivenOnceWhateverTheirCase)
{
    const auto expectNameTaken = [&](const char* table, const std::string& kept,
                                     const std::string& twice, const std::string& name) {
        add(table, kept);
        EXPECT_THAT(of(table, {21}), IsEmpty()) << table;
        add(table, twice);
        EXPECT_THAT(of(table, {21}), ElementsAre(broken(RuleReason::NameTaken, {name}))) << table;
    };
    expectNameTaken("rack", "21, 'North', 1", "22, 'NORTH', 2", "North");
    expectNameTaken("shelf", "21, 1, 'Top', 1, NULL, NULL", "22, 1, 'top', 2, NULL, NULL", "Top");
    expectNameTaken("variety", "21, 'Pea', 'PE', NULL, '', '', 0",
                    "22, 'pea', 'PX', NULL, '', '', 1", "Pea");
    expectNameTaken("seed_lot", "21, 1, 'L-1', '', NULL, NULL, NULL, NULL, '', 0",
                    "22, 1, 'l-1', '', NULL, NULL, NULL, NULL, '', 0", "L-1");
    expectNameTaken("medium", "21, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 1, '', '', 0",
                    "22, 'felt', 'mat', 0, 0, NULL, NULL, NULL, 2, '', '', 0", "Felt");
    expectNameTaken("trial", "21, 'T1', 'One', '', NULL, NULL, NULL, ''",
                    "22, 't1', 'Two', '', NULL, NULL, NULL, ''", "T1");
}

TEST_F(StandingRulesRepositoryTest, AShelfOrLotMayBeNamedAsOneElsewhereOrHaveNoName)
{
    add("rack", "21, 'B', 1");
    add("shelf", "21, 21, '2', 0, NULL, NULL"); // A2 is there
    EXPECT_THAT(of("shelf", {21}), IsEmpty());
    add("variety", "21, 'Pea', 'PE', NULL, '', '', 0");
    add("seed_lot", "21, 1, 'L1', '', NULL, NULL, NULL, NULL, '', 0");
    add("seed_lot", "22, 21, 'L1', '', NULL, NULL, NULL, NULL, '', 0");
    add("seed_lot", "23, 1, '', '', NULL, NULL, NULL, NULL, '', 0");
    add("seed_lot", "24, 1, '', '', NULL, NULL, NULL, NULL, '', 0");
    EXPECT_THAT(of("seed_lot", {21, 22, 23, 24}), IsEmpty());
}

TEST_F(StandingRulesRepositoryTest, PlacesAndPiecesHaveTheirOwnNumbers)
{
    EXPECT_THAT(of("place", {1, 2}), IsEmpty());
    add("place", "3, 1, 3");
    EXPECT_THAT(of("place", {3}), ElementsAre(broken(RuleReason::NumberTaken, {"A2", "3"})));
    add("piece", "2, 1, 8, NULL, NULL, ''");
    EXPECT_THAT(of("piece", {1, 2}), IsEmpty());
    set("piece SET number = 7 WHERE id = 2");
    EXPECT_THAT(of("piece", {2}), ElementsAre(broken(RuleReason::NumberTaken, {"Mesh", "7"})));
    // Other shelves and media count for themselves.
    add("shelf", "2, 1, '3', 1, NULL, NULL");
    add("medium", "2, 'Felt', 'mat', 0, 1, NULL, NULL, NULL, 1, '', '', 0");
    set("place SET shelf_id = 2 WHERE id = 3");
    set("piece SET medium_id = 2 WHERE id = 2");
    EXPECT_THAT(among({{"place", {3}}, {"piece", {2}}}), IsEmpty());
}

TEST_F(StandingRulesRepositoryTest, AMarkerGivenAwaySinceDoesNotComeBack)
{
    add("medium", "9, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0"); // the mesh's
    EXPECT_THAT(among({{"medium", {1}}, {"step", {5}}}),
                ElementsAre(broken(RuleReason::MarkerTaken, {"Mesh", "Felt"})));
    EXPECT_THAT(among({{"medium", {1}}, {"step", {10}}}), IsEmpty()) << "it had it before";
    for (int more = 2; more <= kMarkers; ++more) { // one medium more than markers
        const std::string id = std::to_string(100 + more);
        add("medium", id + ", 'M" + id + "', 'mat', 0, 0, NULL, NULL, NULL, " +
                          std::to_string(more - 1) + ", '', '', 0");
    }
    ASSERT_EQ(database.scalar("SELECT count(*) FROM medium"), kMarkers + 1);
    EXPECT_THAT(among({{"medium", {1}}, {"step", {5}}}), IsEmpty()) << "some have to share";
}

TEST_F(StandingRulesRepositoryTest, AnItemHasOnePriceADay)
{
    add("price", "1, 'water', NULL, '2026-01-01', 100");
    add("price", "2, 'water', NULL, '2026-02-01', 120");
    add("price", "3, 'waste', NULL, '2026-01-01', 100");
    add("price", "4, 'medium', 1, '2026-01-01', 100");
    add("medium", "2, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 1, '', '', 0");
    add("price", "5, 'medium', 2, '2026-01-01', 100");
    EXPECT_THAT(of("price", {1, 2, 3, 4, 5}), IsEmpty());
    set("price SET from_date = '2026-01-01' WHERE id = 2");
    EXPECT_THAT(of("price", {2}), ElementsAre(broken(RuleReason::PriceTwice, {"2026-01-01"})));
    set("price SET medium_id = 1 WHERE id = 5");
    EXPECT_THAT(of("price", {5}), ElementsAre(broken(RuleReason::PriceTwice, {"2026-01-01"})));
}

TEST_F(StandingRulesRepositoryTest, ATrayGrowsUntilItsLastCut)
{
    tray(11, "growing");
    add("harvest", "1, 11, 1, '2026-03-09', 480, 200000, 0, ''");
    EXPECT_THAT(of("harvest", {1}), IsEmpty()) << "it is cut again later";
    set("harvest SET is_last = 1");
    EXPECT_THAT(of("harvest", {1}), ElementsAre(broken(RuleReason::GrowsAfterLastCut, {"CR11"})));
    set("tray SET state = 'harvested', ended_on = '2026-03-09'");
    EXPECT_THAT(of("harvest", {1}), IsEmpty());
    set("harvest SET is_last = 0");
    EXPECT_THAT(of("harvest", {1}), ElementsAre(broken(RuleReason::NoLastCut, {"CR11"})));
}

TEST_F(StandingRulesRepositoryTest, StagesBeginInTheirOrder)
{
    tray(11, "growing");
    const auto stage = [&](int position, const std::string& started) {
        add("tray_stage", std::to_string(position + 1) + ", 11, " + std::to_string(position) +
                              ", 'light', '2026-03-01', 480, 1440, 0, " + started +
                              ", '', 0, 'none', NULL, 'plain'");
    };
    stage(0, "'2026-03-01', 480");
    stage(1, "'2026-03-03', 480");
    stage(2, "NULL, NULL");
    EXPECT_THAT(of("tray_stage", {1, 2, 3}), IsEmpty());
    set("tray_stage SET started_minute = 479, started_on = '2026-03-01' WHERE id = 2");
    const auto early = ElementsAre(broken(RuleReason::StagesOutOfOrder, {"CR11"}));
    EXPECT_THAT(of("tray_stage", {1}), early) << "a minute before the one before it";
    set("tray_stage SET started_minute = 480 WHERE id = 2"); // both at once: one was skipped
    EXPECT_THAT(of("tray_stage", {2}), IsEmpty());
    set("tray_stage SET started_on = NULL, started_minute = NULL WHERE id = 1");
    EXPECT_THAT(of("tray_stage", {2}), early) << "the first has not begun";
}

TEST_F(StandingRulesRepositoryTest, ARoundIsTickedOrLookedAtOnce)
{
    tray(11, "growing");
    const auto watering = [&](int id, const char* slot) {
        add("watering",
            std::to_string(id) + ", 11, '2026-03-02', '" + slot + "', 480, 'mist', 'plain', NULL");
    };
    const auto twice = broken(RuleReason::TickedTwice, {"CR11", "2026-03-02"});
    watering(1, "morning");
    watering(2, "evening");
    EXPECT_THAT(of("watering", {1, 2}), IsEmpty());
    watering(3, "morning");
    EXPECT_THAT(of("watering", {1}), ElementsAre(twice));
    add("watering_between", "1, 3"); // no tick after all
    EXPECT_THAT(of("watering", {1, 3}), IsEmpty());
    add("watering_look", "1, 11, '2026-03-02', 'morning', 480");
    EXPECT_THAT(of("watering", {1}), ElementsAre(twice));
    EXPECT_THAT(of("watering", {3}), IsEmpty()) << "as needed, after the look";
    EXPECT_THAT(of("watering_look", {1}), ElementsAre(twice));
    database.execute("DELETE FROM watering WHERE id = 1");
    EXPECT_THAT(of("watering_look", {1}), IsEmpty());
    add("watering_look", "2, 11, '2026-03-02', 'morning', 500");
    EXPECT_THAT(of("watering_look", {2}), ElementsAre(twice));
    set("watering_look SET slot = 'evening' WHERE id = 2");
    EXPECT_THAT(of("watering_look", {1}), IsEmpty());
    EXPECT_THAT(of("watering_look", {2}), ElementsAre(twice)) << "the evening's tick";
}

TEST_F(StandingRulesRepositoryTest, ATastingIsFinalOnceItIsClosed)
{
    add("panel", "1, NULL, 'Cress', '2026-03-09', 'hedonic', 5, NULL, ''");
    add("panel_sample", "1, 1, 0, 1");
    add("panel_attribute", "1, 1, 0, 'liking'");
    add("taster", "1, 1, 0, 'Ada'");
    add("serving", "1, 1, 1, 1, 1, '123'");
    add("score", "1, 1, 1, 7");
    EXPECT_THAT(of("score", {1}), IsEmpty());
    // What an undo would open again was closed when it was looked at.
    EXPECT_THAT(among({{"panel that was closed", {1}}}),
                ElementsAre(broken(RuleReason::TastingStaysClosed, {"Cress"})));
    set("panel SET closed_on = '2026-03-09'");
    EXPECT_THAT(of("panel", {1}), IsEmpty());
    EXPECT_THAT(of("score", {1}), ElementsAre(broken(RuleReason::TastingIsFinal, {"Cress"})));
    EXPECT_THAT(among({{"score", {1}}, {"panel", {1}}}), IsEmpty())
        << "it comes back whole, with its scores";
}

TEST_F(StandingRulesRepositoryTest, AddsTheOwnersOfWhatIsThere)
{
    onPiece(11, "");
    add("stay", "1, 11, 1, '2026-03-01', 480, NULL, NULL");
    TouchedRows touched{{"stay", {1, 99}}};
    rules.addOwners(touched);
    EXPECT_EQ(touched, (TouchedRows{{"stay", {1, 99}}, {"tray", {11}}, {"piece", {1}}}));
    TouchedRows none{{"harvest", {}}};
    rules.addOwners(none);
    EXPECT_EQ(none, (TouchedRows{{"harvest", {}}}));
    EXPECT_THAT(rules.brokenAmong({}), IsEmpty());
}

} // namespace
} // namespace plumule
