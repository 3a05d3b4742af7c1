#include "core/log/open_mark.h"

#include "tests/core/storage/scratch.h"

namespace plumule {
namespace {

namespace fs = std::filesystem;

class OpenMarkTest : public testing::Test
{
protected:
    [[nodiscard]] auto marks() const
    {
        return std::distance(fs::directory_iterator(records), fs::directory_iterator());
    }
    void endWithoutClosing()
    {
        EXPECT_TRUE(doneByAProgramThatEnds([&] {
            const auto* mark = new OpenMark(records, journal); // never closed
            return !mark->wasLeft();
        }));
    }

    ScratchFolder folder;
    fs::path records = folder / "records";
    fs::path journal = folder / "room.plumule";
};

TEST_F(OpenMarkTest, IsGoneOnceTheJournalIsClosed)
{
    {
        const OpenMark mark(records, journal);
        EXPECT_FALSE(mark.wasLeft());
        EXPECT_EQ(marks(), 1);
    }
    EXPECT_EQ(marks(), 0);
    EXPECT_FALSE(OpenMark(records, journal).wasLeft());
}

TEST_F(OpenMarkTest, TellsOfAProgramThatEndedWithoutClosingAndOnlyOnce)
{
    endWithoutClosing();
    EXPECT_TRUE(OpenMark(records, journal).wasLeft());
    EXPECT_FALSE(OpenMark(records, journal).wasLeft());
}

TEST_F(OpenMarkTest, IsOfThatJournalByWhateverName)
{
    endWithoutClosing();
    EXPECT_FALSE(OpenMark(records, folder / "other.plumule").wasLeft());
    fs::create_symlink(journal, folder / "link.plumule");
    EXPECT_TRUE(OpenMark(records, folder / "link.plumule").wasLeft());
}

TEST_F(OpenMarkTest, SaysNothingOfTheJournal)
{
    const OpenMark mark(records, journal);
    const auto entry = *fs::directory_iterator(records);
    EXPECT_EQ(entry.path().filename().string().find("room"), std::string::npos);
    EXPECT_EQ(entry.file_size(), 0U);
}

} // namespace
} // namespace plumule
