#include "core/journal/cost/cost_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/cost/price_part.h"
#include "ui/medium/medium_part.h"
#include "ui/room/room_part.h"
#include "ui/variety/seed_part.h"
#include "ui/variety/variety_part.h"

namespace plumule::ui {
namespace {

// The journal's file goes away under a form that is being filled in.
class SaveFailureTest : public SetupTest
{
protected:
    [[nodiscard]] QString file() const { return folder.filePath("test.plumule"); }
    void takeAway() { ASSERT_TRUE(QFile::rename(file(), file() + ".away")); }
    void bringBack() { ASSERT_TRUE(QFile::rename(file() + ".away", file())); }

    // Types into a field and saves while the file is away: it is said, what was typed stays, and is
    // saved once the file is back.
    template <class Part>
    void expectTypingToOutliveAFailure(Part& part, const char* field, const QString& text,
                                       const char* save)
    {
        write(part, field, text);
        ASSERT_NO_FATAL_FAILURE(takeAway());
        press(part, save);
        EXPECT_TRUE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_TRUE(messages.text().contains("moved or removed")) << messages.text().toStdString();
        EXPECT_EQ(textOf(part, field), text);
        EXPECT_TRUE(part.hasUnsaved());
        ASSERT_NO_FATAL_FAILURE(bringBack());
        press(part, save);
        EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_FALSE(part.hasUnsaved());
        EXPECT_EQ(textOf(part, field), text);
    }
};

TEST_F(SaveFailureTest, OfTheRoom)
{
    const auto part = openPart<RoomPart>();
    expectTypingToOutliveAFailure(*part, "roomName", "Cellar", "saveRoom");
    EXPECT_EQ(journal->room().layout()->room.name, "Cellar");
}

TEST_F(SaveFailureTest, OfAVariety)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    expectTypingToOutliveAFailure(*part, "varietyName", "Broccoli, early", "saveRecord");
    EXPECT_TRUE(varietyNamed("Broccoli, early").isStored());
}

TEST_F(SaveFailureTest, OfASeedLot)
{
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    expectTypingToOutliveAFailure(*part, "lotNumber", "L7", "saveRecord");
    EXPECT_EQ(journal->varieties().lots(std::nullopt, Listed::All)->size(), 1U);
}

TEST_F(SaveFailureTest, OfAMedium)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    expectTypingToOutliveAFailure(*part, "mediumName", "Hemp mat, thick", "saveRecord");
    EXPECT_TRUE(mediumNamed("Hemp mat, thick"));
}

TEST_F(SaveFailureTest, OfAPrice)
{
    const auto part = openPart<PricePart>();
    press(*part, "newRecord");
    choose(*part, "priceItem", "electricity");
    expectTypingToOutliveAFailure(*part, "priceAmount", "0.3125", "saveRecord");
    ASSERT_EQ(journal->costs().prices()->size(), 1U);
}

TEST_F(SaveFailureTest, OfARemovalLeavesTheRecord)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    ASSERT_NO_FATAL_FAILURE(takeAway());
    press(*part, "removeRecord");
    EXPECT_TRUE(messages.isRefusal()) << messages.text().toStdString();
    ASSERT_NO_FATAL_FAILURE(bringBack());
    EXPECT_TRUE(mediumNamed("Hemp mat"));
    EXPECT_FALSE(recordsOf(*part).filter("Hemp mat").isEmpty());
}

TEST_F(SaveFailureTest, OfAJournalThatIsOnlyRead)
{
    journal.reset();
    auto opened = Journal::open(file().toStdString(), clock, Access::ReadOnly);
    ASSERT_TRUE(opened);
    journal = std::move(*opened);
    const auto part = openPart<RoomPart>();
    write(*part, "roomName", "Cellar");
    press(*part, "saveRoom");
    EXPECT_TRUE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_TRUE(messages.text().contains("read only")) << messages.text().toStdString();
    EXPECT_EQ(textOf(*part, "roomName"), "Cellar");
}

} // namespace
} // namespace plumule::ui
