#include "ui/text/text.h"

#include "core/journal/ledger/intention.h"
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
        const QString text = sentence(entry);
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
    EXPECT_EQ(sentence(entry), "Watered 5 trays.");
    entry.intention = "watering.change_recipe";
    entry.subject = "ph_set";
    EXPECT_EQ(sentence(entry), "Changed the recipe of " + nameOf(WaterKind::PhSet) + '.');
}

TEST(HistorySentence, TellsWhatAnotherVersionDidAsWellAsItCan)
{
    HistoryEntry entry;
    entry.intention = "nothing.of_the_kind";
    entry.subject = "RD029";
    EXPECT_EQ(sentence(entry), "Changed RD029.");
}

TEST(HistorySentence, LeavesWhatAGrowerWroteAsItStands)
{
    HistoryEntry entry;
    entry.intention = "tray.sow";
    entry.subject = "RD%1 50%";
    EXPECT_EQ(sentence(entry), "Sowed RD%1 50%.");
}

} // namespace
} // namespace plumule::ui
