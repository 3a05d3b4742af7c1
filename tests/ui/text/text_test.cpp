#include "ui/text/text.h"

#include "core/journal/ledger/intention.h"
#include "core/storage/history.h"
#include "tests/support/enumerators.h"
#include "tests/ui/text/sentence_check.h"

#include <QSet>
#include <gtest/gtest.h>

#include <cstdio>

namespace plumule::ui {
namespace {

TEST(HistorySentence, StandsForEveryIntention)
{
    QSet<QString> sentences;
    for (const auto& [intention, name] : enumeratorsOf<Intention>()) {
        HistoryEntry entry;
        entry.intention = toText(intention);
        entry.subject = "RD029";
        EXPECT_FALSE(entry.intention.empty()) << name << " has no key";
        Intention read{};
        EXPECT_TRUE(fromText(entry.intention, read) && read == intention) << name;
        const QString text = sentence(entry, UnitSystem::Metric);
        std::printf("%-32s %s\n", name.c_str(), qPrintable(text));
        EXPECT_EQ(blemish(text), "") << name << ": " << text.toStdString();
        EXPECT_TRUE(text.contains("RD029")) << text.toStdString();
        EXPECT_EQ(sentences.contains(text), intention == Intention::TickAllWaterings) << name;
        sentences.insert(text);
    }
}

TEST(HistorySentence, CountsManyTraysAndWordsWhatIsKeptByItsKey)
{
    HistoryEntry entry;
    entry.intention = "watering.tick_all";
    entry.subject = "5";
    EXPECT_EQ(sentence(entry, UnitSystem::Metric), "Watered 5 trays.");
    entry.intention = "watering.change_recipe";
    entry.subject = "ph_set";
    EXPECT_EQ(sentence(entry, UnitSystem::Metric),
              "Changed the recipe of " + nameOf(WaterKind::PhSet) + '.');
}

TEST(HistorySentence, NamesPlaceHeightAndWeight)
{
    const auto said = [](Intention intention, std::vector<std::string> details,
                         UnitSystem units = UnitSystem::Metric) {
        HistoryEntry entry;
        entry.intention = toText(intention);
        entry.subject = "BR003";
        entry.details = std::move(details);
        return sentence(entry, units).toStdString();
    };
    EXPECT_EQ(said(Intention::MoveTray, {"B2", "4"}), "Moved BR003 to B2, place 4.");
    EXPECT_EQ(said(Intention::MoveTray, {""}), "Took BR003 off the racks.");
    EXPECT_EQ(said(Intention::MoveTray, {}), "Moved BR003 to another place.");
    EXPECT_EQ(said(Intention::MoveTrays, {"B2", "4", ""}),
              "Moved BR003 to B2 place 4, off the racks.");
    EXPECT_EQ(said(Intention::MoveTrays, {}), "Moved BR003 to other places.");
    EXPECT_EQ(said(Intention::SwapTrays, {"BR003", "RD001"}),
              "Swapped the places of BR003 and RD001.");
    EXPECT_EQ(said(Intention::SwapTrays, {}), "Swapped the places of BR003.");
    EXPECT_EQ(said(Intention::TakeTraysOff, {""}), "Took BR003 off the racks.");
    EXPECT_EQ(said(Intention::NoteHeight, {"38000"}), "Noted a height of BR003: 38 mm.");
    EXPECT_EQ(said(Intention::NoteHeight, {"38100"}, UnitSystem::UsCustomary),
              "Noted a height of BR003: 1.50 in.");
    EXPECT_EQ(said(Intention::RecordHarvest, {"286500"}), "Weighed the harvest of BR003: 286.5 g.");
    EXPECT_EQ(said(Intention::CorrectHarvest, {"286500", "2865000"}),
              "Corrected a weight of BR003 from 2865.0 g to 286.5 g.");
    EXPECT_EQ(said(Intention::DiscardTray, {"mould"}), "Discarded BR003: mould.");
}

TEST(HistorySentence, TellsWhatAnotherVersionDidAsWellAsItCan)
{
    HistoryEntry entry;
    entry.intention = "nothing.of_the_kind";
    entry.subject = "RD029";
    EXPECT_EQ(sentence(entry, UnitSystem::Metric), "Changed RD029.");
}

TEST(HistorySentence, LeavesWhatAGrowerWroteAsItStands)
{
    HistoryEntry entry;
    entry.intention = "tray.sow";
    entry.subject = "RD%1 50%";
    EXPECT_EQ(sentence(entry, UnitSystem::Metric), "Sowed RD%1 50%.");
}

} // namespace
} // namespace plumule::ui
