#include "ui/review/season_report.h"

#include "core/base/work_reason.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/report/report_text.h"
#include "ui/review/ageing_card.h"
#include "ui/review/payback_text.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <algorithm>
#include <set>

namespace plumule::ui {
namespace {

QString spanOfReport(const SeasonFilter& filter)
{
    return inReport("%1 to %2").arg(longDateText(filter.from), longDateText(filter.to));
}

std::vector<Protocol> protocolsOf(Journal& journal, const std::set<std::string>& names)
{
    std::vector<Protocol> protocols;
    const auto varieties = journal.varieties().all(true);
    if (!varieties) {
        return protocols;
    }
    for (const Variety& variety : *varieties) {
        if (names.count(variety.name) > 0) {
            if (const auto protocol = journal.varieties().protocol(variety.id)) {
                protocols.push_back(*protocol);
            }
        }
    }
    return protocols;
}

std::vector<std::string> namesIn(Journal& journal, const SeasonFilter& filter)
{
    std::vector<std::string> names;
    if (const auto varieties = journal.varieties().all(true)) {
        for (const Variety& each : *varieties) {
            if (std::count(filter.varieties.begin(), filter.varieties.end(), each.id) > 0) {
                names.push_back(each.name);
            }
        }
    }
    if (const auto trials = journal.trials().all()) {
        for (const Trial& each : *trials) {
            if (std::count(filter.trials.begin(), filter.trials.end(), each.id) > 0) {
                names.push_back(each.code);
            }
        }
    }
    if (const auto layout = journal.room().layout()) {
        std::set<ShelfId> told;
        for (const Spot& spot : layout->spots()) {
            if (std::count(filter.shelves.begin(), filter.shelves.end(), spot.shelfId) > 0 &&
                told.insert(spot.shelfId).second) {
                names.push_back(spot.rack + spot.shelf);
            }
        }
    }
    return names;
}

std::vector<TastingResult> tastingsIn(Journal& journal, const SeasonFilter& filter)
{
    std::vector<TastingResult> results;
    const auto panels = journal.tastings().list();
    if (!panels) {
        return results;
    }
    for (const PanelRow& row : *panels) {
        const bool isAsked =
            filter.trials.empty() ||
            (row.panel.trial &&
             std::count(filter.trials.begin(), filter.trials.end(), *row.panel.trial) > 0);
        if (row.panel.isOpen() || row.panel.on < filter.from || row.panel.on > filter.to ||
            !isAsked) {
            continue;
        }
        if (auto result = journal.tastings().result(row.panel.id)) {
            results.push_back(std::move(*result));
        }
    }
    return results;
}

QString questionOf(const SeasonReportFacts& facts)
{
    QString question = inReport("Which medium is worth buying again, by what %1 gave and "
                                "cost from %2?")
                           .arg(inReport("%n tray(s)", facts.review.trays))
                           .arg(spanOfReport(facts.review.filter));
    if (!facts.filterNames.empty()) {
        QStringList names;
        for (const std::string& name : facts.filterNames) {
            names << QString::fromStdString(name);
        }
        question += ' ' + inReport("Only %1.").arg(names.join(", "));
    }
    return question;
}

void addAnswer(Report& report, const SeasonReportFacts& facts)
{
    report.add(ReportHeading{inReport("Answer")});
    const bool isTold = !facts.yield.pairs.empty() &&
                        std::any_of(facts.review.media.begin(), facts.review.media.end(),
                                    [](const MediumSeason& each) { return each.yield.n >= 2; });
    const SeasonWords plain = wordsFor(facts.review);
    const VerdictWords told = verdictWords(facts.yield);
    report.add(ReportWords{isTold ? told.headline : plain.headline, WordsLook::Lead});
    report.add(ReportWords{isTold ? told.detail : plain.detail});
    if (!facts.cost.pairs.empty()) {
        report.add(ReportWords{inReport("Cost: %1").arg(verdictWords(facts.cost).headline)});
    }
    ReportFigures figures;
    for (const AdjustedMean& mean : facts.yield.means) {
        if (mean.mean && figures.figures.size() < 4) {
            figures.figures.push_back(
                {inReport("%1 g").arg(numberText(*mean.mean, responseDecimals(facts.yield))),
                 inReport("%1, %2, %3 g")
                     .arg(QString::fromStdString(mean.medium.name))
                     .arg(inReport("%n tray(s)", static_cast<int>(mean.n)))
                     .arg(rangeText(mean.lower, mean.upper, responseDecimals(facts.yield)))});
        }
    }
    report.add(figures);
}

void addCosts(Report& report, const SeasonReportFacts& facts)
{
    const ChartSpec means = adjustedMeansChart(facts.cost);
    const ChartSpec byUses = paybackChart(facts.paybacks, facts.review);
    const ReportTable parts = costTable(facts.review);
    if (parts.rows.empty()) {
        return;
    }
    report.add(ReportHeading{inReport("Cost")});
    report.add(ReportWords{verdictWords(facts.cost).headline});
    report.add(ReportChart{means, chartTitle(means)});
    report.add(pairsTable(facts.cost));
    report.add(ReportWords{paybackWords(facts.paybacks).join('\n')});
    report.add(ReportChart{byUses, chartTitle(byUses)});
    report.add(parts);
}

void addGrowth(Report& report, const SeasonReportFacts& facts)
{
    const auto variety = mostReadVariety(facts.heights);
    if (!variety) {
        return;
    }
    report.add(ReportHeading{inReport("Growth")});
    const ChartSpec curves = heightFitChart(facts.heights, *variety);
    QString name;
    for (const HeightFit& fit : facts.heights) {
        name = fit.varietyId == *variety ? QString::fromStdString(fit.variety) : name;
    }
    report.add(ReportChart{curves, QStringLiteral("%1: %2").arg(name, chartTitle(curves))});
    report.add(heightTable(facts.heights));
}

void addAgeing(Report& report, const SeasonReportFacts& facts)
{
    if (facts.ageing.empty()) {
        return;
    }
    report.add(ReportHeading{inReport("Do pieces yield less as they age?")});
    for (const PieceAgeing& each : facts.ageing) {
        report.add(ReportWords{ageingWords(each)});
        const ChartSpec chart = ageingChart(each);
        report.add(
            ReportChart{chart, QStringLiteral("%1: %2").arg(
                                   QString::fromStdString(each.medium.name), chartTitle(chart))});
    }
}

void addGrounds(Report& report, const SeasonReportFacts& facts)
{
    report.add(ReportHeading{inReport("Is it fair?")});
    addFairness(report, facts.yield);
    QStringList cautions = readerCautions(facts.review, facts.yield);
    cautions << allCheckWords(facts.yield);
    report.add(ReportList{cautions});
    report.add(ReportWords{leftOutText(facts.review), WordsLook::Muted});
    report.add(ReportHeading{inReport("What would make the next season's answer better")});
    report.add(ReportList{betterLines(facts.yield)});
    report.add(ReportCaution{inReport("Keep in mind"), safetyWords()});
}

} // namespace

Result<SeasonReportFacts> seasonReportFacts(Journal& journal, const SeasonFilter& filter,
                                            const Progress& progress)
{
    SeasonReportFacts facts;
    facts.madeOn = journal.clock().today();
    const auto layout = journal.room().layout();
    if (!layout) {
        return passOn(layout);
    }
    facts.room = layout->room.name;
    auto review = journal.review().season(filter, progress.part(0, 0.15));
    if (!review) {
        return passOn(review);
    }
    facts.review = std::move(*review);
    const auto compared = [&](Response response, double from, double to) {
        return journal.review().comparison(filter, response, std::nullopt, progress.part(from, to));
    };
    auto yield = compared(Response::YieldPerTray, 0.15, 0.35);
    auto cost = compared(Response::CostPerGram, 0.35, 0.55);
    if (!yield || !cost) {
        return passOn(yield ? cost.error() : yield.error());
    }
    facts.yield = std::move(*yield);
    facts.cost = std::move(*cost);
    facts.heights = journal.review()
                        .heightFits(filter, progress.part(0.55, 0.7))
                        .value_or(std::vector<HeightFit>());
    facts.paybacks = journal.review()
                         .payback(filter, {}, progress.part(0.7, 0.85))
                         .value_or(std::vector<Payback>());
    facts.ageing = journal.review()
                       .pieceAgeing(filter, progress.part(0.85, 0.95))
                       .value_or(std::vector<PieceAgeing>());
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    std::set<std::string> varieties;
    for (const MediumSeason& season : facts.review.media) {
        for (const SeasonTray& tray : season.trays) {
            varieties.insert(tray.variety);
        }
    }
    facts.protocols = protocolsOf(journal, varieties);
    facts.filterNames = namesIn(journal, filter);
    facts.tastings = tastingsIn(journal, filter);
    progress.report(1);
    return facts;
}

Report seasonReport(const SeasonReportFacts& facts)
{
    Report report;
    report.title = inReport("Season report");
    report.subtitle =
        QStringLiteral("%1  ·  %2  ·  %3")
            .arg(QString::fromStdString(facts.room), spanOfReport(facts.review.filter),
                 QStringList{inReport("%n tray(s)", facts.review.trays),
                             inReport("%n variet(ies)", facts.review.varieties),
                             inReport("%n trial(s)", facts.review.trials)}
                     .join(QStringLiteral(", ")));
    report.foot = inReport("Season report, %1; made on %2")
                      .arg(spanOfReport(facts.review.filter), longDateText(facts.madeOn));
    report.add(ReportHeading{inReport("Question")});
    report.add(ReportWords{questionOf(facts)});
    addAnswer(report, facts);
    if (facts.review.trays == 0) {
        return report;
    }
    report.add(ReportHeading{inReport("How it was grown")});
    report.add(conditionsTable(facts.yield));
    report.add(protocolTable(facts.protocols));
    report.add(ReportHeading{inReport("Yield")});
    addComparison(report, facts.yield);
    addCosts(report, facts);
    addGrowth(report, facts);
    addAgeing(report, facts);
    for (const TastingResult& tasting : facts.tastings) {
        addTasting(report, tasting);
    }
    addGrounds(report, facts);
    report.add(ReportHeading{inReport("Every tray that counts"), true});
    report.add(trayTable(facts.review));
    return report;
}

} // namespace plumule::ui
