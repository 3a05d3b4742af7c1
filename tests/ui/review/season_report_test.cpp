#include "core/journal/review/review_answers.h"
#include "tests/ui/support/report_reading.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/report/report_task.h"
#include "ui/review/season_report.h"
#include "ui/review/verdict_text.h"

#include <QCoreApplication>
#include <QFile>
#include <QTranslator>

#include <algorithm>

namespace plumule::ui {
namespace {

class SeasonReportTest : public UiTest
{
protected:
    [[nodiscard]] Result<SeasonAnswer> usualAnswer(const Progress& progress = {})
    {
        const SeasonFilter filter = journal->review().usualSeason();
        return journal->review().season(reportQuestion(filter), progress);
    }
    SeasonAnswer answerOfSample()
    {
        useSample();
        const auto answer = usualAnswer();
        EXPECT_TRUE(answer.has_value());
        return answer.value_or(SeasonAnswer());
    }
    static QStringList headings(const Report& report)
    {
        QStringList texts;
        for (const ReportHeading& each : all<ReportHeading>(report)) {
            texts << each.text;
        }
        return texts;
    }
};

TEST_F(SeasonReportTest, HoldsTheQuestionTheAnswerAndTheGrounds)
{
    const SeasonAnswer facts = answerOfSample();
    const Report report = seasonReport(facts);
    const QStringList found = headings(report);
    for (const char* wanted :
         {"Question", "Answer", "How it was grown", "Yield", "Cost", "Growth", "Is it fair?",
          "What to do next", "The sums", "Every tray that counts"}) {
        EXPECT_TRUE(found.contains(QLatin1String(wanted))) << wanted;
    }
    const auto words = all<ReportWords>(report);
    const auto lead = std::find_if(words.begin(), words.end(), [](const ReportWords& each) {
        return each.look == WordsLook::Lead;
    });
    ASSERT_NE(lead, words.end());
    EXPECT_EQ(lead->text, verdictWords(facts.comparison(Response::YieldPerTray)).headline)
        << "as the page says it";
    EXPECT_GE(all<ReportChart>(report).size(), 4U);
    EXPECT_FALSE(all<ReportCaution>(report).empty());
}

// Another language for what reports say.
class OtherLanguage : public QTranslator
{
public:
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* context, const char* source, const char*,
                                    int) const override
    {
        return QLatin1String(context) == QLatin1String("Report")
                   ? "‹" + QString::fromUtf8(source) + "›"
                   : QString();
    }
};

TEST_F(SeasonReportTest, IsSaidInTheLanguageThatIsInstalled)
{
    const SeasonAnswer facts = answerOfSample();
    OtherLanguage language;
    ASSERT_TRUE(QCoreApplication::installTranslator(&language));
    const Report report = seasonReport(facts);
    QCoreApplication::removeTranslator(&language);
    QStringList said = headings(report) << report.title << report.foot;
    for (const ReportCaution& each : all<ReportCaution>(report)) {
        said << each.heading;
    }
    EXPECT_GE(said.size(), 14);
    for (const QString& text : std::as_const(said)) {
        EXPECT_TRUE(text.startsWith("‹")) << text.toStdString();
    }
    const ReportTable trays = all<ReportTable>(report).back();
    EXPECT_EQ(trays.header.front(), "‹Tray›");
    EXPECT_TRUE(report.subtitle.contains(QString::fromUtf8("‹%1 tray(s)›").arg(facts.review.trays)))
        << report.subtitle.toStdString();
}

// What stands on the first page: everything before "How it was grown".
TEST_F(SeasonReportTest, TheFirstPageIsTheAnswerAloneWithoutTheSums)
{
    const Report report = seasonReport(answerOfSample());
    QStringList first;
    int charts = 0;
    for (const ReportBlock& block : report.blocks) {
        if (const auto* heading = std::get_if<ReportHeading>(&block);
            heading != nullptr && heading->beginsPage) {
            EXPECT_EQ(heading->text, "How it was grown");
            break;
        }
        if (const auto* words = std::get_if<ReportWords>(&block)) {
            first << words->text;
        } else if (const auto* list = std::get_if<ReportList>(&block)) {
            first << list->items;
        } else if (const auto* table = std::get_if<ReportTable>(&block)) {
            first << table->caption << table->header;
        }
        charts += std::holds_alternative<ReportChart>(block) ? 1 : 0;
    }
    EXPECT_EQ(charts, 1);
    const QString text = first.join('\n');
    EXPECT_TRUE(text.contains("Thrown away")) << text.toStdString();
    for (const char* sum : {"Tukey", "Welch", "F ", "p 0", " df", "Standard error"}) {
        EXPECT_FALSE(text.contains(QLatin1String(sum))) << sum << "\n" << text.toStdString();
    }
}

TEST_F(SeasonReportTest, EveryTrayThatCountsIsInTheAppendix)
{
    const SeasonAnswer facts = answerOfSample();
    const ReportTable appendix = all<ReportTable>(seasonReport(facts)).back();
    EXPECT_EQ(static_cast<int>(appendix.rows.size()), facts.review.trays);
    const SeasonTray& tray = facts.review.media.front().trays.front();
    const auto row =
        std::find_if(appendix.rows.begin(), appendix.rows.end(), [&](const QStringList& each) {
            return each.front().toStdString() == tray.code;
        });
    ASSERT_NE(row, appendix.rows.end());
    EXPECT_EQ(row->at(6), numberText(tray.yieldGrams, 1));
}

TEST_F(SeasonReportTest, TablesSayTheNumbersOfTheReview)
{
    const SeasonAnswer facts = answerOfSample();
    const ReportTable means = meansTable(facts.comparison(Response::YieldPerTray));
    ASSERT_EQ(means.rows.size(), facts.comparison(Response::YieldPerTray).means.size());
    EXPECT_EQ(means.rows[0][1],
              QString::number(facts.comparison(Response::YieldPerTray).means[0].trays));
    EXPECT_EQ(means.rows[0][3],
              numberText(*facts.comparison(Response::YieldPerTray).means[0].mean, 1));
    EXPECT_EQ(pairsTable(facts.comparison(Response::YieldPerTray)).rows.size(),
              facts.comparison(Response::YieldPerTray).pairs.size());
    const TrayModel& model = facts.comparison(Response::YieldPerTray).model;
    EXPECT_EQ(modelTable(model).rows.size(), model.model.terms.size());
    const ReportTable costs = costTable(facts.review);
    EXPECT_EQ(costs.header.size(), static_cast<qsizetype>(facts.review.media.size()) + 1);
    for (const ReportTable& table : all<ReportTable>(seasonReport(facts))) {
        for (const QStringList& row : table.rows) {
            EXPECT_EQ(row.size(), table.header.size()) << table.caption.toStdString();
        }
    }
}

TEST_F(SeasonReportTest, ASeasonWithoutHarvestsSaysSo)
{
    const auto facts = usualAnswer();
    ASSERT_TRUE(facts.has_value());
    const Report report = seasonReport(*facts);
    EXPECT_EQ(headings(report), QStringList({"Question", "Answer"}));
    EXPECT_TRUE(all<ReportTable>(report).empty());
    EXPECT_TRUE(all<ReportWords>(report)[1].text.contains("No tray was harvested"));
}

TEST_F(SeasonReportTest, StopsWhenAsked)
{
    useSample();
    std::stop_source stop;
    stop.request_stop();
    const auto facts = usualAnswer(Progress([](double) {}, stop.get_token()));
    ASSERT_FALSE(facts.has_value());
    EXPECT_EQ(facts.error().kind, ErrorKind::Cancelled);
}

TEST_F(SeasonReportTest, IsMadeInTheBackgroundAndTold)
{
    useSample();
    QWidget page;
    const SeasonFilter filter = journal->review().usualSeason();
    for (const char* name : {"season.pdf", "season.html"}) {
        ask.fileAnswer = folder.path() + '/' + name;
        makeReport(
            &page, services(), *journal, name,
            [filter](Journal& read, const Progress& progress) -> Result<Report> {
                return read.review().season(reportQuestion(filter), progress).map(seasonReport);
            });
        EXPECT_TRUE(tasks.isBusy());
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return !tasks.isBusy() && QFile::exists(ask.fileAnswer); }, 20000))
            << name;
    }
    QFile pdf(folder.path() + "/season.pdf");
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.readAll().startsWith("%PDF"));
    QFile html(folder.path() + "/season.html");
    ASSERT_TRUE(html.open(QIODevice::ReadOnly));
    EXPECT_TRUE(html.readAll().startsWith("<!DOCTYPE html>"));
}

} // namespace
} // namespace plumule::ui
