#include "ui/review/report_parts.h"

#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/report/report_text.h"
#include "ui/review/payback_text.h"
#include "ui/review/verdict_text.h"
#include "ui/tasting/tasting_text.h"
#include "ui/text/text.h"

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

QString nameOfMedium(const Medium& medium)
{
    return QString::fromStdString(medium.name);
}

void addOneComparison(Report& report, const SeasonComparison& comparison)
{
    const ChartSpec means = adjustedMeansChart(comparison);
    const ChartSpec differences = differencesChart(comparison);
    report.add(ReportChart{means, chartTitle(means)});
    report.add(meansTable(comparison));
    report.add(ReportChart{differences, chartTitle(differences)});
    report.add(pairsTable(comparison));
    report.add(modelTable(comparison));
}

QString capital(QString text)
{
    if (!text.isEmpty()) {
        text[0] = text[0].toUpper();
    }
    return text;
}

ReportTable scoresTable(const AttributeResult& attribute)
{
    ReportTable table;
    table.caption = capital(attributeName(attribute.attribute));
    table.header = {inReport("Medium"), inReport("Mean"), inReport("Median"),
                    inReport("Sum of ranks")};
    for (const SampleScores& sample : attribute.samples) {
        table.rows.push_back({nameOfMedium(sample.medium), numberText(sample.mean, 2),
                              numberText(sample.median, 1), numberText(sample.rankSum, 1)});
    }
    if (attribute.friedman) {
        table.caption +=
            inReport(": Friedman's χ² %1, %2, W %3, %4 tasters")
                .arg(numberText(attribute.friedman->chiSquare, 2), pWords(attribute.p()),
                     numberText(attribute.friedman->kendallW, 2))
                .arg(attribute.tasters);
    }
    return table;
}

void addTasting(Report& report, const TastingResult& tasting)
{
    report.add(
        ReportHeading{inReport("Tasting: %1").arg(QString::fromStdString(tasting.panel.name))});
    const TastingAnswerWords words = answerWords(tasting);
    report.add(ReportWords{words.headline + ' ' + words.detail});
    report.add(ReportWords{inReport("%1, %2 tasters, %3.")
                               .arg(nameOf(tasting.panel.method))
                               .arg(tasting.tasters)
                               .arg(longDateText(tasting.panel.on)),
                           WordsLook::Muted});
    for (std::size_t i = 0; i < tasting.attributes.size(); ++i) {
        report.add(ReportWords{attributeWords(tasting, i)});
        // A picture of no difference would only invite to see one.
        if (i < tasting.charts.size() && tasting.attributes[i].isShown()) {
            report.add(ReportChart{tasting.charts[i],
                                   capital(attributeName(tasting.attributes[i].attribute))});
        }
        report.add(scoresTable(tasting.attributes[i]));
    }
    report.add(ReportCaution{inReport("What this tasting can't show"), caveatWords(tasting)});
}

} // namespace

void addFailed(Report& report, const QString& what, const Error& error)
{
    report.add(ReportCaution{inReport("Missing here"), {what + ' ' + sentence(error)}});
}

std::optional<double> variationPercent(const SeasonComparison& comparison)
{
    if (comparison.spread.from != SpreadFrom::TheseTrays || !comparison.spread.df ||
        comparison.grandMean <= 0) {
        return std::nullopt;
    }
    return comparison.spread.sd / comparison.grandMean * 100;
}

std::optional<double> leastRealDifference(const SeasonComparison& comparison)
{
    std::optional<double> least;
    for (const MediaPair& pair : comparison.pairs) {
        if (!pair.lower || !pair.upper || comparison.model.isBootstrap) {
            return std::nullopt;
        }
        const double half = (*pair.upper - *pair.lower) / 2;
        if (least && std::abs(half - *least) > 0.005 * *least) {
            return std::nullopt;
        }
        least = half;
    }
    return least;
}

void addComparison(Report& report, const SeasonComparison& comparison)
{
    if (comparison.byVariety.empty()) {
        addOneComparison(report, comparison);
        return;
    }
    for (const SeasonComparison& each : comparison.byVariety) {
        report.add(ReportWords{QStringLiteral("%1: %2").arg(QString::fromStdString(each.variety),
                                                            verdictWords(each).headline)});
        addOneComparison(report, each);
    }
}

QStringList allCheckWords(const SeasonComparison& comparison)
{
    const DataChecks& checks = comparison.checks;
    QStringList lines = checkWords(checks);
    if (checks.spread && checks.spread->isAlike) {
        lines << inReport("The media's trays spread alike (Brown–Forsythe F %1, p %2).")
                     .arg(numberText(checks.spread->f, 2), pText(checks.spread->p));
    }
    if (checks.normality && checks.normality->isNormal) {
        lines << inReport("What the model leaves over is bell-shaped enough (Shapiro–Wilk W %1, "
                          "p %2).")
                     .arg(numberText(checks.normality->w, 3), pText(checks.normality->p));
    }
    if (checks.oddTrays.empty() && checks.normality) {
        lines << inReport("No tray lies beyond chance from the others of its medium.");
    }
    if (checks.pWelch) {
        lines << inReport("Without the assumption of like spreads (Welch) the media differ with "
                          "p %1.")
                     .arg(pText(*checks.pWelch));
    }
    return lines;
}

void addFairness(Report& report, const SeasonComparison& comparison)
{
    const QStringList lines = fairnessWords(comparison);
    if (lines.isEmpty()) {
        report.add(ReportWords{
            inReport("Nothing else that is on record differed between the media's trays.")});
        return;
    }
    report.add(ReportCaution{inReport("What else differed"), lines});
}

void addTastings(Report& report, const SeasonAnswer& answer)
{
    if (!answer.tastings) {
        addFailed(report, inReport("The tastings can't be told."), answer.tastings.error());
        return;
    }
    for (const TastingOfSpan& each : answer.tastings->closed) {
        if (each.result) {
            addTasting(report, *each.result);
        } else {
            addFailed(report,
                      inReport("The tasting %1 can't be told.")
                          .arg(QString::fromStdString(each.panel.name)),
                      each.result.error());
        }
    }
}

void addPaybacks(Report& report, const SeasonAnswer& answer)
{
    if (!answer.paybacks) {
        addFailed(report, inReport("When pieces pay back can't be told."), answer.paybacks.error());
        return;
    }
    const ChartSpec byUses = paybackChart(*answer.paybacks, answer.review);
    report.add(ReportWords{paybackWords(*answer.paybacks).join('\n')});
    report.add(ReportChart{byUses, chartTitle(byUses)});
}

void addProtocols(Report& report, const SeasonAnswer& answer)
{
    if (!answer.protocols) {
        addFailed(report, inReport("The protocols can't be told."), answer.protocols.error());
        return;
    }
    report.add(protocolTable(*answer.protocols));
}

QStringList betterLines(const SeasonComparison& comparison)
{
    QStringList lines;
    for (const QString& advice : adviceWords(comparison.suggestions)) {
        lines << capital(advice) + '.';
    }
    int most = 0;
    for (const MediaPair& pair : comparison.pairs) {
        most = pair.needed ? std::max(most, pair.needed->each) : most;
    }
    const bool isAdvised =
        std::any_of(comparison.suggestions.begin(), comparison.suggestions.end(),
                    [](const Suggestion& each) { return each.advice == Advice::GrowMoreTrays; });
    if (most > 0 && !isAdvised) {
        lines << inReport("To tell the remaining pairs apart by the margin it takes about %1 trays "
                          "of each medium.")
                     .arg(most);
    }
    if (comparison.checks.oddTrays.empty() && lines.isEmpty()) {
        lines << inReport("The same again, to see whether the answer holds in another season.");
    }
    return lines;
}

QStringList readerCautions(const SeasonReview& review, const SeasonComparison& comparison)
{
    QStringList lines;
    for (const std::string& medium : review.tooFew) {
        lines << inReport("%1 has fewer than two trays: it can't be told apart from any.")
                     .arg(QString::fromStdString(medium));
    }
    if (comparison.withoutValue > 0) {
        lines << inReport("Of the trays that count %1 have no such value on record.")
                     .arg(comparison.withoutValue);
    }
    if (comparison.spread.from != SpreadFrom::TheseTrays && comparison.n > 0) {
        lines << inReport("The spread between trays is not these trays' own: it is %1.")
                     .arg(comparison.spread.from == SpreadFrom::Room
                              ? inReport("pooled from the room's earlier trays")
                              : inReport("taken as a tenth of the mean"));
    }
    for (const MediumSeason& season : review.media) {
        if (season.meanCost.unknownParts() > 0 && season.yield.n > 0) {
            lines << inReport("%1: some parts of the cost have no price, so its cost per gram is "
                              "too low.")
                         .arg(nameOfMedium(season.medium));
        }
    }
    return lines;
}

QStringList safetyWords()
{
    return {inReport("Yields say nothing of food safety. What may be sold is for local food law; "
                     "mould means discard, and trays and pieces are cleaned before they are "
                     "sanitised."),
            inReport("pH adjusters and sanitisers: gloves and eye protection, follow the label, "
                     "and never mix chlorine with acids. Electricity beside water belongs behind "
                     "an RCD (GFCI) and to a licensed electrician.")};
}

} // namespace plumule::ui
