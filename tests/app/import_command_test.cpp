#include "tests/app/program_run.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace plumule::app {

class ImportCommand : public ProgramTest
{
protected:
    [[nodiscard]] QString journal() const { return path("room.plumule"); }
    static QString plants() { return reference("plant_weights_as_trays.csv"); }
    [[nodiscard]] int traysInSeason() const
    {
        const Answer answer =
            run({"season", journal(), "--from", "2026-01-01", "--to", "2026-12-31", "--json"});
        EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
        return answer.json().at("trays");
    }
};

TEST_F(ImportCommand, MakesANewJournalOfATable)
{
    const Answer answer = run({"import", journal(), plants()});
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_TRUE(answer.out.contains("Imported 30 trays."));
    EXPECT_TRUE(answer.out.contains("new media: ctrl, trt1, trt2"));
    EXPECT_FALSE(answer.out.contains("Nothing was written"));
    EXPECT_EQ(answer.out.count("30 trays\n"), 1);
    EXPECT_EQ(traysInSeason(), 30);
    EXPECT_EQ(run({"check", journal()}).exitCode, 0);
}

TEST_F(ImportCommand, AddsToAJournalThatStands)
{
    ASSERT_EQ(run({"import", journal(), plants()}).exitCode, 0);
    const QString more = write("more.csv", "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                           "X1,Published plants,ctrl,2026-02-01,,2026-02-15,5.5\n");
    const Answer answer = run({"import", journal(), more});
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_FALSE(answer.out.contains("new media"));
    EXPECT_EQ(traysInSeason(), 31);
}

TEST_F(ImportCommand, WritesNothingWhenItRunsDry)
{
    const Answer fresh = run({"import", journal(), plants(), "--dry-run"});
    EXPECT_EQ(fresh.exitCode, 0);
    EXPECT_TRUE(fresh.out.contains("Nothing was written."));
    EXPECT_TRUE(QDir(path(".")).isEmpty());
    ASSERT_EQ(run({"import", journal(), plants()}).exitCode, 0);
    const QString more = write("more.csv", "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                           "X1,Published plants,ctrl,2026-02-01,,2026-02-15,5.5\n");
    EXPECT_EQ(run({"import", journal(), more, "--dry-run"}).exitCode, 0);
    EXPECT_EQ(traysInSeason(), 30);
}

TEST_F(ImportCommand, HoldsBackWhatLooksWrongUnlessToldThatItStands)
{
    const QString file = write("slip.csv", "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                           "A1,Cress,mat,2026-01-05,10,2026-01-15,2000\n"
                                           "A2,Cress,mat,2025-01-05,10,2026-01-15,200\n");
    const Answer held = run({"import", journal(), file});
    EXPECT_EQ(held.exitCode, 2);
    EXPECT_TRUE(held.error.contains("Line 2, A1: 2000.0 g cut from 10.0 g of seed."))
        << held.error.toStdString();
    EXPECT_TRUE(held.error.contains("Line 3, A2: cut 375 days after sowing."));
    EXPECT_TRUE(held.error.contains("--as-it-stands"));
    EXPECT_TRUE(QDir(path(".")).entryList({"*.plumule"}).isEmpty());
    const Answer dry = run({"import", journal(), file, "--dry-run"});
    EXPECT_EQ(dry.exitCode, 0);
    EXPECT_TRUE(dry.error.contains("Line 2, A1"));
    EXPECT_EQ(run({"import", journal(), file, "--as-it-stands"}).exitCode, 0);
    EXPECT_EQ(traysInSeason(), 2);
}

TEST_F(ImportCommand, ListsEveryFaultAndTakesNothing)
{
    const QString file = write("off.csv", "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                          "A1,Cress,mat,2026-01-05,10,2026-01-15,200\n"
                                          "A2,Cress,mat,yesterday,10,2026-01-15,200\n"
                                          "A3,Cress,mat,2026-01-05,ten,2026-01-15,200\n"
                                          "A1,Cress,mat,2026-01-06,10,2026-01-15,200\n");
    const Answer answer = run({"import", journal(), file});
    EXPECT_EQ(answer.exitCode, 2);
    EXPECT_EQ(answer.out.toStdString(), "");
    EXPECT_TRUE(answer.error.contains("yesterday"));
    EXPECT_TRUE(answer.error.contains("ten"));
    EXPECT_TRUE(answer.error.contains("A1"));
    EXPECT_TRUE(answer.error.endsWith("Nothing was imported.\n"));
    EXPECT_EQ(answer.error.count('\n'), 4) << answer.error.toStdString();
    EXPECT_FALSE(QFileInfo::exists(journal()));
}

TEST_F(ImportCommand, TakesNoTableTwice)
{
    ASSERT_EQ(run({"import", journal(), plants()}).exitCode, 0);
    const Answer again = run({"import", journal(), plants()});
    EXPECT_EQ(again.exitCode, 0);
    EXPECT_TRUE(again.out.contains("there already: 30")) << again.out.toStdString();
    EXPECT_TRUE(again.out.contains("Imported 0 trays."));
    EXPECT_EQ(traysInSeason(), 30);
    const QString other = write("other.csv", "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                             "PW001,Cress,mat,2026-01-05,10,2026-01-15,200\n");
    const Answer refused = run({"import", journal(), other});
    EXPECT_EQ(refused.exitCode, 2);
    EXPECT_TRUE(refused.error.contains("PW001"));
}

TEST_F(ImportCommand, TakesTablesOfOtherKindsUnderTheNamesTheyHave)
{
    ASSERT_EQ(run({"import", journal(), plants()}).exitCode, 0);
    const QString file =
        write("heights.csv", "pot;when;tall\nPW001;01.02.2026;8,5\nPW002;02.02.2026;7\n");
    const QStringList call{"import",         journal(),  file,          "--as",      "heights",
                           "--column",       "tray=pot", "--column",    "date=when", "--column",
                           "height_mm=tall", "--unit",   "height_mm=cm"};
    const Answer answer = run(call);
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_TRUE(answer.out.contains("Imported 2 rows of heights.")) << answer.out.toStdString();
    EXPECT_TRUE(run(call).out.contains("there already: 2"));
    expectBadCall({"import", journal(), file, "--as", "moons"}, "trays, stages");
    expectBadCall({"import", journal(), file, "--as", "heights", "--column", "moon=pot"},
                  "heights");
    expectBadCall({"import", journal(), file, "--dates", "dym"}, "ymd");
}

TEST_F(ImportCommand, TakesEverythingOutAndInAgain)
{
    ASSERT_EQ(run({"import", journal(), plants()}).exitCode, 0);
    const QString tables = path("tables");
    const Answer out = run({"export", journal(), tables});
    EXPECT_EQ(out.exitCode, 0) << out.error.toStdString();
    EXPECT_TRUE(QFileInfo::exists(tables + "/dictionary.csv"));
    expectNoAnswer({"export", journal(), tables}, "new or empty");
    const QString again = path("again.plumule");
    const Answer in = run({"import", "--everything", tables, again});
    EXPECT_EQ(in.exitCode, 0) << in.error.toStdString();
    EXPECT_EQ(run({"check", again}).exitCode, 0);
    const QString second = path("second");
    ASSERT_EQ(run({"export", again, second}).exitCode, 0);
    for (const QString& name : QDir(tables).entryList({"*.csv"})) {
        QFile before(tables + "/" + name);
        QFile after(second + "/" + name);
        ASSERT_TRUE(before.open(QIODevice::ReadOnly) && after.open(QIODevice::ReadOnly));
        EXPECT_EQ(before.readAll(), after.readAll()) << name.toStdString();
    }
    expectNoAnswer({"import", "--everything", path("nowhere"), path("x.plumule")},
                   "dictionary.csv");
    EXPECT_FALSE(QFileInfo::exists(path("x.plumule")));
}

TEST_F(ImportCommand, RefusesWhatItCannotUnderstand)
{
    expectBadCall({"import"}, "JOURNAL is missing");
    expectBadCall({"import", journal()}, "FILE.csv is missing");
    expectBadCall({"import", journal(), path("none.csv")}, "can't be read");
    expectBadCall({"import", journal(), plants(), "--bogus"}, "bogus");
    EXPECT_EQ(run({"import", journal(), write("empty.csv", "")}).exitCode, 2);
    EXPECT_FALSE(QFileInfo::exists(journal()));
    expectNoAnswer({"import", write("text.plumule", "mine"), plants()}, "not a Plumule journal");
    expectNoAnswer({"import", path("nowhere/room.plumule"), plants()}, "can't be made");
}

} // namespace plumule::app
