#include "core/harvest/harvest_repository.h"

#include "core/medium/medium_repository.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Date kMonday = date(2026, 3, 2);

class HarvestRepositoryTest : public StoreTest
{
protected:
    HarvestRepositoryTest()
    {
        Variety radish;
        radish.name = "Radish";
        radish.codePrefix = "RD";
        VarietyRepository(database).insert(radish);
        variety = radish.id;
        coir.name = "Coir mix";
        MediumRepository(database).insert(coir);
        mesh.name = "Steel mesh";
        mesh.isReusable = true;
        MediumRepository(database).insert(mesh);
    }

    Tray storeTrayOn(const std::string& code, const Medium& medium,
                     TrayState state = TrayState::Harvested, Date sown = kMonday - 10)
    {
        Tray tray;
        tray.code = code;
        tray.variety = variety;
        tray.medium = medium.id;
        tray.sownOn = sown;
        tray.sownMinute = 480;
        tray.state = state;
        TrayRepository(database).insert(tray);
        return tray;
    }

    Harvest cut(const Tray& tray, double net, Date on = kMonday, int minute = 540, int number = 1)
    {
        Harvest harvest;
        harvest.tray = tray.id;
        harvest.cut = number;
        harvest.on = on;
        harvest.minute = minute;
        harvest.net = grams(net);
        harvest.note = "a note";
        harvests.insert(harvest);
        return harvest;
    }

    Bowl weigh(const Harvest& harvest, double gross, double tare)
    {
        Bowl bowl{{}, harvest.id, grams(gross), grams(tare)};
        harvests.insert(bowl);
        return bowl;
    }

    HarvestRepository harvests{database};
    VarietyId variety;
    Medium coir;
    Medium mesh;
};

TEST_F(HarvestRepositoryTest, KeepsACutWithItsBowlsAndTakesThemOut)
{
    Harvest harvest = cut(storeTrayOn("RD001", coir), 289.5);
    const Bowl first = weigh(harvest, 200, 42);
    const Bowl second = weigh(harvest, 173.5, 42);
    EXPECT_EQ(harvests.find(harvest.id), harvest);
    EXPECT_THAT(harvests.bowls(harvest.id), ElementsAre(first, second));

    harvest.net = grams(300);
    harvest.isLast = false;
    harvests.update(harvest);
    EXPECT_EQ(harvests.find(harvest.id), harvest);

    harvests.removeBowls(harvest.id);
    EXPECT_THAT(harvests.bowls(harvest.id), IsEmpty());
    EXPECT_EQ(database.scalar("SELECT count(*) FROM bowl"), 0);
}

TEST_F(HarvestRepositoryTest, GivesTheCutsOfManyTraysByTray)
{
    const Tray one = storeTrayOn("RD001", coir);
    const Tray two = storeTrayOn("RD002", coir);
    const Tray none = storeTrayOn("RD003", coir);
    const Tray other = storeTrayOn("RD004", coir);
    const Harvest second = cut(one, 90, kMonday + 9, 540, 2);
    const Harvest first = cut(one, 200);
    const Harvest only = cut(two, 280);
    cut(other, 999);
    const auto byTray = harvests.ofTrays({one.id, two.id, none.id});
    ASSERT_EQ(byTray.size(), 2U);
    EXPECT_THAT(byTray.at(one.id), ElementsAre(first, second));
    EXPECT_THAT(byTray.at(two.id), ElementsAre(only));
    EXPECT_THAT(harvests.ofTray(one.id), ElementsAre(first, second));
    const auto yields = harvests.yieldsOfTrays({one.id, two.id, none.id});
    EXPECT_EQ(yields.size(), 2U);
    EXPECT_EQ(yields.at(one.id), grams(290));
    EXPECT_EQ(yields.at(two.id), grams(280));
    EXPECT_THAT(harvests.ofTrays({}), IsEmpty());
}

TEST_F(HarvestRepositoryTest, GivesTheResiduesOfManyTraysByTray)
{
    const Tray one = storeTrayOn("RD001", coir);
    const Tray two = storeTrayOn("RD002", coir);
    Residue weighed{{}, one.id, kMonday, 560, grams(1140), grams(240), grams(900)};
    Residue typed{{}, one.id, kMonday, 570, std::nullopt, std::nullopt, grams(50)};
    harvests.insert(typed);
    harvests.insert(weighed);
    EXPECT_THAT(harvests.residuesOfTray(one.id), ElementsAre(weighed, typed));
    const auto byTray = harvests.residuesOfTrays({one.id, two.id});
    ASSERT_EQ(byTray.size(), 1U);
    EXPECT_THAT(byTray.at(one.id), ElementsAre(weighed, typed));
}

TEST_F(HarvestRepositoryTest, GivesThePastCutsOfThatNumberNewestTrayFirst)
{
    const Tray twice = storeTrayOn("RD001", coir);
    cut(twice, 200);
    cut(twice, 90, kMonday + 7, 540, 2);
    cut(storeTrayOn("RD002", coir), 280);
    cut(storeTrayOn("RD003", coir, TrayState::Growing), 270);
    cut(storeTrayOn("RD004", mesh), 310);
    cut(storeTrayOn("RD005", coir, TrayState::Discarded), 5);
    Tray aside = storeTrayOn("RD006", coir);
    cut(aside, 10);
    aside.setAsideReason = "lamp out";
    TrayRepository(database).update(aside);
    const auto codes = [&](const Tray& tray, RangeSource from, int number) {
        std::vector<std::string> list;
        for (const PastWeight& each : harvests.pastCuts(tray, from, number)) {
            list.push_back(each.code);
        }
        return list;
    };
    const Tray asked = storeTrayOn("RD007", coir, TrayState::Growing);
    EXPECT_THAT(codes(asked, RangeSource::VarietyOnMedium, 1),
                ElementsAre("RD003", "RD002", "RD001"));
    EXPECT_THAT(codes(twice, RangeSource::VarietyOnMedium, 1), ElementsAre("RD003", "RD002"));
    EXPECT_THAT(codes(asked, RangeSource::VarietyOnMedium, 2), ElementsAre("RD001"));
    EXPECT_THAT(codes(asked, RangeSource::Variety, 1),
                ElementsAre("RD004", "RD003", "RD002", "RD001"));
    EXPECT_THAT(codes(asked, RangeSource::RoomBySeed, 1),
                ElementsAre("RD004", "RD003", "RD002", "RD001"));
    EXPECT_THAT(codes(asked, RangeSource::SameTrial, 1), IsEmpty());
    const PastWeight first = harvests.pastCuts(asked, RangeSource::VarietyOnMedium, 2).front();
    EXPECT_EQ(first.net, grams(90));
    EXPECT_EQ(first.on, kMonday + 7);
    EXPECT_EQ(first.marker, coir.marker);
    EXPECT_EQ(first.variety, variety);
    EXPECT_FALSE(first.seed);
}

TEST_F(HarvestRepositoryTest, GivesThePastResiduesOfAMediumATrayTogether)
{
    const Tray one = storeTrayOn("RD001", coir);
    for (const double net : {900.0, 50.0}) {
        Residue residue{{}, one.id, kMonday, 560, std::nullopt, std::nullopt, grams(net)};
        harvests.insert(residue);
    }
    const Tray asked = storeTrayOn("RD002", coir);
    for (const RangeSource from : {RangeSource::VarietyOnMedium, RangeSource::Medium}) {
        const auto past = harvests.pastResidues(asked, from);
        ASSERT_EQ(past.size(), 1U);
        EXPECT_EQ(past.front().code, "RD001");
        EXPECT_EQ(past.front().net, grams(950));
        EXPECT_THAT(harvests.pastResidues(one, from), IsEmpty());
    }
}

TEST_F(HarvestRepositoryTest, GivesTheCutsOfASpanOldestFirst)
{
    const Tray tray = storeTrayOn("RD001", coir);
    const Harvest late = cut(tray, 3, kMonday + 1, 60, 3);
    const Harvest noon = cut(tray, 2, kMonday, 720, 2);
    const Harvest morning = cut(tray, 1, kMonday, 540, 1);
    EXPECT_THAT(harvests.between(kMonday, kMonday), ElementsAre(morning, noon));
    EXPECT_THAT(harvests.between(kMonday, kMonday + 1), ElementsAre(morning, noon, late));
    EXPECT_THAT(harvests.between(kMonday + 2, kMonday + 9), IsEmpty());
}

TEST_F(HarvestRepositoryTest, GivesTheTaresOfTheLastBowlsNewestFirst)
{
    EXPECT_THAT(harvests.lastTares(3), IsEmpty());
    const Tray tray = storeTrayOn("RD001", coir);
    const Harvest newest = cut(tray, 2, kMonday, 720, 2);
    weigh(newest, 100, 42);
    weigh(newest, 100, 43);
    const Harvest oldest = cut(tray, 1, kMonday, 540, 1);
    weigh(oldest, 100, 38);
    EXPECT_THAT(harvests.lastTares(1), ElementsAre(grams(43)));
    EXPECT_THAT(harvests.lastTares(3), ElementsAre(grams(43), grams(42), grams(38)));
}

TEST_F(HarvestRepositoryTest, NamesTheTraysWhoseResidueIsStillToWeigh)
{
    const Tray old = storeTrayOn("RD001", coir);
    cut(old, 280, kMonday - 20);
    const Tray first = storeTrayOn("RD002", coir);
    cut(first, 280, kMonday, 540);
    const Tray second = storeTrayOn("RD003", coir);
    cut(second, 280, kMonday, 545);
    const Tray weighed = storeTrayOn("RD004", coir);
    cut(weighed, 280, kMonday, 550);
    Residue residue{{}, weighed.id, kMonday, 560, std::nullopt, std::nullopt, grams(900)};
    harvests.insert(residue);
    Harvest again = cut(storeTrayOn("RD005", coir, TrayState::Growing), 100, kMonday, 555);
    again.isLast = false;
    harvests.update(again);
    EXPECT_THAT(harvests.traysWithoutResidue(kMonday - 14, kMonday),
                ElementsAre(second.id, first.id));
}

TEST_F(HarvestRepositoryTest, CountsWhichUseOfItsPieceATrayIs)
{
    Piece piece;
    piece.medium = mesh.id;
    piece.number = 4;
    MediumRepository(database).insert(piece);
    std::vector<Tray> trays;
    for (int use = 1; use <= 3; ++use) {
        Tray tray = storeTrayOn("RD00" + std::to_string(use), mesh, TrayState::Harvested,
                                kMonday - 40 + 12 * use);
        tray.piece = piece.id;
        TrayRepository(database).update(tray);
        trays.push_back(tray);
    }
    EXPECT_EQ(harvests.useOfPiece(trays[0]), 1);
    EXPECT_EQ(harvests.useOfPiece(trays[2]), 3);
    EXPECT_EQ(harvests.useOfPiece(storeTrayOn("RD009", coir)), 0);
}

} // namespace
} // namespace plumule
