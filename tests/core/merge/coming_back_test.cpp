#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/merge/merge_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/merge/copies_fixture.h"

#include "core/merge/merge_reason.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::HasSubstr;

class ComingBackTest : public CopiesTest
{
protected:
    // What taking back and doing again lead to, after a copy was brought back.
    void expectOneUndoableAct(const std::string& before)
    {
        const std::string after = dump();
        ASSERT_NE(before, after);
        EXPECT_EQ(journal->nextUndo()->intention, "copy.bring_back");
        ASSERT_TRUE(journal->undo());
        EXPECT_EQ(dump(), before);
        ASSERT_TRUE(journal->redo());
        EXPECT_EQ(dump(), after);
    }
};

TEST_F(ComingBackTest, ACopyDrawsIdsOfItsOwnAndKnowsWhatItIs)
{
    sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    const auto own = laptop->copies().ownCopy().value();
    ASSERT_TRUE(own);
    EXPECT_EQ(own->name, "Rack laptop");
    EXPECT_EQ(own->id.value, 2);
    EXPECT_EQ(journal->copies().ownCopy().value(), std::nullopt);
    EXPECT_EQ(sowIn(*laptop).value >> 40, 2);
    EXPECT_EQ(sowIn(*journal).value >> 40, 1);
    EXPECT_EQ(takeAlong("Tablet")->copies().ownCopy().value()->id.value, 3);
    EXPECT_FALSE(std::filesystem::exists(pathOf("Rack laptop").string() + ".crc"));
}

TEST_F(ComingBackTest, ACopyOfACopyAndACopyWithoutANameAreRefused)
{
    const auto laptop = takeAlong("Rack laptop");
    EXPECT_TRUE(laptop->copies().beginCopy("Phone").error().is(MergeReason::CopyOfACopy));
    EXPECT_TRUE(journal->copies().beginCopy("  ").error().is(MergeReason::NameMissing));
}

TEST_F(ComingBackTest, ACopyThatCouldNotBeWrittenLeavesNothing)
{
    std::ofstream(pathOf("taken")) << "mine";
    const TakenCopy copy = journal->copies().beginCopy("Rack laptop").value();
    EXPECT_TRUE(
        journal->copies().writeCopyTo(copy, pathOf("taken"), {}).error().is(MergeReason::NotTaken));
    EXPECT_EQ(std::filesystem::file_size(pathOf("taken")), 4u);
    journal->copies().giveUpCopy(copy);
    EXPECT_TRUE(journal->copies().copies().value().empty());
}

TEST_F(ComingBackTest, WhatOnlyTheCopyDidComesByItself)
{
    const TrayId tray = sowIn(*journal, freePlaces()[0]);
    const auto laptop = takeAlong("Rack laptop");
    wait(600);
    ASSERT_TRUE(laptop->trays().writeNote(tray, "even", clock.now()));
    ASSERT_TRUE(laptop->trays().moveTo(tray, freePlaces()[3], clock.now()));
    const TrayId sown = sowIn(*laptop, freePlaces()[4]);
    const std::string before = dump();
    const auto brought = bringBack("Rack laptop", here);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 0);
    EXPECT_EQ(brought->notes, 0);
    EXPECT_THAT(notesOf(*journal, tray), HasSubstr("even"));
    EXPECT_EQ(journal->trays().sheet(tray)->stays.size(), 2u);
    EXPECT_EQ(codeOf(sown), "RD002");
    expectOneUndoableAct(before);
}

TEST_F(ComingBackTest, ARowChangedOnBothIsChosenAndTheOtherKept)
{
    const TrayId tray = sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(journal->trays().setAside(tray, "watered twice"));
    ASSERT_TRUE(laptop->trays().setAside(tray, "fell down"));
    const std::string before = dump();
    const auto brought = bringBack("Rack laptop", there);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    EXPECT_EQ(journal->trays().sheet(tray)->record.tray.setAsideReason, "fell down");
    EXPECT_THAT(notesOf(*journal, tray), HasSubstr("watered twice"));
    expectOneUndoableAct(before);
}

TEST_F(ComingBackTest, NothingIsWrittenBeforeAllIsChosen)
{
    const TrayId tray = sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(journal->trays().setAside(tray, "watered twice"));
    ASSERT_TRUE(laptop->trays().setAside(tray, "fell down"));
    const std::string before = dump();
    const auto coming = comeBack("Rack laptop").value();
    const MergePlan plan = coming->plan({}).value();
    EXPECT_EQ(plan.unchosen(), 1);
    EXPECT_TRUE(coming->bringTogether(plan, plainWords, backUpFirst())
                    .error()
                    .is(MergeReason::NotAllChosen));
    EXPECT_EQ(dump(), before);
}

TEST_F(ComingBackTest, WithoutASoundBackupNothingIsWritten)
{
    const TrayId tray = sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(laptop->trays().setAside(tray, "fell down"));
    const std::string before = dump();
    const auto coming = comeBack("Rack laptop").value();
    const BackupMade made = backUpFirst();
    std::ofstream(made.backup.file, std::ios::app) << "rotten";
    EXPECT_TRUE(coming->bringTogether(coming->plan({}).value(), plainWords, made)
                    .error()
                    .is(StorageReason::ChecksumDiffers));
    EXPECT_EQ(dump(), before);
}

TEST_F(ComingBackTest, TwoTraysOnOnePlaceAreChosenBetween)
{
    const auto places = freePlaces();
    const TrayId first = sowIn(*journal, places[0]);
    const TrayId second = sowIn(*journal, places[1]);
    const auto laptop = takeAlong("Rack laptop");
    wait(30);
    ASSERT_TRUE(journal->trays().moveTo(first, places[4], clock.now()));
    ASSERT_TRUE(laptop->trays().moveTo(second, places[4], clock.now()));
    const std::string before = dump();
    const auto brought = bringBack("Rack laptop", there);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    EXPECT_EQ(journal->trays().sheet(second)->spot->place, places[4]);
    EXPECT_EQ(journal->trays().sheet(first)->spot->place, places[0]) << "as in the copy";
    EXPECT_THAT(notesOf(*journal, first), HasSubstr(std::to_string(places[4].value)));
    expectOneUndoableAct(before);
}

TEST_F(ComingBackTest, ANewTrayStaysWhereItsPlaceIsNotChosen)
{
    const auto places = freePlaces();
    const auto laptop = takeAlong("Rack laptop");
    sowIn(*journal, places[2]);
    const TrayId sown = sowIn(*laptop, places[2]);
    const auto brought = bringBack("Rack laptop", here);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    const TraySheet sheet = journal->trays().sheet(sown).value();
    EXPECT_EQ(sheet.spot, std::nullopt);
    EXPECT_THAT(notesOf(*journal, sown), HasSubstr(std::to_string(places[2].value)));
}

TEST_F(ComingBackTest, ACodeThatIsTakenBecomesTheNextFreeOne)
{
    const auto laptop = takeAlong("Rack laptop");
    const TrayId mine = sowIn(*journal);
    const TrayId theirs = sowIn(*laptop);
    const auto brought = bringBack("Rack laptop", here);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(codeOf(mine), "RD001");
    EXPECT_EQ(codeOf(theirs), "RD002");
    ASSERT_EQ(brought->renamed.size(), 1u);
    EXPECT_EQ(brought->renamed[0].from, "RD001");
    EXPECT_EQ(brought->renamed[0].to, "RD002");
    // The copy goes on under the old code, and does not meet the new one.
    ASSERT_TRUE(laptop->trays().discard(theirs, "mould", clock.now()));
    ASSERT_TRUE(bringBack("Rack laptop", there));
    EXPECT_EQ(met, 0);
    EXPECT_EQ(codeOf(theirs), "RD002");
    EXPECT_EQ(journal->trays().sheet(theirs)->record.tray.state, TrayState::Discarded);
}

TEST_F(ComingBackTest, ARoundTickedOnBothIsOneWatering)
{
    const TrayId tray = sowIn(*journal, freePlaces()[0]);
    const auto laptop = takeAlong("Rack laptop");
    wait(kMinutesPerDay);
    ASSERT_TRUE(journal->watering().tick(tray, clock.today(), Slot::Morning));
    wait(20);
    ASSERT_TRUE(laptop->watering().tick(tray, clock.today(), Slot::Morning));
    const auto brought = bringBack("Rack laptop", there);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    const TraySheet sheet = journal->trays().sheet(tray).value();
    ASSERT_EQ(sheet.waterings.size(), 1u);
    EXPECT_EQ(sheet.waterings[0].minute, 7 * 60 + 50);
    EXPECT_EQ(sheet.notes.size(), 1u);
}

TEST_F(ComingBackTest, ACutWeighedOnBothIsOneCut)
{
    const TrayId tray = sowIn(*journal, freePlaces()[0]);
    const auto laptop = takeAlong("Rack laptop");
    wait(9 * kMinutesPerDay);
    ASSERT_TRUE(journal->harvests().record(cutOf(*journal, tray, 300, true)));
    wait(5);
    ASSERT_TRUE(laptop->harvests().record(cutOf(*laptop, tray, 297, true)));
    const std::string before = dump();
    const auto brought = bringBack("Rack laptop", there);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    const TraySheet sheet = journal->trays().sheet(tray).value();
    ASSERT_EQ(sheet.harvests.size(), 1u);
    EXPECT_EQ(sheet.harvests[0].net, grams(257));
    EXPECT_THAT(notesOf(*journal, tray), HasSubstr("260000"));
    expectOneUndoableAct(before);
}

TEST_F(ComingBackTest, VarietiesOfOneNameBecomeOne)
{
    const auto laptop = takeAlong("Rack laptop");
    const auto add = [](Journal& of, double seed) {
        Protocol protocol = of.varieties().protocol(of.varieties().all().value()[0].id).value();
        protocol.variety.id = {};
        protocol.variety.name = "Shiso";
        protocol.variety.codePrefix = "SH";
        protocol.variety.seedPerTray = grams(seed);
        for (auto& stage : protocol.stages) {
            stage.id = {};
        }
        const auto saved = of.varieties().save(protocol);
        EXPECT_TRUE(saved) << told(saved.error());
        return saved->variety.id;
    };
    const VarietyId mine = add(*journal, 9);
    const VarietyId theirs = add(*laptop, 11);
    const auto sown = laptop->trays().sow(sowing(*laptop, theirs, mediumNamed("Coir mix")));
    ASSERT_TRUE(sown) << told(sown.error());
    const std::string before = dump();
    const auto brought = bringBack("Rack laptop", here);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(met, 1);
    EXPECT_EQ(journal->trays().sheet(sown->front())->record.tray.variety, mine);
    EXPECT_THAT(journal->latestEntries(1).value()[0].details.back(), HasSubstr("11000"));
    expectOneUndoableAct(before);
    // The copy still says its own id, also in what it does later.
    const auto more = laptop->trays().sow(sowing(*laptop, theirs, mediumNamed("Coir mix")));
    ASSERT_TRUE(bringBack("Rack laptop", here));
    EXPECT_EQ(met, 0);
    EXPECT_EQ(journal->trays().sheet(more->front())->record.tray.variety, mine);
}

TEST_F(ComingBackTest, BroughtBackAgainItBringsOnlyWhatIsNew)
{
    const TrayId tray = sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(journal->trays().setAside(tray, "watered twice"));
    ASSERT_TRUE(laptop->trays().setAside(tray, "fell down"));
    ASSERT_TRUE(bringBack("Rack laptop", here));
    EXPECT_TRUE(comeBack("Rack laptop").error().is(MergeReason::NothingNew));
    ASSERT_TRUE(laptop->trays().writeNote(tray, "later", clock.now()));
    const auto again = bringBack("Rack laptop", there);
    ASSERT_TRUE(again) << told(again.error());
    EXPECT_EQ(met, 0);
    EXPECT_EQ(again->rows, 1);
    EXPECT_EQ(journal->trays().sheet(tray)->record.tray.setAsideReason, "watered twice");
    // Taken back, it is new again.
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(comeBack("Rack laptop"));
}

TEST_F(ComingBackTest, AnActFromBeforeThatTheCopyTookBackIsTakenBackHere)
{
    const TrayId tray = sowIn(*journal);
    ASSERT_TRUE(journal->trays().setAside(tray, "watered twice"));
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(laptop->undo());
    ASSERT_TRUE(laptop->trays().writeNote(tray, "is fine", clock.now()));
    ASSERT_TRUE(bringBack("Rack laptop", here));
    EXPECT_EQ(met, 0);
    EXPECT_EQ(journal->trays().sheet(tray)->record.tray.setAsideReason, std::nullopt);
}

TEST_F(ComingBackTest, WhatTheCopyDidAndTookBackDoesNotMeet)
{
    const TrayId tray = sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(journal->trays().setAside(tray, "watered twice"));
    ASSERT_TRUE(laptop->trays().setAside(tray, "fell down"));
    ASSERT_TRUE(laptop->undo());
    EXPECT_TRUE(comeBack("Rack laptop").error().is(MergeReason::NothingNew));
}

TEST_F(ComingBackTest, AVarietyRemovedHereComesBackWithWhatWasSownOfIt)
{
    const auto laptop = takeAlong("Rack laptop");
    const VarietyId variety = varietyNamed("Radish");
    ASSERT_TRUE(journal->varieties().remove(variety));
    const TrayId sown =
        laptop->trays().sow(sowing(*laptop, variety, mediumNamed("Coir mix")))->front();
    const auto coming = comeBack("Rack laptop").value();
    const MergePlan keepsOut = planBy(*coming, here);
    EXPECT_TRUE(keepsOut.broken) << "a tray of nothing";
    EXPECT_TRUE(coming->bringTogether(keepsOut, plainWords, backUpFirst())
                    .error()
                    .is(MergeReason::StillBroken));
    ASSERT_TRUE(bringBack("Rack laptop", there));
    EXPECT_EQ(journal->trays().sheet(sown)->record.variety, "Radish");
}

TEST_F(ComingBackTest, PhotographsComeAlongAndKeepApart)
{
    const TrayId tray = sowIn(*journal);
    const auto picture = [&](const std::string& name, const std::string& content) {
        const auto file = folder.path() / name;
        std::ofstream(file, std::ios::binary) << content;
        return file;
    };
    ASSERT_TRUE(journal->trays().attachPhoto(tray, picture("a.jpg", "before"), "", clock.now()));
    const auto laptop = takeAlong("Rack laptop");
    EXPECT_TRUE(std::filesystem::exists(laptop->photoFolder() / "RD001 2026-03-02 1.jpg"));
    ASSERT_TRUE(journal->trays().attachPhoto(tray, picture("b.jpg", "here"), "", clock.now()));
    ASSERT_TRUE(laptop->trays().attachPhoto(tray, picture("c.jpg", "there"), "", clock.now()));
    const auto brought = bringBack("Rack laptop", here);
    ASSERT_TRUE(brought) << told(brought.error());
    EXPECT_EQ(brought->photos, 1);
    EXPECT_EQ(brought->photosMissing, 0);
    std::set<std::string> contents;
    const TraySheet sheet = journal->trays().sheet(tray).value();
    for (const Photo& photo : sheet.photos) {
        std::ifstream file(journal->photoFolder() / photo.fileName, std::ios::binary);
        contents.insert({std::istreambuf_iterator<char>(file), {}});
    }
    EXPECT_EQ(contents, (std::set<std::string>{"before", "here", "there"}));
}

TEST_F(ComingBackTest, AnotherJournalsCopyAndNoCopyAtAllAreRefused)
{
    sowIn(*journal);
    const auto laptop = takeAlong("Rack laptop");
    sowIn(*laptop);
    auto other = Journal::create(pathOf("other"), smallRoom(), clock);
    ASSERT_TRUE(other);
    EXPECT_TRUE(openCopy(pathOf("other")).error().is(MergeReason::NoCopy));
    EXPECT_TRUE((*other)
                    ->copies()
                    .comeBack(openCopy(pathOf("Rack laptop")).value())
                    .error()
                    .is(MergeReason::OfAnother));
    EXPECT_TRUE(openCopy(folder.path() / "none.plumule").error().is(StorageReason::FileMissing));
}

TEST_F(ComingBackTest, AJournalFromABackupThatForgotTheCopyKnowsItsBase)
{
    const TrayId tray = sowIn(*journal);
    const BackupMade made = backUpFirst();
    const auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(laptop->trays().writeNote(tray, "even", clock.now()));
    journal.reset();
    std::filesystem::copy_file(made.backup.file, path(),
                               std::filesystem::copy_options::overwrite_existing);
    journal = std::move(*Journal::open(path(), clock));
    ASSERT_TRUE(journal->copies().copies().value().empty());
    ASSERT_TRUE(bringBack("Rack laptop", here));
    EXPECT_THAT(notesOf(*journal, tray), HasSubstr("even"));
    EXPECT_EQ(takeAlong("Tablet")->copies().ownCopy().value()->id.value, 3);
}

TEST_F(ComingBackTest, ADamagedCopyIsRefused)
{
    const TrayId tray = sowIn(*journal);
    auto laptop = takeAlong("Rack laptop");
    ASSERT_TRUE(laptop->trays().writeNote(tray, "even", clock.now()));
    laptop.reset();
    {
        Database database(pathOf("Rack laptop"), Access::ReadWrite);
        database.execute("UPDATE history SET changeset_crc = changeset_crc + 1 WHERE id = (SELECT "
                         "max(id) FROM history)");
    }
    EXPECT_TRUE(openCopy(pathOf("Rack laptop")).error().is(MergeReason::Faulty));
}

} // namespace
} // namespace plumule
