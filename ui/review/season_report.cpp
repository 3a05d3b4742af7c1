#include "ui/review/season_report.h"

#include "core/base/work_reason.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/cost/payback_text.h"
#include "ui/report/report_text.h"
#include "ui/review/ageing_card.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <algorithm>

namespace plumule::ui {
namespace {

QString spanOfReport(const SeasonFilter& filter)
{
    return ReportTr::tr("%1 to %2").arg(longDateText(filter.from), longDateText(filter.to));
}

QString questionOf(const SeasonAnswer& answer)
{
    QString question = ReportTr::tr("Which medium is worth buying again, by what %1 gave and "
                                    "cost from %2?")
                           .arg(ReportTr::tr("%n tray(s)", nullptr, answer.review.trays))
                           .arg(spanOfReport(answer.review.filter));
    if (!answer.chosen.empty()) {
        QStringList names;
        for (const std::string& name : answer.chosen) {
            names << QString::fromStdString(name);
        }
        question += ' ' + ReportTr::tr("Only %1.").arg(names.join(", "));
    }
    return question;
}

void addCosts(Report& report, const SeasonAnswer& answer)
{
    const ReportTable parts = costTable(answer.review);
    if (parts.rows.empty()) {
        return;
    }
    const SeasonComparison& cost = answer.comparison(Response::CostPerGram);
    const ChartSpec means = adjustedMeansChart(cost);
    report.add(ReportHeading{ReportTr::tr("Cost")});
    report.add(ReportWords{verdictWords(cost).headline});
    report.add(ReportChart{means, chartTitle(means)});
    report.add(pairsTable(cost));
    addPaybacks(report, answer);
    report.add(parts);
}

void addYield(Report& report, const SeasonComparison& yield)
{
    report.add(ReportHeading{ReportTr::tr("Yield")});
    report.add(pairsTable(yield));
    const ChartSpec differences = differencesChart(yield);
    report.add(ReportChart{differences, chartTitle(differences)});
    if (yield.byTrial.size() > 1) {
        const ChartSpec varieties = varietiesChart(yield);
        report.add(ReportChart{varieties, chartTitle(varieties)});
    }
    report.add(ReportWords{varietyWords(yield)});
}

void addGrowth(Report& report, const SeasonAnswer& answer)
{
    const auto variety = mostReadVariety(answer.heights);
    if (!variety) {
        return;
    }
    report.add(ReportHeading{ReportTr::tr("Growth")});
    const ChartSpec curves = heightFitChart(answer.heights, *variety);
    QString name;
    for (const HeightFit& fit : answer.heights) {
        name = fit.varietyId == *variety ? QString::fromStdString(fit.variety) : name;
    }
    report.add(ReportChart{curves, QStringLiteral("%1: %2").arg(name, chartTitle(curves))});
    report.add(heightTable(answer.heights));
}

void addAgeing(Report& report, const SeasonAnswer& answer)
{
    if (answer.ageing.empty()) {
        return;
    }
    report.add(ReportHeading{ReportTr::tr("Do pieces yield less as they age?")});
    for (const PieceAgeing& each : answer.ageing) {
        report.add(ReportWords{ageingWords(each)});
        const ChartSpec chart = ageingChart(each);
        report.add(
            ReportChart{chart, QStringLiteral("%1: %2").arg(
                                   QString::fromStdString(each.medium.name), chartTitle(chart))});
    }
}

void addGrounds(Report& report, const SeasonAnswer& answer)
{
    const SeasonComparison& yield = answer.comparison(Response::YieldPerTray);
    report.add(ReportHeading{ReportTr::tr("Is it fair?")});
    addFairness(report, yield);
    QStringList cautions = readerCautions(answer.review, yield);
    report.add(ReportList{cautions});
    report.add(ReportWords{leftOutText(answer.review), WordsLook::Muted});
    report.add(ReportCaution{ReportTr::tr("Keep in mind"), safetyWords()});
}

} // namespace

SeasonQuestion reportQuestion(const SeasonFilter& filter)
{
    SeasonQuestion question;
    question.filter = filter;
    for (const Response response : {Response::YieldPerTray, Response::CostPerGram}) {
        question.asks.emplace_back().response = response;
    }
    question.parts = {SeasonPart::HeightFits, SeasonPart::Paybacks, SeasonPart::Ageing,
                      SeasonPart::Tastings, SeasonPart::Protocols};
    return question;
}

Report seasonReport(const SeasonAnswer& answer)
{
    Report report;
    report.title = ReportTr::tr("Season report");
    report.subtitle =
        QStringLiteral("%1  ·  %2  ·  %3")
            .arg(QString::fromStdString(answer.room), spanOfReport(answer.review.filter),
                 QStringList{ReportTr::tr("%n tray(s)", nullptr, answer.review.trays),
                             ReportTr::tr("%n variet(ies)", nullptr, answer.review.varieties),
                             ReportTr::tr("%n trial(s)", nullptr, answer.review.trials)}
                     .join(QStringLiteral(", ")));
    report.foot = ReportTr::tr("Season report, %1; made on %2")
                      .arg(spanOfReport(answer.review.filter), longDateText(answer.madeOn));
    report.add(ReportHeading{ReportTr::tr("Question")});
    report.add(ReportWords{questionOf(answer)});
    addAnswerPage(report, answer.comparison(Response::YieldPerTray), answer.review);
    if (answer.review.trays == 0) {
        return report;
    }
    const SeasonComparison& yield = answer.comparison(Response::YieldPerTray);
    report.add(ReportHeading{ReportTr::tr("How it was grown"), true});
    report.add(conditionsTable(yield));
    addProtocols(report, answer);
    addYield(report, yield);
    addCosts(report, answer);
    addGrowth(report, answer);
    addAgeing(report, answer);
    addTastings(report, answer);
    addGrounds(report, answer);
    addSums(report, yield);
    report.add(ReportHeading{ReportTr::tr("Every tray that counts"), true});
    report.add(trayTable(answer.review));
    return report;
}

} // namespace plumule::ui
