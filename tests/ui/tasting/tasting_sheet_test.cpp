#include "core/journal/medium/medium_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "tests/ui/tasting/tasting_fixture.h"
#include "ui/tasting/tasting_sheet.h"
#include "ui/tasting/tasting_text.h"

#include <QFile>
#include <QProcess>

namespace plumule::ui {
namespace {

class TastingSheetTest : public TastingTest
{
protected:
    // The pages as text, read by poppler's pdftotext, which has to be installed.
    static QStringList pagesIn(const QString& pdf)
    {
        QProcess reader;
        reader.start("pdftotext", {"-layout", pdf, "-"});
        EXPECT_TRUE(reader.waitForFinished()) << "pdftotext (poppler-utils) is needed";
        QStringList pages = QString::fromUtf8(reader.readAllStandardOutput()).split('\f');
        while (!pages.isEmpty() && pages.last().trimmed().isEmpty()) {
            pages.removeLast();
        }
        return pages;
    }
    QStringList sheetsOf(PanelId panel, UnitText units = UnitText())
    {
        const QString path = folder.path() + "/tasters.pdf";
        EXPECT_TRUE(writeTasterSheets(recordOf(panel), units, path));
        return pagesIn(path);
    }
};

TEST_F(TastingSheetTest, EachTasterHasAPageWithTheCodesInOrderAndNoMedium)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, {"Ana", "Ben", "Cem"});
    const QStringList pages = sheetsOf(panel);
    ASSERT_EQ(pages.size(), 3);
    const PanelRecord record = recordOf(panel);
    for (std::size_t taster = 0; taster < 3; ++taster) {
        const QString& page = pages[static_cast<int>(taster)];
        EXPECT_TRUE(page.contains(QString::fromStdString(record.tasters[taster].name)));
        qsizetype last = 0;
        for (const Serving& serving : servingsOf(record, record.tasters[taster].id)) {
            const qsizetype at = page.indexOf(QString::fromStdString(serving.code));
            EXPECT_GT(at, last) << serving.code;
            last = at;
        }
        for (const QString& word : hedonicWords()) {
            EXPECT_TRUE(page.contains(word)) << word.toStdString();
        }
        EXPECT_TRUE(page.contains("crunch") && page.contains("flavour"));
        for (const Medium& medium : media(3)) {
            EXPECT_FALSE(page.contains(QString::fromStdString(medium.name), Qt::CaseInsensitive))
                << medium.name;
        }
    }
}

TEST_F(TastingSheetTest, NineSamplesAndEightAttributesStillFitOnAPage)
{
    while (journal->media().all()->size() < 9) {
        Medium medium;
        medium.name = "Bed " + std::to_string(journal->media().all()->size());
        ASSERT_TRUE(journal->media().save(medium));
    }
    const PanelId panel = plan(TastingMethod::Hedonic, 9, {"Ana", "Ben"},
                               {"appearance", "evenness", "colour", "crunch", "flavour", "scent",
                                "bitterness", "aftertaste"});
    EXPECT_EQ(sheetsOf(panel).size(), 2);
    EXPECT_EQ(sheetsOf(panel, UnitText(UnitSystem::UsCustomary)).size(), 2);
}

TEST_F(TastingSheetTest, RankingAndTriangleAskTheirOwnQuestion)
{
    EXPECT_TRUE(sheetsOf(plan(TastingMethod::Ranking, 3, {"Ana"})).front().contains("down to 3"));
    const QStringList triangle = sheetsOf(plan(TastingMethod::Triangle, 2, {"Ana"}));
    EXPECT_TRUE(triangle.front().contains("Two of these three are the same"));
    EXPECT_FALSE(triangle.front().contains("like extremely"));
}

TEST_F(TastingSheetTest, ThePlatingSheetTellsTheMediumOfEachCodeAndWhoMayNotSeeIt)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, {"Ana", "Ben"});
    const QString path = folder.path() + "/plating.pdf";
    const auto plating = journal->tastings().plating(panel).value();
    ASSERT_TRUE(writePlatingSheet(recordOf(panel), plating, UnitText(), path));
    const QStringList pages = pagesIn(path);
    ASSERT_EQ(pages.size(), 1);
    EXPECT_TRUE(pages[0].contains("not for tasters"));
    EXPECT_TRUE(pages[0].contains("allergies"));
    int found = 0;
    for (const QString& line : pages[0].split('\n')) {
        for (const PlatedServing& each : plating) {
            if (line.contains(QString::fromStdString(each.serving.code))) {
                EXPECT_TRUE(line.contains(QString::fromStdString(each.medium.name)))
                    << line.toStdString();
                ++found;
            }
        }
    }
    EXPECT_EQ(found, 6);
}

TEST_F(TastingSheetTest, ButtonsOfTheViewWriteBothSheets)
{
    plan(TastingMethod::Hedonic, 2, {"Ana", "Ben"});
    auto view = openTasting();
    ask.fileAnswer = folder.path() + "/one.pdf";
    press(*view, "tastingSheets");
    EXPECT_EQ(pagesIn(ask.fileAnswer).size(), 2);
    ask.fileAnswer = folder.path() + "/two.pdf";
    press(*view, "tastingPlating");
    EXPECT_EQ(pagesIn(ask.fileAnswer).size(), 1);
    ask.fileAnswer = folder.path() + "/no such folder/two.pdf";
    press(*view, "tastingPlating");
    EXPECT_TRUE(messages.isRefusal());
}

} // namespace
} // namespace plumule::ui
