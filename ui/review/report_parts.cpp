#include "ui/review/report_parts.h"

#include "core/review/charts/comparison_charts.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/cost/payback_text.h"
#include "ui/report/report_text.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_sentence.h"
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
    table.header = {ReportTr::tr("Medium"), ReportTr::tr("Mean"), ReportTr::tr("Median"),
                    ReportTr::tr("Sum of ranks")};
    for (const SampleScores& sample : attribute.samples) {
        table.rows.push_back({nameOfMedium(sample.medium), numberText(sample.mean, 2),
                              numberText(sample.median, 1), numberText(sample.rankSum, 1)});
    }
    if (attribute.friedman) {
        table.caption =
            ReportTr::tr("%1: Friedman's χ² %2, %3, W %4, %n taster(s)", nullptr, attribute.tasters)
                .arg(table.caption, numberText(attribute.friedman->chiSquare, 2),
                     pWords(attribute.p()), numberText(attribute.friedman->kendallW, 2));
    }
    return table;
}

void addTasting(Report& report, const TastingResult& tasting)
{
    report.add(
        ReportHeading{ReportTr::tr("Tasting: %1").arg(QString::fromStdString(tasting.panel.name))});
    const TastingAnswerWords words = answerWords(tasting);
    report.add(ReportWords{words.headline + ' ' + words.detail});
    report.add(ReportWords{ReportTr::tr("%1, %n taster(s), %2.", nullptr, tasting.tasters)
                               .arg(nameOf(tasting.panel.method), longDateText(tasting.panel.on)),
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
    report.add(ReportCaution{ReportTr::tr("What this tasting can't show"), caveatWords(tasting)});
}

} // namespace

void addFailed(Report& report, const QString& what, const Error& error)
{
    report.add(ReportCaution{ReportTr::tr("Missing here"), {what + ' ' + sentence(error)}});
}

std::optional<double> variationPercent(const SeasonComparison& comparison)
{
    const TrayModel& model = comparison.model;
    if (!model.df || model.sd <= 0 || comparison.grandMean <= 0) {
        return std::nullopt;
    }
    return model.sd / comparison.grandMean * 100;
}

std::optional<double> leastRealDifference(const SeasonComparison& comparison)
{
    std::optional<double> least;
    for (const ModelPair& pair : comparison.model.pairs) {
        if (!pair.lower || !pair.upper) {
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

std::size_t leadingPair(const SeasonComparison& comparison)
{
    const auto weight = [](const MediaPair& pair) {
        const bool isClear =
            pair.verdict == stats::Verdict::More || pair.verdict == stats::Verdict::Less;
        return std::tuple(isClear, pair.percent.has_value(), std::abs(pair.percent.value_or(0)));
    };
    std::size_t leading = 0;
    for (std::size_t i = 1; i < comparison.pairs.size(); ++i) {
        if (weight(comparison.pairs[i]) > weight(comparison.pairs[leading])) {
            leading = i;
        }
    }
    return leading;
}

namespace {

// "+8.5 % (−1 to 19)"
std::string differenceCell(const MediaPair& pair)
{
    const QString percent =
        QStringLiteral("%1%2 %").arg(*pair.percent > 0 ? "+" : "", numberText(*pair.percent, 1));
    const QString between = rangeText(pair.lowerPercent, pair.upperPercent, 0);
    return (pair.lowerPercent ? QStringLiteral("%1 (%2)").arg(percent, between) : percent)
        .toStdString();
}

std::string hereCell(const MediaPair& pair, const SeasonComparison& comparison)
{
    if (!pair.difference) {
        return {};
    }
    const QString number = numberText(*pair.difference, responseDecimals(comparison));
    return ((*pair.difference > 0 ? "+" : "") + number).toStdString();
}

} // namespace

ChartSpec sowingsChart(const SeasonComparison& comparison, std::size_t pair)
{
    ChartSpec spec = trialsChart(comparison, pair);
    const MediaPair& together = comparison.pairs[pair];
    ChartColumn trays{ReportTr::tr("trays").toStdString(), {}};
    ChartColumn difference{ReportTr::tr("difference").toStdString(), {}};
    ChartColumn here{responseUnit(comparison).toStdString(), {}};
    const auto addCells = [&](int ofA, int ofB, const MediaPair& one) {
        trays.cells.push_back(QStringLiteral("%1, %2").arg(ofA).arg(ofB).toStdString());
        difference.cells.push_back(differenceCell(one));
        here.cells.push_back(hereCell(one, comparison));
    };
    const ShownSowings shown = shownSowings(comparison, pair);
    for (const SowingPair& row : shown.rows) {
        addCells(row.part->trays[row.pair->a], row.part->trays[row.pair->b], *row.pair);
    }
    if (!spec.rows.empty() && spec.rows.back().empty()) {
        spec.rows.back() = ReportTr::tr("All together").toStdString();
        addCells(shown.trays.first, shown.trays.second, together);
    }
    spec.columns = {std::move(trays), std::move(difference), std::move(here)};
    return spec;
}

QString leftOutWords(const SeasonComparison& comparison, std::size_t pair)
{
    const ShownSowings shown = shownSowings(comparison, pair);
    return shown.rows.size() == shown.all
               ? QString()
               : ReportTr::tr("%1 of %2 sowings are drawn, trials first, then the newest; all of "
                              "them count.")
                     .arg(shown.rows.size())
                     .arg(shown.all);
}

void addAnswerPage(Report& report, const SeasonComparison& comparison, const SeasonReview& review)
{
    report.add(ReportHeading{ReportTr::tr("Answer")});
    if (comparison.pairs.empty()) {
        const SeasonWords plain = wordsFor(review);
        report.add(ReportWords{plain.headline, WordsLook::Lead});
        report.add(ReportWords{plain.detail});
        return;
    }
    const VerdictWords told = verdictWords(comparison);
    report.add(ReportWords{told.discards.join('\n')});
    report.add(ReportWords{told.headline, WordsLook::Lead});
    report.add(ReportWords{told.detail});
    report.add(ReportWords{cautionWords(comparison).join(' '), WordsLook::Muted});
    const bool isOfSeveral = comparison.byTrial.size() > 1;
    const std::size_t leading = leadingPair(comparison);
    const ChartSpec chart =
        isOfSeveral ? sowingsChart(comparison, leading) : adjustedMeansChart(comparison);
    report.add(ReportChart{
        chart, isOfSeveral ? QStringLiteral("%1 %2").arg(
                                 chartTitle(chart), pairName(comparison.pairs[leading], comparison))
                           : chartTitle(chart)});
    if (const QString leftOut = leftOutWords(comparison, leading);
        isOfSeveral && !leftOut.isEmpty()) {
        report.add(ReportWords{leftOut, WordsLook::Muted});
    }
    report.add(meansTable(comparison));
    report.add(ReportHeading{ReportTr::tr("What to do next")});
    report.add(ReportList{betterLines(comparison)});
}

void addSums(Report& report, const SeasonComparison& comparison)
{
    if (comparison.n == 0) {
        return;
    }
    report.add(ReportHeading{ReportTr::tr("The sums")});
    report.add(ReportList{sumsWords(comparison) + allCheckWords(comparison)});
    report.add(modelMeansTable(comparison));
    report.add(modelTable(comparison.model));
}

QStringList allCheckWords(const SeasonComparison& comparison)
{
    const DataChecks& checks = comparison.model.checks;
    QStringList lines = oddTrayWords(checks);
    if (checks.spread) {
        const char* text =
            checks.spread->isAlike
                ? QT_TRANSLATE_NOOP("Report", "The media's trays spread alike "
                                              "(Brown–Forsythe F %1, p %2).")
                : QT_TRANSLATE_NOOP("Report", "The media's trays do not spread alike "
                                              "(Brown–Forsythe F %1, p %2).");
        lines << ReportTr::tr(text).arg(numberText(checks.spread->f, 2), pText(checks.spread->p));
    }
    if (checks.normality) {
        const char* text =
            checks.normality->isNormal
                ? QT_TRANSLATE_NOOP("Report", "What the model of trays leaves over is bell-shaped "
                                              "enough (Shapiro–Wilk W %1, p %2).")
                : QT_TRANSLATE_NOOP("Report", "What the model of trays leaves over is not evenly "
                                              "bell-shaped (Shapiro–Wilk W %1, p %2).");
        lines << ReportTr::tr(text).arg(numberText(checks.normality->w, 3),
                                        pText(checks.normality->p));
    }
    if (checks.oddTrays.empty() && checks.normality) {
        lines << ReportTr::tr("No tray lies beyond chance from the others of its medium.");
    }
    if (checks.pWelch) {
        lines << ReportTr::tr(
                     "Without the assumption of like spreads (Welch) the media differ with "
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
            ReportTr::tr("Nothing else that is on record differed between the media's trays.")});
        return;
    }
    report.add(ReportCaution{ReportTr::tr("What else differed"), lines});
}

void addTastings(Report& report, const SeasonAnswer& answer)
{
    if (!answer.tastings) {
        addFailed(report, ReportTr::tr("The tastings can't be told."), answer.tastings.error());
        return;
    }
    for (const TastingOfSpan& each : answer.tastings->closed) {
        if (each.result) {
            addTasting(report, *each.result);
        } else {
            addFailed(report,
                      ReportTr::tr("The tasting %1 can't be told.")
                          .arg(QString::fromStdString(each.panel.name)),
                      each.result.error());
        }
    }
}

void addPaybacks(Report& report, const SeasonAnswer& answer)
{
    const ChartSpec byUses = paybackChart(answer.paybacks, answer.review);
    report.add(ReportWords{paybackWords(answer).join('\n')});
    report.add(ReportChart{byUses, chartTitle(byUses)});
}

void addProtocols(Report& report, const SeasonAnswer& answer)
{
    if (!answer.protocols) {
        addFailed(report, ReportTr::tr("The protocols can't be told."), answer.protocols.error());
        return;
    }
    report.add(protocolTable(*answer.protocols));
}

QStringList betterLines(const SeasonComparison& comparison)
{
    QStringList lines;
    lines << adviceSentences(comparison);
    const auto open = std::find_if(comparison.pairs.begin(), comparison.pairs.end(),
                                   [](const MediaPair& pair) { return pair.more.has_value(); });
    if (open != comparison.pairs.end()) {
        lines << ReportTr::tr("To tell the remaining pairs apart by the margin: %1")
                     .arg(moreSentence(*open));
    }
    if (lines.isEmpty()) {
        lines << ReportTr::tr("The same again, to see whether the answer holds in another season.");
    }
    return lines;
}

QStringList readerCautions(const SeasonReview& review, const SeasonComparison& comparison)
{
    QStringList lines;
    for (const std::string& medium : review.tooFew) {
        lines << ReportTr::tr("%1 has fewer than two trays: it can't be told apart from any.")
                     .arg(QString::fromStdString(medium));
    }
    if (comparison.withoutValue > 0) {
        lines << ReportTr::tr("No such value is on record of %n tray(s) that count.", nullptr,
                              comparison.withoutValue);
    }
    for (const MediumSeason& season : review.media) {
        if (season.meanCost.unknownParts() > 0 && season.yield.n > 0) {
            lines << ReportTr::tr(
                         "%1: some parts of the cost have no price, so its cost per gram is "
                         "too low.")
                         .arg(nameOfMedium(season.medium));
        }
    }
    return lines;
}

QStringList safetyWords()
{
    return {
        ReportTr::tr("Yields say nothing of food safety. What may be sold is for local food law; "
                     "mould means discard, and trays and pieces are cleaned before they are "
                     "sanitised."),
        ReportTr::tr("pH adjusters and sanitisers: gloves and eye protection, follow the label, "
                     "and never mix chlorine with acids. Electricity beside water belongs behind "
                     "an RCD (GFCI) and to a licensed electrician.")};
}

} // namespace plumule::ui
