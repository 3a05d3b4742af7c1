// Part of ui/review/report_parts.h: tables of a comparison.
#include "ui/review/report_parts.h"

#include "ui/report/report_text.h"
#include "ui/review/verdict_sentence.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <algorithm>

namespace plumule::ui {
namespace {

QString textOfName(const std::string& text)
{
    return QString::fromStdString(text);
}

QString partName(const ModelTerm& term, const ComparisonModel& model)
{
    switch (term.part) {
    case ModelPart::Medium:
        return ReportTr::tr("medium");
    case ModelPart::Feeding:
        return ReportTr::tr("feeding");
    case ModelPart::Variety:
        return ReportTr::tr("variety");
    case ModelPart::Trial:
        return ReportTr::tr("trial");
    case ModelPart::Block:
        return model.block == BlockKind::Shelf ? ReportTr::tr("shelf") : ReportTr::tr("block");
    case ModelPart::Column:
        return ReportTr::tr("place along the shelf");
    case ModelPart::SeedDensity:
        return ReportTr::tr("seed density");
    }
    return {};
}

QString placeText(const ModelTerm& term)
{
    if (term.place == TermPlace::Random) {
        return ReportTr::tr("in the model, as a sample of many");
    }
    if (term.place == TermPlace::Fixed) {
        return ReportTr::tr("in the model");
    }
    switch (term.why.value_or(WhyLeftOut::TooFewTrays)) {
    case WhyLeftOut::Confounded:
        return ReportTr::tr("left out: mixed with the medium");
    case WhyLeftOut::WithinBlocks:
        return ReportTr::tr("left out: the blocks account for it");
    case WhyLeftOut::PartlyUnknown:
        return ReportTr::tr("left out: not on record for every tray");
    case WhyLeftOut::TooFewTrays:
        return ReportTr::tr("left out: too few trays");
    }
    return {};
}

} // namespace

ReportTable meansTable(const SeasonComparison& comparison)
{
    ReportTable table;
    const int decimals = std::max(1, responseDecimals(comparison));
    table.caption = ReportTr::tr("Means, %1").arg(responseUnit(comparison));
    table.header = {ReportTr::tr("Medium"), ReportTr::tr("Trays"), ReportTr::tr("Sowings"),
                    ReportTr::tr("Mean"),   ReportTr::tr("Sown"),  ReportTr::tr("Thrown away")};
    for (std::size_t medium = 0; medium < comparison.means.size(); ++medium) {
        const ComparedMedium& mean = comparison.means[medium];
        const auto counts =
            std::find_if(comparison.discards.begin(), comparison.discards.end(),
                         [&](const DiscardsOfMedium& each) { return each.medium == medium; });
        const bool isKnown = counts != comparison.discards.end();
        table.rows.push_back({textOfName(mean.medium.name), QString::number(mean.trays),
                              QString::number(mean.trials), figureText(mean.mean, decimals),
                              isKnown ? QString::number(counts->sown) : kNoFigure,
                              isKnown ? QString::number(counts->discarded) : kNoFigure});
    }
    return table;
}

ReportTable pairsTable(const SeasonComparison& comparison)
{
    ReportTable table;
    const int decimals = std::max(1, responseDecimals(comparison));
    table.caption = ReportTr::tr("Every pair; intervals for all pairs together");
    table.header = {ReportTr::tr("Pair"),
                    ReportTr::tr("Sowings"),
                    ReportTr::tr("Difference, %"),
                    ReportTr::tr("Interval, %"),
                    ReportTr::tr("Here, %1").arg(responseUnit(comparison)),
                    ReportTr::tr("In words")};
    table.leftFrom = 5;
    const auto addRows = [&](const std::vector<MediaPair>& pairs, const QString& variety) {
        for (const MediaPair* each : pairsByWeight(pairs)) {
            const MediaPair& pair = *each;
            const QString name = pairName(pair, comparison);
            table.rows.push_back(
                {variety.isEmpty() ? name : QStringLiteral("%1: %2").arg(variety, name),
                 QString::number(pair.trialsShared), figureText(pair.percent, 1),
                 rangeText(pair.lowerPercent, pair.upperPercent, 1),
                 figureText(pair.difference, decimals), pairWords(pair, comparison)});
        }
    };
    for (const MediaPair& pair : comparison.groupPairs) {
        table.rows.push_back({groupPairName(pair, comparison), QString::number(pair.trialsShared),
                              figureText(pair.percent, 1),
                              rangeText(pair.lowerPercent, pair.upperPercent, 1),
                              figureText(pair.difference, decimals), pairWords(pair, comparison)});
    }
    addRows(comparison.pairs, QString());
    if (comparison.gate && comparison.gate->isOpen) {
        for (const VarietyPart& part : comparison.byVariety) {
            addRows(part.pairs, textOfName(part.variety));
        }
    }
    return table;
}

ReportTable modelMeansTable(const SeasonComparison& comparison)
{
    ReportTable table;
    const int decimals = std::max(1, responseDecimals(comparison));
    table.caption = ReportTr::tr("All trays in one model: %1, %2")
                        .arg(responseUnit(comparison), modelWords(comparison.model.model));
    table.header = {ReportTr::tr("Medium"), ReportTr::tr("Trays"), ReportTr::tr("Mean"),
                    ReportTr::tr("Standard error"), ReportTr::tr("95% interval")};
    for (const AdjustedMean& mean : comparison.model.means) {
        table.rows.push_back({textOfName(mean.medium.name), QString::number(mean.n),
                              figureText(mean.mean, decimals), figureText(mean.se, decimals),
                              rangeText(mean.lower, mean.upper, decimals)});
    }
    return table;
}

ReportTable modelTable(const TrayModel& model)
{
    ReportTable table;
    table.caption = ReportTr::tr("The model, each term after all others");
    table.header = {ReportTr::tr("Term"), ReportTr::tr("F"), ReportTr::tr("df"), ReportTr::tr("p"),
                    ReportTr::tr("Place")};
    table.leftFrom = 4;
    for (const ModelTerm& term : model.model.terms) {
        const QString df =
            term.df1 && term.df2
                ? ReportTr::tr("%1 and %2").arg(numberText(*term.df1, 0), numberText(*term.df2, 1))
                : kNoFigure;
        table.rows.push_back({partName(term, model.model), figureText(term.f, 2), df,
                              term.p ? pText(*term.p) : kNoFigure, placeText(term)});
    }
    return table;
}

} // namespace plumule::ui
