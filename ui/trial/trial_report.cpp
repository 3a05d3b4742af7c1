#include "ui/trial/trial_report.h"

#include "core/base/work_reason.h"
#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/report/report_text.h"
#include "ui/review/payback_text.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"
#include "ui/trial/plan_text.h"

#include <algorithm>
#include <set>

namespace plumule::ui {
namespace {

QString trialTitle(const Trial& trial)
{
    return QString::fromStdString(trial.code + "  " + trial.name);
}

std::vector<TastingResult> closedTastings(Journal& journal, TrialId trial)
{
    std::vector<TastingResult> results;
    const auto panels = journal.tastings().list(trial);
    if (!panels) {
        return results;
    }
    for (const PanelRow& row : *panels) {
        if (!row.panel.isOpen()) {
            if (auto result = journal.tastings().result(row.panel.id)) {
                results.push_back(std::move(*result));
            }
        }
    }
    return results;
}

std::vector<Protocol> protocolsGrown(Journal& journal, const TrialProgress& progress)
{
    std::set<VarietyId> grown;
    for (const TrialTray& tray : progress.trays) {
        grown.insert(tray.record.tray.variety);
    }
    if (progress.draft && grown.empty()) {
        grown.insert(progress.draft->plan.variety);
    }
    std::vector<Protocol> protocols;
    for (const VarietyId variety : grown) {
        if (const auto protocol = journal.varieties().protocol(variety)) {
            protocols.push_back(*protocol);
        }
    }
    return protocols;
}

QString designWords(const TrialReportFacts& facts)
{
    if (!facts.progress.draft) {
        return inReport("This trial was named, but not planned here: its trays were sown one by "
                        "one.");
    }
    const TrialPlan& plan = facts.progress.draft->plan;
    QString words = inReport("Design: %1, %2 of each treatment, places drawn by lot from the "
                             "number %3.")
                        .arg(nameOf(plan.design))
                        .arg(inReport("%n tray(s)", plan.traysEach))
                        .arg(plan.drawNumber);
    const auto& planned = facts.progress.draft->trays;
    const auto moved = std::count_if(planned.begin(), planned.end(),
                                     [](const PlannedTray& tray) { return tray.isMoved; });
    if (moved > 0) {
        words +=
            ' ' + (moved == 1 ? inReport("One tray was moved by hand after the draw.")
                              : inReport("%1 trays were moved by hand after the draw.").arg(moved));
    }
    return words;
}

QString mediumWords(const TrialTray& tray)
{
    const QString feeding = nameOf(tray.feeding);
    const QString medium = QString::fromStdString(tray.record.medium.name);
    return feeding.isEmpty() ? medium : medium + ' ' + feeding;
}

ReportTable layoutTable(const TrialReportFacts& facts)
{
    ReportTable table;
    table.header = {inReport("Block"),  inReport("Position"), inReport("Tray"),
                    inReport("Medium"), inReport("Place"),    inReport("Seed lot"),
                    inReport("State"),  inReport("Yield, g"), inReport("Residue, g")};
    table.rightFrom = 7;
    table.isDense = true;
    for (const TrialTray& tray : facts.progress.trays) {
        const Tray& sown = tray.record.tray;
        const QString state =
            sown.setAsideReason
                ? inReport("set aside: %1").arg(QString::fromStdString(*sown.setAsideReason))
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

void addTrialAnswer(Report& report, const TrialReportFacts& facts)
{
    report.add(ReportHeading{inReport("Answer")});
    const VerdictWords told = verdictWords(facts.yield);
    const SeasonWords plain = wordsFor(facts.review);
    const bool isTold = !facts.yield.pairs.empty() && facts.review.trays > 0;
    report.add(ReportWords{isTold ? told.headline : plain.headline, WordsLook::Lead});
    report.add(ReportWords{isTold ? told.detail : plain.detail});
    if (isTold && !facts.cost.pairs.empty()) {
        report.add(ReportWords{inReport("Cost: %1").arg(verdictWords(facts.cost).headline)});
    }
    ReportFigures figures;
    if (const auto variation = variationPercent(facts.yield)) {
        figures.figures.push_back({inReport("%1 %").arg(numberText(*variation, 1)),
                                   inReport("coefficient of variation: the spread between like "
                                            "trays over the mean")});
    }
    if (const auto least = leastRealDifference(facts.yield)) {
        figures.figures.push_back({inReport("%1 g").arg(numberText(*least, 1)),
                                   inReport("the least difference of two means that Tukey's "
                                            "method calls real")});
    }
    if (const ModelTerm* medium = facts.yield.model.find(ModelPart::Medium); medium && medium->f) {
        figures.figures.push_back(
            {inReport("F %1").arg(numberText(*medium->f, 2)),
             inReport("of the medium, p %1").arg(medium->p ? pText(*medium->p) : kNoFigure)});
    }
    if (const ModelTerm* block = facts.yield.model.find(ModelPart::Block); block && block->f) {
        figures.figures.push_back(
            {inReport("F %1").arg(numberText(*block->f, 2)),
             inReport("of the block, p %1").arg(block->p ? pText(*block->p) : kNoFigure)});
    }
    report.add(figures);
}

void addTrialNumbers(Report& report, const TrialReportFacts& facts)
{
    report.add(ReportHeading{inReport("Yield")});
    const auto blocks = blocksOf(facts.progress);
    if (blocks.size() > 1) {
        const ChartSpec byBlock = byBlockChart(facts.yield, blocks);
        report.add(ReportChart{byBlock, chartTitle(byBlock)});
    }
    addComparison(report, facts.yield);
    if (const auto variety = mostReadVariety(facts.heights)) {
        report.add(ReportHeading{inReport("Growth")});
        const ChartSpec curves = heightFitChart(facts.heights, *variety);
        report.add(ReportChart{curves, chartTitle(curves)});
        report.add(heightTable(facts.heights));
    }
    const ReportTable costs = costTable(facts.review);
    if (!costs.rows.empty()) {
        report.add(ReportHeading{inReport("Cost")});
        report.add(ReportWords{verdictWords(facts.cost).headline});
        const ChartSpec byUses = paybackChart(facts.paybacks, facts.review);
        report.add(ReportWords{paybackWords(facts.paybacks).join('\n')});
        report.add(ReportChart{byUses, chartTitle(byUses)});
        report.add(costs);
    }
    if (facts.residue.n > 1 && !facts.residue.pairs.empty()) {
        report.add(ReportHeading{inReport("Residue")});
        report.add(ReportWords{verdictWords(facts.residue).headline});
        report.add(meansTable(facts.residue));
    }
}

void addDiary(Report& report, const TrialReportFacts& facts)
{
    if (facts.diary.empty()) {
        return;
    }
    report.add(ReportHeading{inReport("Notes and photographs")});
    for (const TrialDay& day : facts.diary) {
        ReportPictures pictures;
        pictures.heading = longDateText(day.on);
        QStringList notes;
        for (const TrialDayOfMedium& medium : day.media) {
            const QString name = QString::fromStdString(medium.medium.name);
            for (const auto& [code, photo] : medium.photos) {
                const QString caption = QString::fromStdString(photo.caption);
                pictures.pictures.push_back(
                    {facts.photoFolder + '/' + QString::fromStdString(photo.fileName),
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

void addTrialGrounds(Report& report, const TrialReportFacts& facts)
{
    report.add(ReportHeading{inReport("Is it fair?")});
    addFairness(report, facts.yield);
    QStringList lines = readerCautions(facts.review, facts.yield);
    lines << allCheckWords(facts.yield);
    report.add(ReportList{lines});
    report.add(ReportWords{leftOutText(facts.review), WordsLook::Muted});
    report.add(ReportCaution{inReport("What is missing"), lackWords(facts.progress)});
    report.add(ReportHeading{inReport("What would make the next trial better")});
    report.add(ReportList{betterLines(facts.yield)});
    report.add(ReportCaution{inReport("Keep in mind"), safetyWords()});
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
        lines << (lack.gap == TrialGap::NoHeight
                      ? inReport("%1: no height on %2.").arg(code, shortDayText(lack.on))
                      : inReport("%1: not weighed, due on %2.").arg(code, shortDayText(lack.on)));
    }
    return lines;
}

Result<TrialReportFacts> trialReportFacts(Journal& journal, TrialId trial, const Progress& progress)
{
    TrialReportFacts facts;
    facts.madeOn = journal.clock().today();
    facts.photoFolder = QString::fromStdString(journal.photoFolder().string());
    auto standing = journal.trials().progress(trial);
    if (!standing) {
        return passOn(standing);
    }
    facts.progress = std::move(*standing);
    if (const auto layout = journal.room().layout()) {
        facts.room = layout->room.name;
    }
    const SeasonFilter filter = journal.review().filterOf(trial);
    auto review = journal.review().season(filter, progress.part(0, 0.2));
    if (!review) {
        return passOn(review);
    }
    facts.review = std::move(*review);
    const std::pair<Response, SeasonComparison*> asked[] = {{Response::YieldPerTray, &facts.yield},
                                                            {Response::CostPerGram, &facts.cost},
                                                            {Response::Residue, &facts.residue}};
    double done = 0.2;
    for (const auto& [response, answer] : asked) {
        auto compared = journal.review().comparison(filter, response, std::nullopt,
                                                    progress.part(done, done + 0.2));
        if (!compared) {
            return passOn(compared);
        }
        *answer = std::move(*compared);
        done += 0.2;
    }
    facts.heights = journal.review()
                        .heightFits(filter, progress.part(0.8, 0.9))
                        .value_or(std::vector<HeightFit>());
    facts.paybacks = journal.review()
                         .payback(filter, {}, progress.part(0.9, 1))
                         .value_or(std::vector<Payback>());
    facts.protocols = protocolsGrown(journal, facts.progress);
    facts.tastings = closedTastings(journal, trial);
    facts.diary = journal.trials().diary(trial).value_or(std::vector<TrialDay>());
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    return facts;
}

Report trialReport(const TrialReportFacts& facts)
{
    const Trial& trial = facts.progress.trial;
    Report report;
    report.title = trialTitle(trial);
    QStringList under{QString::fromStdString(facts.room), nameOf(facts.progress.state),
                      inReport("%n tray(s)", static_cast<int>(facts.progress.trays.size()))};
    if (trial.startedOn) {
        under.insert(1, longDateText(*trial.startedOn));
    }
    report.subtitle = under.join(QStringLiteral("  ·  "));
    report.foot = inReport("Trial %1; made on %2")
                      .arg(QString::fromStdString(trial.code), longDateText(facts.madeOn));
    if (!trial.question.empty()) {
        report.add(ReportHeading{inReport("Question")});
        report.add(ReportWords{QString::fromStdString(trial.question)});
    }
    addTrialAnswer(report, facts);
    report.add(ReportHeading{inReport("How it was grown")});
    report.add(ReportWords{designWords(facts)});
    report.add(conditionsTable(facts.yield));
    report.add(protocolTable(facts.protocols));
    addTrialNumbers(report, facts);
    for (const TastingResult& tasting : facts.tastings) {
        addTasting(report, tasting);
    }
    addDiary(report, facts);
    addTrialGrounds(report, facts);
    report.add(ReportHeading{inReport("Every tray of the trial")});
    report.add(layoutTable(facts));
    return report;
}

} // namespace plumule::ui
