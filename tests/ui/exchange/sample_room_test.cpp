#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/tray/tray.h"
#include "core/tray/tray_list_row.h"
#include "tests/support/told.h"
#include "ui/exchange/sample_room.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

class MadeSampleTest : public ::testing::Test
{
protected:
    QTemporaryDir folder;
    FixedClock clock{Moment{date(2026, 3, 12), 7 * 60 + 10}};
    const QString path = folder.filePath("sample.plumule");
};

TEST_F(MadeSampleTest, HoldsWhatIsBuiltIntoTheProgramAsOfTheClock)
{
    const auto made = makeSampleJournal(path, clock);
    ASSERT_TRUE(made.has_value()) << told(made.error());
    const auto trays = (*made)->trays().list(TrayFilter()).value();
    EXPECT_GT(trays.size(), 250U);
    EXPECT_FALSE((*made)->watering().roundNow()->trays.empty());
    for (const TrayListRow& each : trays) {
        // What soaks has its sowing still to come.
        EXPECT_LE(each.record.tray.sownOn, clock.today() + 2) << each.record.tray.code;
    }
    EXPECT_TRUE((*made)->faults()->empty());
}

TEST_F(MadeSampleTest, IsThatOfTheTablesInTheTree)
{
    const QDir builtIn(":/sample-data");
    const QDir tree(PLUMULE_SAMPLE_DATA);
    const QStringList names = tree.entryList({"*.csv"}, QDir::Files);
    ASSERT_FALSE(names.isEmpty());
    EXPECT_EQ(builtIn.entryList({"*.csv"}), names);
    for (const QString& name : names) {
        QFile ours(builtIn.filePath(name));
        QFile theirs(tree.filePath(name));
        ASSERT_TRUE(ours.open(QIODevice::ReadOnly) && theirs.open(QIODevice::ReadOnly));
        EXPECT_EQ(ours.readAll(), theirs.readAll()) << name.toStdString();
    }
}

TEST_F(MadeSampleTest, LeavesAFileThatIsThereAlone)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("somebody's own words");
    file.close();
    const auto made = makeSampleJournal(path, clock);
    ASSERT_FALSE(made.has_value());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "somebody's own words");
}

TEST_F(MadeSampleTest, SaysWhereItCannotWrite)
{
    const auto made = makeSampleJournal(folder.filePath("nowhere/sample.plumule"), clock);
    ASSERT_FALSE(made.has_value());
    EXPECT_FALSE(QFile::exists(folder.filePath("nowhere")));
}

} // namespace
} // namespace plumule::ui
