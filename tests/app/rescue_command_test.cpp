#include "tests/app/program_run.h"

#include <QFile>
#include <QFileInfo>

namespace plumule::app {

class RescueCommand : public ProgramTest
{
protected:
    void SetUp() override { ASSERT_EQ(run({"sample", sample()}).exitCode, 0); }

    [[nodiscard]] QString sample() const { return path("room.plumule"); }
    static QByteArray bytesOf(const QString& path)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
        return file.readAll();
    }
};

TEST_F(RescueCommand, SavesASoundJournalWhole)
{
    const Answer saved = run({"rescue", sample(), path("new.plumule")});
    ASSERT_EQ(saved.exitCode, 0) << saved.error.toStdString();
    EXPECT_TRUE(saved.out.contains("Nothing was left out.")) << saved.out.toStdString();
    EXPECT_EQ(run({"check", path("new.plumule")}).out, "The journal is sound.\n");
    EXPECT_EQ(run({"season", path("new.plumule"), "--json"}).out,
              run({"season", sample(), "--json"}).out);
}

TEST_F(RescueCommand, SavesTheRestOfADamagedJournalAndSaysWhatIsLost)
{
    QByteArray spoilt = bytesOf(sample());
    spoilt.replace(spoilt.size() / 2, 40'000, QByteArray(40'000, '\x55'));
    const QString old = write("spoilt.plumule", spoilt);
    const Answer saved = run({"rescue", old, path("new.plumule")});
    ASSERT_EQ(saved.exitCode, 0) << saved.error.toStdString();
    EXPECT_TRUE(saved.out.contains("What could not be taken over as it stood"));
    EXPECT_FALSE(saved.out.contains("SELECT"));
    EXPECT_EQ(bytesOf(old), spoilt);
    const Answer round = run({"round", path("new.plumule"), "--json"});
    EXPECT_EQ(round.exitCode, 0) << round.error.toStdString();
}

TEST_F(RescueCommand, RefusesWhatItMayNotDoInOneLine)
{
    expectBadCall({"rescue", sample()}, "NEW is missing");
    const QString mine = write("mine.plumule", "mine");
    expectNoAnswer({"rescue", sample(), mine}, "already");
    EXPECT_EQ(bytesOf(mine), "mine");
    expectNoAnswer({"rescue", path("none.plumule"), path("new.plumule")}, "There is no file");
    expectNoAnswer({"rescue", mine, path("new.plumule")}, "can be read any more");
    EXPECT_FALSE(QFileInfo::exists(path("new.plumule")));
}

} // namespace plumule::app
