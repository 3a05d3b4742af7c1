#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/growing.h"
#include "tests/ui/support/report_reading.h"
#include "tests/ui/support/rice_blocks.h"
#include "ui/report/report_html.h"
#include "ui/report/report_pdf.h"
#include "ui/trial/trial_report.h"

#include <QFile>
#include <QImage>
#include <QXmlStreamReader>

namespace plumule::ui {
namespace {

class TrialReportTest : public GrowingTest
{
protected:
    TrialId sampleTrial(const std::string& code)
    {
        const auto trials = journal->trials().all();
        for (const Trial& trial : *trials) {
            if (trial.code == code) {
                return trial.id;
            }
        }
        ADD_FAILURE() << code;
        return {};
    }
    [[nodiscard]] Result<TrialAnswer> reportOn(TrialId trial, const Progress& progress = {})
    {
        return journal->review().trial(reportQuestion(trial), progress);
    }
    [[nodiscard]] Report reportOf(const TrialAnswer& answer) const
    {
        return trialReport(answer, QString::fromStdString(journal->photoFolder().string()));
    }
    static QString textOf(const Report& report)
    {
        QStringList lines;
        for (const ReportHeading& each : all<ReportHeading>(report)) {
            lines << each.text;
        }
        for (const ReportWords& each : all<ReportWords>(report)) {
            lines << each.text;
        }
        for (const ReportList& each : all<ReportList>(report)) {
            lines << each.items;
        }
        for (const ReportCaution& each : all<ReportCaution>(report)) {
            lines << each.lines;
        }
        return lines.join('\n');
    }
};

class RiceReportTest : public TrialReportTest
{
protected:
    void SetUp() override { journal = riceJournal(folder.path().toStdString(), clock); }

    TrialDraft seedRates()
    {
        TrialDraft draft = journal->trials().newDraft().value();
        draft.trial.name = "Rice seeding rates";
        draft.trial.question = "Does the seeding rate change the yield?";
        draft.trial.control.reset();
        draft.plan.variety = varietyNamed("Broccoli");
        draft.plan.seedLot.reset();
        draft.plan.blocks = 4;
        draft.plan.traysEach = 4;
        draft.plan.drawNumber = 26;
        draft.treatments.clear();
        for (const auto& [rate, yields] : m_yields) {
            Medium medium;
            medium.name = rate;
            medium.form = MediumForm::Mat;
            Treatment treatment;
            treatment.medium = journal->media().save(medium).value().id;
            m_rates[treatment.medium] = rate;
            draft.treatments.push_back(treatment);
        }
        draft.trays = journal->trials().draw(draft).value();
        return draft;
    }

    TrialId grown()
    {
        const TrialDraft draft = journal->trials().savePlan(seedRates()).value();
        EXPECT_TRUE(journal->trials().sow(draft, draft.plan.sowAt()).has_value());
        const auto progress = journal->trials().progress(draft.trial.id).value();
        clock.set(progress.trays[0].plan.harvest);
        for (const TrialTray& tray : progress.trays) {
            WeighingDraft weighing;
            weighing.tray = tray.record.tray.id;
            const double net =
                m_yields.at(m_rates.at(tray.record.medium.id)).at("R" + std::to_string(tray.block));
            weighing.bowls = {{grams(net + 42), grams(42)}};
            weighing.at = clock.now();
            weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet};
            EXPECT_TRUE(journal->harvests().record(weighing).has_value());
        }
        return draft.trial.id;
    }

    RiceYields m_yields = riceYields();
    std::map<MediumId, std::string> m_rates;
};

TEST_F(RiceReportTest, GivesThePublishedResult)
{
    const auto facts = reportOn(grown());
    ASSERT_TRUE(facts.has_value());
    const Report report = reportOf(*facts);
    const auto figures = all<ReportFigures>(report);
    ASSERT_EQ(figures.size(), 1U);
    QStringList values;
    for (const ReportFigure& figure : figures[0].figures) {
        values << figure.value;
    }
    EXPECT_EQ(values, QStringList({"6.7 %", "763.9 g"}));
    QStringList sums;
    for (const ReportTable& table : all<ReportTable>(report)) {
        for (const QStringList& row : table.rows) {
            sums << row.mid(0, 2).join(' ');
        }
    }
    EXPECT_TRUE(sums.contains("medium 2.17")) << sums.join('|').toStdString();
    EXPECT_TRUE(sums.contains("block 5.86"));
    EXPECT_TRUE(textOf(report).contains("randomized blocks"));
    EXPECT_TRUE(textOf(report).contains("the number 26"));
    EXPECT_TRUE(textOf(report).contains("Does the seeding rate change the yield?"));
    EXPECT_EQ(all<ReportTable>(report).back().rows.size(), 24U) << "every tray";
    EXPECT_EQ(blocksOf(facts->progress).size(), 4U);
    const auto charts = all<ReportChart>(report);
    ASSERT_GE(charts.size(), 2U);
    EXPECT_EQ(charts[0].spec.key, "yield_adjusted") << "the answer's own picture";
    EXPECT_EQ(charts[1].spec.key, "yield_by_block");
    EXPECT_EQ(charts[1].spec.rows.size(), 4U);
}

TEST_F(TrialReportTest, ShowsNotesAndPhotographsOfTheSameDaySideBySide)
{
    useSample();
    const TrialId trial = sampleTrial("T6");
    const auto before = journal->trials().progress(trial);
    ASSERT_TRUE(before.has_value());
    QImage photo(800, 600, QImage::Format_RGB32);
    photo.fill(Qt::darkGreen);
    ASSERT_TRUE(photo.save(folder.path() + "/leaf.png"));
    const Moment at{before->trays[0].record.tray.sownOn + 5, 600};
    for (const std::size_t tray : {0U, 1U}) {
        const TrayId id = before->trays[tray].record.tray.id;
        ASSERT_TRUE(journal->trays().attachPhoto(id, (folder.path() + "/leaf.png").toStdString(),
                                                 "even", at));
        ASSERT_TRUE(journal->trays().writeNote(id, "Roots show & hulls shed", at));
    }
    const auto facts = reportOn(trial);
    ASSERT_TRUE(facts.has_value());
    const Report report = reportOf(*facts);
    const auto pictures = all<ReportPictures>(report);
    ASSERT_EQ(pictures.size(), 1U);
    ASSERT_EQ(pictures[0].pictures.size(), 2U);
    EXPECT_TRUE(QFile::exists(pictures[0].pictures[0].path));
    EXPECT_TRUE(pictures[0].pictures[0].caption.contains("even"));
    EXPECT_EQ(textOf(report).count("Roots show & hulls shed"), 2);

    const auto charts = chartsOf(report);
    QXmlStreamReader reader(reportHtml(report, charts));
    int images = 0;
    while (!reader.atEnd()) {
        images += reader.readNext() == QXmlStreamReader::StartElement && reader.name() == u"img";
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    EXPECT_EQ(images, 2);
    EXPECT_TRUE(writeReportPdf(folder.path() + "/t6.pdf", report, charts));
}

TEST_F(TrialReportTest, TellsTheTastingResidueAndWhatIsMissing)
{
    useSample();
    const auto facts = reportOn(sampleTrial("T6"));
    ASSERT_TRUE(facts.has_value());
    const QString text = textOf(reportOf(*facts));
    ASSERT_FALSE(facts->season.tastings->closed.empty()) << "the sample has a closed tasting";
    EXPECT_TRUE(text.contains("Tasting: "));
    EXPECT_TRUE(text.contains("Residue"));
    const auto growing = reportOn(sampleTrial("T9"));
    ASSERT_TRUE(growing.has_value());
    ASSERT_FALSE(growing->progress.lacks.empty());
    EXPECT_TRUE(textOf(reportOf(*growing)).contains(lackWords(growing->progress).front()));
}

TEST_F(TrialReportTest, APlannedTrialHasNoAnswerYet)
{
    useSample();
    const auto facts = reportOn(sampleTrial("T10"));
    ASSERT_TRUE(facts.has_value());
    const Report report = reportOf(*facts);
    EXPECT_TRUE(textOf(report).contains("No tray"));
    EXPECT_TRUE(all<ReportFigures>(report).empty());
    EXPECT_TRUE(writeReportPdf(folder.path() + "/t10.pdf", report, chartsOf(report)));
}

TEST_F(TrialReportTest, AnUnknownTrialIsNotFound)
{
    const auto facts = reportOn(TrialId{4711});
    ASSERT_FALSE(facts.has_value());
    EXPECT_EQ(facts.error().kind, ErrorKind::NotFound);
}

TEST_F(TrialReportTest, StopsWhenAsked)
{
    useSample();
    std::stop_source stop;
    stop.request_stop();
    const auto facts = reportOn(sampleTrial("T6"), Progress([](double) {}, stop.get_token()));
    ASSERT_FALSE(facts.has_value());
    EXPECT_EQ(facts.error().kind, ErrorKind::Cancelled);
}

} // namespace
} // namespace plumule::ui
