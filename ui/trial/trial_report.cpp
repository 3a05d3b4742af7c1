#include "ui/trial/trial_report.h"

#include "core/base/work_reason.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/cost/payback_text.h"
#include "ui/report/report_text.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"
#include "ui/trial/plan_text.h"

#include <algorithm>

namespace plumule::ui {
namespace {

QString trialTitle(const Trial& trial)
{
    return QString::fromStdString(trial.code + "  " + trial.name);
}

QString designWords(const TrialAnswer& answer)
{
    if (!answer.progress.draft) {
        return ReportTr::tr(
            "This trial was named, but not planned here: its trays were sown one by "
            "one.");
    }
    const TrialPlan& plan = answer.progress.draft->plan;
    QString words = ReportTr::tr("Design: %1, %2 of each treatment, places drawn by lot from the "
                                 "number %3.")
                        .arg(nameOf(plan.design))
                        .arg(ReportTr::tr("%n tray(s)", nullptr, plan.traysEach))
                        .arg(plan.drawNumber);
    if (plan.design == Design::LatinSquare) {
        words +=
            ' ' + ReportTr::tr("Rows are shelves, columns are places along them; the answer takes "
                               "what differs between either off.");
    }
    const auto& planned = answer.progress.draft->trays;
    const auto moved = std::count_if(planned.begin(), planned.end(),
                                     [](const PlannedTray& tray) { return tray.isMoved; });
    if (moved > 0) {
        words += ' ' + ReportTr::tr("Moved by hand after the draw: %n tray(s).", nullptr,
                                    static_cast<int>(moved));
    }
    return words;
}

bool isLatinSquare(const TrialAnswer& answer)
{
    return answer.progress.draft && answer.progress.draft->plan.design == Design::LatinSquare;
}

QString mediumWords(const TrialTray& tray)
{
    const QString feeding = nameOf(tray.feeding);
    const QString medium = QString::fromStdString(tray.record.medium.name);
    return feeding.isEmpty() ? medium : medium + ' ' + feeding;
}

ReportTable layoutTable(const TrialAnswer& answer)
{
    ReportTable table;
    const bool isSquare = isLatinSquare(answer);
    table.header = {isSquare ? ReportTr::tr("Row (shelf)") : ReportTr::tr("Block"),
                    isSquare ? ReportTr::tr("Column (place)") : ReportTr::tr("Position"),
                    ReportTr::tr("Tray"),
                    ReportTr::tr("Medium"),
                    ReportTr::tr("Place"),
                    ReportTr::tr("Seed lot"),
                    ReportTr::tr("State"),
                    ReportTr::tr("Yield, g"),
                    ReportTr::tr("Residue, g")};
    table.rightFrom = 7;
    table.isDense = true;
    for (const TrialTray& tray : answer.progress.trays) {
        const Tray& sown = tray.record.tray;
        const QString state =
            sown.setAsideReason
                ? ReportTr::tr("set aside: %1").arg(QString::fromStdString(*sown.setAsideReason))
                : nameOf(sown.state);
        table.rows.push_back(
            {QString::number(tray.block), QString::number(tray.position),
             QString::fromStdString(sown.code), mediumWords(tray),
             tray.spot ? nameOf(tray.spot) : kNoFigure,
             QString::fromStdString(tray.record.seedLot.value_or("")), state,
             figureText(tray.yield ? std::optional(inGrams(*tray.yield)) : std::nullopt, 1),
             figureText(tray.residue ? std::optional(inGrams(*tray.residue)) : std::nullopt, 0)});
    }
    return table;
}

void addTrialSums(Report& report, const SeasonComparison& yield)
{
    addSums(report, yield);
    ReportFigures figures;
    if (const auto variation = variationPercent(yield)) {
        figures.figures.push_back({ReportTr::tr("%1 %").arg(numberText(*variation, 1)),
                                   ReportTr::tr("coefficient of variation: the spread between like "
                                                "trays over the mean")});
    }
    if (const auto least = leastRealDifference(yield)) {
        figures.figures.push_back({ReportTr::tr("%1 g").arg(numberText(*least, 1)),
                                   ReportTr::tr("the least difference of two means that Tukey's "
                                                "method calls real in that model")});
    }
    report.add(figures);
}

void addTrialNumbers(Report& report, const TrialAnswer& answer)
{
    const SeasonComparison& yield = answer.season.comparison(Response::YieldPerTray);
    const SeasonComparison& cost = answer.season.comparison(Response::CostPerGram);
    const SeasonComparison& residue = answer.season.comparison(Response::Residue);
    report.add(ReportHeading{ReportTr::tr("Yield")});
    const auto blocks = blocksOf(answer.progress);
    if (blocks.size() > 1) {
        const ChartSpec byBlock = byBlockChart(yield, blocks);
        report.add(ReportChart{byBlock, chartTitle(byBlock)});
    }
    report.add(pairsTable(yield));
    const ChartSpec differences = differencesChart(yield);
    report.add(ReportChart{differences, chartTitle(differences)});
    if (const auto variety = mostReadVariety(answer.season.heights)) {
        report.add(ReportHeading{ReportTr::tr("Growth")});
        const ChartSpec curves = heightFitChart(answer.season.heights, *variety);
        report.add(ReportChart{curves, chartTitle(curves)});
        report.add(heightTable(answer.season.heights));
    }
    const ReportTable costs = costTable(answer.season.review);
    if (!costs.rows.empty()) {
        report.add(ReportHeading{ReportTr::tr("Cost")});
        report.add(ReportWords{verdictWords(cost).headline});
        addPaybacks(report, answer.season);
        report.add(costs);
    }
    if (residue.n > 1 && !residue.pairs.empty()) {
        report.add(ReportHeading{ReportTr::tr("Residue")});
        report.add(ReportWords{verdictWords(residue).headline});
        report.add(meansTable(residue));
    }
}

void addDiary(Report& report, const TrialAnswer& answer, const QString& photoFolder)
{
    if (!answer.diary) {
        addFailed(report, ReportTr::tr("Notes and photographs can't be told."),
                  answer.diary.error());
        return;
    }
    if (answer.diary->empty()) {
        return;
    }
    report.add(ReportHeading{ReportTr::tr("Notes and photographs")});
    for (const TrialDay& day : *answer.diary) {
        ReportPictures pictures;
        pictures.heading = longDateText(day.on);
        QStringList notes;
        for (const TrialDayOfMedium& medium : day.media) {
            const QString name = QString::fromStdString(medium.medium.name);
            for (const auto& [code, photo] : medium.photos) {
                const QString caption = QString::fromStdString(photo.caption);
                pictures.pictures.push_back(
                    {photoFolder + '/' + QString::fromStdString(photo.fileName),
                     QStringLiteral("%1, %2%3")
                         .arg(name, QString::fromStdString(code),
                              caption.isEmpty() ? QString() : ": " + caption)});
            }
            for (const auto& [code, note] : medium.notes) {
                notes << QStringLiteral("%1, %2, %3: %4")
                             .arg(longDateText(day.on), name, QString::fromStdString(code),
                                  QString::fromStdString(note.text));
            }
        }
        report.add(pictures);
        report.add(ReportList{notes});
    }
}

void addTrialGrounds(Report& report, const TrialAnswer& answer)
{
    const SeasonComparison& yield = answer.season.comparison(Response::YieldPerTray);
    report.add(ReportHeading{ReportTr::tr("Is it fair?")});
    addFairness(report, yield);
    QStringList lines = readerCautions(answer.season.review, yield);
    report.add(ReportList{lines});
    report.add(ReportWords{leftOutText(answer.season.review), WordsLook::Muted});
    report.add(ReportCaution{ReportTr::tr("What is missing"), lackWords(answer.progress)});
    report.add(ReportCaution{ReportTr::tr("Keep in mind"), safetyWords()});
}

} // namespace

std::vector<BlockOfTrays> blocksOf(const TrialProgress& progress)
{
    std::vector<BlockOfTrays> blocks;
    int block = 0;
    for (const TrialTray& tray : progress.trays) {
        if (blocks.empty() || tray.block != block) {
            block = tray.block;
            const std::string shelf = tray.spot ? " · " + tray.spot->rack + tray.spot->shelf : "";
            blocks.push_back({std::to_string(block) + shelf, {}});
        }
        blocks.back().trays.push_back(tray.record.tray.id);
    }
    return blocks;
}

QStringList lackWords(const TrialProgress& progress)
{
    QStringList lines;
    for (const TrialLack& lack : progress.lacks) {
        const QString code = QString::fromStdString(lack.code);
        lines
            << (lack.gap == TrialGap::NoHeight
                    ? ReportTr::tr("%1: no height on %2.").arg(code, shortDayText(lack.on))
                    : ReportTr::tr("%1: not weighed, due on %2.").arg(code, shortDayText(lack.on)));
    }
    return lines;
}

TrialQuestion reportQuestion(TrialId trial, const ComparisonAsk& asked)
{
    TrialQuestion question;
    question.trial = trial;
    for (const Response response :
         {Response::YieldPerTray, Response::CostPerGram, Response::Residue}) {
        ComparisonAsk& ask = question.asks.emplace_back();
        ask.response = response;
        ask.groups = asked.groups;
        ask.marginPercent = asked.marginPercent;
    }
    question.parts = {SeasonPart::HeightFits, SeasonPart::Paybacks, SeasonPart::Tastings,
                      SeasonPart::Protocols};
    return question;
}

Report trialReport(const TrialAnswer& answer, const QString& photoFolder)
{
    const Trial& trial = answer.progress.trial;
    Report report;
    report.title = trialTitle(trial);
    QStringList under{
        QString::fromStdString(answer.season.room), nameOf(answer.progress.state),
        ReportTr::tr("%n tray(s)", nullptr, static_cast<int>(answer.progress.trays.size()))};
    if (trial.startedOn) {
        under.insert(1, longDateText(*trial.startedOn));
    }
    report.subtitle = under.join(QStringLiteral("  ·  "));
    report.foot = ReportTr::tr("Trial %1; made on %2")
                      .arg(QString::fromStdString(trial.code), longDateText(answer.season.madeOn));
    if (!trial.question.empty()) {
        report.add(ReportHeading{ReportTr::tr("Question")});
        report.add(ReportWords{QString::fromStdString(trial.question)});
    }
    const SeasonComparison& yield = answer.season.comparison(Response::YieldPerTray);
    addAnswerPage(report, yield, answer.season.review);
    report.add(ReportHeading{ReportTr::tr("How it was grown"), true});
    report.add(ReportWords{designWords(answer)});
    report.add(conditionsTable(yield));
    addProtocols(report, answer.season);
    addTrialNumbers(report, answer);
    addTastings(report, answer.season);
    addDiary(report, answer, photoFolder);
    addTrialGrounds(report, answer);
    addTrialSums(report, yield);
    report.add(ReportHeading{ReportTr::tr("Every tray of the trial")});
    report.add(layoutTable(answer));
    return report;
}

} // namespace plumule::ui
