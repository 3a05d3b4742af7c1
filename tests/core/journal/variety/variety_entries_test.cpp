#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/variety/variety_reason.h"

namespace plumule {
namespace {

class VarietyEntriesTest : public JournalTest
{
protected:
    static Protocol newProtocol()
    {
        Protocol protocol;
        protocol.variety.name = " Purslane ";
        protocol.variety.codePrefix = "pu";
        protocol.variety.seedPerTray = grams(9);
        ProtocolStage blackout;
        blackout.stage = Stage::Blackout;
        blackout.lengthMinutes = 3 * kMinutesPerDay;
        blackout.wateringsPerDay = 2;
        blackout.method = WateringMethod::Mist;
        ProtocolStage light = blackout;
        light.stage = Stage::Light;
        light.method = WateringMethod::Below;
        light.amount = millilitres(118);
        protocol.stages = {blackout, light};
        return protocol;
    }

    SeedLot newLot(const std::string& variety, const std::string& number)
    {
        SeedLot lot;
        lot.variety = varietyNamed(variety);
        lot.lotNumber = number;
        lot.bought = grams(1000);
        lot.price = money(21.40);
        lot.boughtOn = date(2026, 2, 1);
        return lot;
    }

    void sow(const SeedLot& lot, int count)
    {
        SowingDraft draft;
        draft.variety = lot.variety;
        draft.seedLot = lot.id;
        draft.medium = mediumNamed("Coir mix");
        draft.count = count;
        draft.at = clock.now();
        ASSERT_TRUE(journal->trays().sow(draft));
    }
};

TEST_F(VarietyEntriesTest, ANewVarietyIsStoredWithItsStages)
{
    expectUndoable([&] { return journal->varieties().save(newProtocol()); });
    const Protocol stored = journal->varieties().protocol(varietyNamed("Purslane")).value();
    EXPECT_EQ(stored.variety.codePrefix, "PU");
    ASSERT_EQ(stored.stages.size(), 2U);
    EXPECT_EQ(stored.stages[1].amount, millilitres(118));
    EXPECT_EQ(journal->nextUndo()->intention, "variety.add");
    EXPECT_EQ(journal->nextUndo()->subject, "Purslane");
}

TEST_F(VarietyEntriesTest, AProtocolIsChanged)
{
    Protocol broccoli = journal->varieties().protocol(varietyNamed("Broccoli")).value();
    broccoli.variety.note = "darker leaves";
    broccoli.stages.erase(broccoli.stages.begin());
    broccoli.stages.back().lengthMinutes += kMinutesPerDay;
    expectUndoable([&] { return journal->varieties().save(broccoli); });
    const Protocol stored = journal->varieties().protocol(broccoli.variety.id).value();
    EXPECT_EQ(stored.variety.note, "darker leaves");
    ASSERT_EQ(stored.stages.size(), broccoli.stages.size());
    EXPECT_EQ(stored.stages.back().lengthMinutes, 9 * kMinutesPerDay);
    EXPECT_EQ(journal->nextUndo()->intention, "variety.change");
}

TEST_F(VarietyEntriesTest, RefusesAVarietyThatIsNotSound)
{
    Protocol protocol = newProtocol();
    protocol.variety.name = "BROCCOLI";
    expectRefused(ErrorKind::Duplicate, VarietyReason::NameTaken,
                  [&] { return journal->varieties().save(protocol); });
    protocol.variety.name = "";
    expectRefused(ErrorKind::Missing, VarietyReason::NameMissing,
                  [&] { return journal->varieties().save(protocol); });
    protocol = newProtocol();
    std::swap(protocol.stages[0], protocol.stages[1]);
    expectRefused(ErrorKind::Invalid, VarietyReason::StageOrder,
                  [&] { return journal->varieties().save(protocol); });
    protocol = newProtocol();
    protocol.variety.id = {99};
    expectRefused(ErrorKind::NotFound, VarietyReason::Unknown,
                  [&] { return journal->varieties().save(protocol); });
    EXPECT_FALSE(journal->varieties().protocol({99}));
}

TEST_F(VarietyEntriesTest, ARetiredVarietyIsListedOnlyWhenAskedFor)
{
    Protocol kale = journal->varieties().protocol(varietyNamed("Kale")).value();
    const auto before = journal->varieties().all()->size();
    kale.variety.isRetired = true;
    ASSERT_TRUE(journal->varieties().save(kale));
    EXPECT_EQ(journal->varieties().all()->size(), before - 1);
    EXPECT_EQ(journal->varieties().all(Listed::All)->size(), before);
}

TEST_F(VarietyEntriesTest, RemovesAVarietyThatNothingHangsOn)
{
    const VarietyId dill = varietyNamed("Dill");
    expectUndoable([&] { return journal->varieties().remove(dill); });
    EXPECT_FALSE(journal->varieties().protocol(dill));
    ASSERT_TRUE(journal->varieties().saveLot(newLot("Kale", "K-1")));
    expectRefused(ErrorKind::InUse, VarietyReason::InUse,
                  [&] { return journal->varieties().remove(varietyNamed("Kale")); });
}

TEST_F(VarietyEntriesTest, ASeedLotIsStoredAndChanged)
{
    expectUndoable([&] { return journal->varieties().saveLot(newLot("Kale", " K-1 ")); });
    auto lot = journal->varieties().lots().value().at(0).lot;
    EXPECT_EQ(lot.lotNumber, "K-1");
    lot.germinationPercent = 92;
    lot.note = "opened";
    expectUndoable([&] { return journal->varieties().saveLot(lot); });
    EXPECT_EQ(journal->varieties().lots(varietyNamed("Kale"))->at(0).lot, lot);
    EXPECT_TRUE(journal->varieties().lots(varietyNamed("Radish"))->empty());
}

TEST_F(VarietyEntriesTest, RefusesALotThatIsNotSound)
{
    SeedLot lot = newLot("Kale", "");
    expectRefused(ErrorKind::Missing, VarietyReason::LotNumberMissing,
                  [&] { return journal->varieties().saveLot(lot); });
    lot.lotNumber = "K-1";
    ASSERT_TRUE(journal->varieties().saveLot(lot));
    lot.lotNumber = "k-1";
    expectRefused(ErrorKind::Duplicate, VarietyReason::LotNumberTaken,
                  [&] { return journal->varieties().saveLot(lot); });
    EXPECT_TRUE(journal->varieties().saveLot(newLot("Radish", "K-1")))
        << "another variety may have that number";
    lot.variety = {99};
    expectRefused(ErrorKind::NotFound, VarietyReason::Unknown,
                  [&] { return journal->varieties().saveLot(lot); });
}

TEST_F(VarietyEntriesTest, WhatIsSownLeavesTheLot)
{
    const SeedLot lot = journal->varieties().saveLot(newLot("Broccoli", "B-1")).value();
    sow(lot, 3);
    const auto stock = journal->varieties().lots(lot.variety)->at(0);
    EXPECT_EQ(stock.sown, grams(75)) << "three trays of 25 g";
    EXPECT_EQ(stock.left, grams(925));
    expectRefused(ErrorKind::InUse, VarietyReason::LotInUse,
                  [&] { return journal->varieties().removeLot(lot.id); });
    SeedLot other = lot;
    other.variety = varietyNamed("Kale");
    expectRefused(ErrorKind::InUse, VarietyReason::LotVarietyFixed,
                  [&] { return journal->varieties().saveLot(other); });
}

TEST_F(VarietyEntriesTest, CountingALotStoresTheDifference)
{
    const SeedLot lot = journal->varieties().saveLot(newLot("Broccoli", "B-1")).value();
    sow(lot, 2);
    expectUndoable([&] { return journal->varieties().countLot(lot.id, grams(940), "spilt"); });
    EXPECT_EQ(journal->varieties().lots(lot.variety)->at(0).left, grams(940));
    const auto again = journal->varieties().countLot(lot.id, grams(945), "found in the jar");
    ASSERT_TRUE(again);
    EXPECT_EQ(again->change, grams(5));
    EXPECT_EQ(again->on, clock.today());
    expectRefused(ErrorKind::Invalid, VarietyReason::LotFound,
                  [&] { return journal->varieties().countLot(lot.id, -grams(1), ""); });
}

TEST_F(VarietyEntriesTest, ALotThatWasNeverWeighedCannotBeCounted)
{
    SeedLot lot = newLot("Broccoli", "B-1");
    lot.bought.reset();
    lot = journal->varieties().saveLot(lot).value();
    expectRefused(ErrorKind::Missing, VarietyReason::LotBoughtUnknown,
                  [&] { return journal->varieties().countLot(lot.id, grams(10), ""); });
    expectRefused(ErrorKind::NotFound, VarietyReason::LotUnknown,
                  [&] { return journal->varieties().countLot({99}, grams(10), ""); });
}

TEST_F(VarietyEntriesTest, AnUnusedLotIsRemovedWithItsCounts)
{
    const SeedLot lot = journal->varieties().saveLot(newLot("Broccoli", "B-1")).value();
    ASSERT_TRUE(journal->varieties().countLot(lot.id, grams(990), ""));
    expectUndoable([&] { return journal->varieties().removeLot(lot.id); });
    EXPECT_TRUE(journal->varieties().lots()->empty());
}

TEST_F(VarietyEntriesTest, ListenersHearWhatChanged)
{
    std::vector<Change> heard;
    const int listener = journal->addListener([&](const auto& changes) { heard = changes; });
    ASSERT_TRUE(journal->varieties().save(newProtocol()));
    EXPECT_EQ(heard.size(), 3U) << "a variety and two stages";
    for (const Change& change : heard) {
        EXPECT_EQ(static_cast<int>(change.about), static_cast<int>(Concept::Variety));
    }
    journal->removeListener(listener);
}

} // namespace
} // namespace plumule
