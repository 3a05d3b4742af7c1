#include "core/storage/id_list.h"
#include "core/tray/tray_repository.h"

#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"
#include "tests/core/storage/store_fixture.h"
#include "tests/core/tray/tray_samples.h"

namespace plumule {
namespace {

const Date kToday = date(2026, 3, 2);

class TrayRepositoryTest : public StoreTest
{
protected:
    TrayRepositoryTest()
    {
        Protocol protocol = broccoli();
        VarietyRepository(database).insert(protocol.variety);
        variety = protocol.variety.id;
        mat = inertMat();
        mat.id = {};
        MediumRepository(database).insert(mat);
        const Rack rack = RoomRepository(database).addRack("A", 1, 3);
        const auto shelf = RoomRepository(database).shelves(rack.id).front();
        places = RoomRepository(database).places(shelf.id);
    }

    Tray storeTrayCalled(const std::string& code, Date sown)
    {
        Tray tray;
        tray.code = code;
        tray.variety = variety;
        tray.medium = mat.id;
        tray.sownOn = sown;
        tray.sownMinute = 480;
        trays.insert(tray);
        for (TrayStage& stage : stagesFor(broccoli(), mat, {sown, 480}, FirstStage::AfterSoak)) {
            TrayStage stored = stage;
            stored.tray = tray.id;
            trays.insert(stored);
        }
        return tray;
    }

    Stay stand(const Tray& tray, std::size_t place, Date from)
    {
        Stay stay{{}, tray.id, places[place].id, from, 480, std::nullopt, std::nullopt};
        trays.insert(stay);
        return stay;
    }

    static std::vector<std::string> codes(const std::vector<TrayRecord>& records)
    {
        std::vector<std::string> list;
        for (const TrayRecord& record : records) {
            list.push_back(record.tray.code);
        }
        return list;
    }

    using Codes = std::vector<std::string>;
    TrayRepository trays{database};
    VarietyId variety;
    Medium mat;
    std::vector<Place> places;
};

TEST_F(TrayRepositoryTest, KeepsATrayExactly)
{
    Tray tray = storeTrayCalled("BR001", kToday);
    EXPECT_EQ(trays.find(tray.id), tray);
    tray.seed = grams(25);
    tray.block = 3;
    tray.state = TrayState::Discarded;
    tray.endedOn = kToday + 4;
    tray.endedMinute = 600;
    tray.discardReason = "mould";
    tray.setAsideReason = "dried out";
    tray.sownBy = "J";
    trays.update(tray);
    EXPECT_EQ(trays.find(tray.id), tray);
    EXPECT_FALSE(trays.find(TrayId{99}));
}

TEST_F(TrayRepositoryTest, KeepsItsStagesInOrder)
{
    const Tray tray = storeTrayCalled("BR001", kToday);
    auto stages = trays.stages(tray.id);
    ASSERT_EQ(stages.size(), 3u);
    EXPECT_EQ(stages[2].amount, millilitres(118));
    EXPECT_EQ(stages[2].water, WaterKind::Nutrient);
    stages[1].startedOn = kToday + 3;
    stages[1].startedMinute = 500;
    stages[1].delayMinutes = 60;
    trays.update(stages[1]);
    EXPECT_EQ(trays.stages(tray.id), stages);
}

TEST_F(TrayRepositoryTest, FindsACodeWhateverItsLetterCase)
{
    const Tray tray = storeTrayCalled("BR001", kToday);
    EXPECT_EQ(trays.findByCode("BR001")->id, tray.id);
    EXPECT_EQ(trays.findByCode("  br001 ")->id, tray.id);
    EXPECT_FALSE(trays.findByCode("BR00"));
    EXPECT_FALSE(trays.findByCode(""));
}

TEST_F(TrayRepositoryTest, TheHighestNumberIsCountedWhateverTheLettersCase)
{
    EXPECT_EQ(trays.highestNumber("BR"), 0);
    storeTrayCalled("BR009", kToday);
    storeTrayCalled("br1002", kToday);
    storeTrayCalled("BR0700", kToday - 1);
    storeTrayCalled("BR123456789", kToday); // no number that was counted up to
    storeTrayCalled("BRX2003", kToday);
    storeTrayCalled("RD2001", kToday);
    storeTrayCalled("BR", kToday);
    EXPECT_EQ(trays.highestNumber("BR"), 1002);
    EXPECT_EQ(trays.highestNumber("rd"), 2001);
    EXPECT_EQ(trays.highestNumber("XX"), 0);
    EXPECT_EQ(trays.codes().size(), 7U);
}

// Whatever the pages' size, together they are the list.
TEST_F(TrayRepositoryTest, PagesGoOnWhereTheLastOneEnded)
{
    for (int i = 0; i < 7; ++i) {
        storeTrayCalled("BR00" + std::to_string(i), kToday - i / 3);
    }
    Tray ended = storeTrayCalled("XX003", kToday - 1);
    trays.end(ended, TrayState::Discarded, {kToday, 600});
    for (const auto& state : {std::optional<TrayState>(), std::optional(TrayState::Growing),
                              std::optional(TrayState::Discarded)}) {
        TrayFilter filter;
        filter.state = state;
        const std::vector<TrayId> whole = idsOf(trays.records(filter));
        EXPECT_EQ(trays.ids(filter, {}), whole);
        EXPECT_EQ(trays.count(filter), static_cast<int>(whole.size()));
        for (int rows = 1; rows <= 9; ++rows) {
            std::vector<TrayId> read;
            TrayPage page{std::nullopt, rows};
            for (auto ids = trays.ids(filter, page); !ids.empty(); ids = trays.ids(filter, page)) {
                EXPECT_LE(static_cast<int>(ids.size()), rows);
                read.insert(read.end(), ids.begin(), ids.end());
                const Tray last = trays.find(ids.back()).value();
                page.after = TrayListKey{last.sownOn, last.code};
            }
            EXPECT_EQ(read, whole) << rows;
        }
    }
}

TEST_F(TrayRepositoryTest, ARecordHasItsNamesStagesAndPlace)
{
    SeedLot lot;
    lot.variety = variety;
    lot.lotNumber = "L-7";
    VarietyRepository(database).insert(lot);
    Trial trial;
    trial.code = "T3";
    trial.name = "Mats";
    TrialRepository(database).insert(trial);
    Piece piece;
    piece.medium = mat.id;
    piece.number = 4;
    MediumRepository(database).insert(piece);
    Tray tray = storeTrayCalled("BR001", kToday);
    tray.seedLot = lot.id;
    tray.trial = trial.id;
    tray.piece = piece.id;
    trays.update(tray);
    stand(tray, 1, kToday);
    const TrayRecord record = trays.record(tray.id).value();
    EXPECT_EQ(record.tray, tray);
    EXPECT_EQ(record.stages, trays.stages(tray.id));
    EXPECT_EQ(record.place, places[1].id);
    EXPECT_EQ(record.variety, "Broccoli");
    EXPECT_EQ(record.medium, mat);
    EXPECT_EQ(record.pieceNumber, 4);
    EXPECT_EQ(record.seedLot, "L-7");
    EXPECT_EQ(record.trialCode, "T3");
    EXPECT_EQ(record.trialName, "Mats");
    EXPECT_FALSE(trays.record(TrayId{99}));
}

TEST_F(TrayRepositoryTest, RecordsAreRestrictedByEveryFieldOfTheFilter)
{
    storeTrayCalled("BR001", kToday - 2);
    storeTrayCalled("BR002", kToday - 1);
    Tray ended = storeTrayCalled("XX003", kToday);
    trays.end(ended, TrayState::Harvested, {kToday, 600});
    EXPECT_EQ(codes(trays.records()), (Codes{"XX003", "BR002", "BR001"})) << "newest first";
    TrayFilter filter;
    filter.state = TrayState::Growing;
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR002", "BR001"}));
    filter.sownFrom = kToday - 1;
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR002"}));
    filter = {};
    filter.sownTo = kToday - 2;
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR001"}));
    filter = {};
    filter.text = " xx0";
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"XX003"}));
    filter.text = "BROCC";
    EXPECT_EQ(trays.records(filter).size(), 3u);
    filter.text = "100%_";
    EXPECT_TRUE(trays.records(filter).empty());
    filter = {};
    filter.variety = variety;
    filter.medium = mat.id;
    EXPECT_EQ(trays.records(filter).size(), 3u);
    filter.medium = MediumId{99};
    EXPECT_TRUE(trays.records(filter).empty());
    filter = {};
    filter.trial = TrialId{1};
    EXPECT_TRUE(trays.records(filter).empty());
}

TEST_F(TrayRepositoryTest, EndingATrayFreesItsPlaceAndReopeningTakesItBack)
{
    Tray tray = storeTrayCalled("BR001", kToday);
    stand(tray, 0, kToday);
    trays.end(tray, TrayState::Harvested, {kToday + 12, 480});
    EXPECT_FALSE(trays.trayAt(places[0].id));
    EXPECT_TRUE(trays.growing().empty());
    EXPECT_EQ(trays.record(tray.id)->place, places[0].id) << "where it last stood";
    trays.reopen(tray);
    EXPECT_EQ(trays.trayAt(places[0].id), tray.id);
    EXPECT_EQ(trays.find(tray.id)->state, TrayState::Growing);
    EXPECT_FALSE(trays.find(tray.id)->endedOn);
}

TEST_F(TrayRepositoryTest, AReopenedTrayStandsNowhereWhereItsPlaceWasTaken)
{
    Tray tray = storeTrayCalled("BR001", kToday);
    stand(tray, 0, kToday);
    trays.end(tray, TrayState::Harvested, {kToday + 12, 480});
    const Tray other = storeTrayCalled("BR002", kToday);
    stand(other, 0, kToday + 12);
    trays.reopen(tray);
    EXPECT_EQ(trays.trayAt(places[0].id), other.id);
    EXPECT_FALSE(trays.openStay(tray.id));
}

TEST_F(TrayRepositoryTest, APastMomentShowsWhereTraysStoodThen)
{
    Tray moved = storeTrayCalled("BR001", kToday - 10);
    stand(moved, 0, kToday - 10);
    trays.closeStay(moved.id, {kToday - 5, 480});
    stand(moved, 1, kToday - 5);
    Tray ended = storeTrayCalled("BR002", kToday - 10);
    stand(ended, 2, kToday - 10);
    trays.end(ended, TrayState::Discarded, {kToday - 3, 480});
    const auto placeIn = [&](const std::vector<TrayRecord>& records, TrayId tray) {
        for (const TrayRecord& record : records) {
            if (record.tray.id == tray) {
                return record.place;
            }
        }
        ADD_FAILURE() << "not among the records";
        return std::optional<PlaceId>();
    };
    const auto then = trays.growingAt({kToday - 7, 480});
    EXPECT_EQ(placeIn(then, moved.id), places[0].id);
    EXPECT_EQ(placeIn(then, ended.id), places[2].id);
    const auto now = trays.growingAt({kToday, 480});
    ASSERT_EQ(now.size(), 1u);
    EXPECT_EQ(placeIn(now, moved.id), places[1].id);
    EXPECT_EQ(placeIn(trays.growingAt({kToday - 3, 480}), ended.id), places[2].id);
    trays.closeStay(moved.id, {kToday, 470});
    EXPECT_FALSE(placeIn(trays.growingAt({kToday, 480}), moved.id)) << "off the racks";
}

TEST_F(TrayRepositoryTest, LoadsManyTraysDiariesAtOnce)
{
    const Tray a = storeTrayCalled("BR001", kToday);
    const Tray b = storeTrayCalled("BR002", kToday);
    const Tray bare = storeTrayCalled("BR003", kToday);
    Height later{{}, a.id, kToday + 3, 480, millimetres(30), ReadFrom::Surface};
    Height earlier{{}, a.id, kToday + 2, 480, millimetres(20), ReadFrom::Rim};
    Height other{{}, b.id, kToday + 2, 480, millimetres(10), ReadFrom::Surface};
    for (Height* height : {&later, &earlier, &other}) {
        trays.insert(*height);
    }
    TrayNote note{{}, b.id, kToday, 480, "even"};
    trays.insert(note);
    Photo photo{{}, a.id, kToday, 480, "a.jpg", "day 1"};
    trays.insert(photo);
    stand(b, 0, kToday);
    const std::vector<TrayId> all{a.id, b.id, bare.id};
    const auto heights = trays.heights(all);
    EXPECT_EQ(heights.at(a.id), (std::vector{earlier, later}));
    EXPECT_EQ(heights.at(b.id), std::vector{other});
    EXPECT_EQ(heights.count(bare.id), 0u);
    EXPECT_EQ(trays.notes(all).at(b.id), std::vector{note});
    EXPECT_EQ(trays.photos(all).at(a.id), std::vector{photo});
    EXPECT_EQ(trays.stays(all).size(), 1u);
    EXPECT_TRUE(trays.heights(std::vector<TrayId>{}).empty());
    EXPECT_EQ(trays.heights(a.id), heights.at(a.id));
}

TEST(TrayIdsTest, IdsAreWrittenAsAJsonList)
{
    EXPECT_EQ(idList(std::vector<TrayId>{}), "[]");
    EXPECT_EQ(idList(std::vector<TrayId>{{7}, {1099511627777}}), "[7,1099511627777]");
}

TEST_F(TrayRepositoryTest, TheTextIsSoughtInNotesAndReasonsToo)
{
    Tray discarded = storeTrayCalled("BR001", kToday - 2);
    trays.end(discarded, TrayState::Discarded, {kToday, 600});
    discarded.discardReason = "Mould on the stems";
    discarded.state = TrayState::Discarded;
    trays.update(discarded);
    const Tray noted = storeTrayCalled("BR002", kToday - 1);
    TrayNote note;
    note.tray = noted.id;
    note.on = kToday;
    note.text = "leaning, no mould";
    trays.insert(note);
    TrayFilter filter;
    filter.text = "MOULD";
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR002", "BR001"}));
    filter.text = "leaning";
    EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR002"}));
    filter.state = TrayState::Discarded;
    EXPECT_TRUE(trays.records(filter).empty()) << "both hold or it is not shown";
}

TEST_F(TrayRepositoryTest, ASearchTakesEachSignForItself)
{
    const Tray noted = storeTrayCalled("BR001", kToday - 2);
    storeTrayCalled("BR002", kToday - 1);
    TrayNote note;
    note.tray = noted.id;
    note.on = kToday;
    note.text = "100% wet_through\\gone";
    trays.insert(note);
    TrayFilter filter;
    for (const char* found : {"100%", "0% W", "wet_through", "H\\G", "\\"}) {
        filter.text = found;
        EXPECT_EQ(codes(trays.records(filter)), (Codes{"BR001"})) << found;
        EXPECT_EQ(trays.count(filter), 1) << found;
    }
    for (const char* sought : {"1%wet", "wet through", "BR%1", "BR_01", "\\\\"}) {
        filter.text = sought;
        EXPECT_TRUE(trays.records(filter).empty()) << sought;
    }
    filter.text = std::string(1'000'000, '%');
    EXPECT_TRUE(trays.records(filter).empty());
    filter.text.resize(20'000);
    EXPECT_TRUE(trays.records(filter).empty());
}

} // namespace
} // namespace plumule
