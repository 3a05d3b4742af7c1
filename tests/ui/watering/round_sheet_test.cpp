#include "core/journal/room/room_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/watering/round_fixture.h"
#include "ui/watering/round_sheet.h"

#include <QFile>

namespace plumule::ui {
namespace {

class RoundSheetTest : public RoundTest
{
protected:
    QByteArray sheetOf(UnitSystem units)
    {
        const QString path = folder.path() + "/round.pdf";
        EXPECT_TRUE(writeRoundSheet(*journal->watering().roundNow(), *journal->room().layout(),
                                    UnitText(units), path));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
};

TEST_F(RoundSheetTest, PutsFortyTraysOnTwoPagesOfA4)
{
    sowBroccoli(40, {date(2026, 3, 10), 450});
    const QByteArray pdf = sheetOf(UnitSystem::Metric);
    EXPECT_TRUE(pdf.startsWith("%PDF"));
    EXPECT_EQ(pdf.count("/Type /Page\n"), 2);
    EXPECT_TRUE(pdf.contains("/MediaBox [0 0 595"));
}

TEST_F(RoundSheetTest, TakesLetterPaperWhereUnitsAreUsCustomary)
{
    sowBroccoli(2, {date(2026, 3, 10), 450});
    const QByteArray pdf = sheetOf(UnitSystem::UsCustomary);
    EXPECT_EQ(pdf.count("/Type /Page\n"), 1);
    EXPECT_TRUE(pdf.contains("/MediaBox [0 0 612"));
}

TEST_F(RoundSheetTest, AnEmptyRoundIsASheetToo)
{
    EXPECT_EQ(sheetOf(UnitSystem::Metric).count("/Type /Page\n"), 1);
}

TEST_F(RoundSheetTest, SaysSoWhereTheFileCantBeWritten)
{
    EXPECT_FALSE(writeRoundSheet(*journal->watering().roundNow(), *journal->room().layout(),
                                 UnitText(), folder.path() + "/no such folder/round.pdf"));
}

} // namespace
} // namespace plumule::ui
