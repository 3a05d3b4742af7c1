// Part of ui/review/report_parts.h: tables.
#include "ui/review/report_parts.h"

#include "ui/report/report_text.h"
#include "ui/review/verdict_text.h"
#include "ui/text/text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace plumule::ui {
namespace {

QString textOf(const std::string& text)
{
    return QString::fromStdString(text);
}

QString conditionName(Aspect aspect)
{
    switch (aspect) {
    case Aspect::Feeding:
        return ReportTr::tr("Feeding");
    case Aspect::Variety:
        return ReportTr::tr("Variety");
    case Aspect::Trial:
        return ReportTr::tr("Trial");
    case Aspect::SeedLot:
        return ReportTr::tr("Seed lot");
    case Aspect::SeedDensity:
        return ReportTr::tr("Seed, g/m²");
    case Aspect::Shelf:
        return ReportTr::tr("Shelf");
    case Aspect::Season:
        return ReportTr::tr("Month of sowing");
    case Aspect::DaysGrown:
        return ReportTr::tr("Day of growth when cut");
    case Aspect::PieceUses:
        return ReportTr::tr("Use of the piece");
    case Aspect::Person:
        return ReportTr::tr("Sown by");
    case Aspect::Temperature:
        return ReportTr::tr("Mean temperature, °C");
    case Aspect::Vpd:
        return ReportTr::tr("Vapour pressure deficit, kPa");
    case Aspect::DailyLight:
        return ReportTr::tr("Daily light, mol/m²");
    }
    return {};
}

QString levelName(const AspectLevel& level)
{
    if (level.name.empty()) {
        return ReportTr::tr("none");
    }
    if (level.name == "nutrient") {
        return ReportTr::tr("nutrient");
    }
    if (level.name == "no_nutrient") {
        return ReportTr::tr("no nutrient");
    }
    return textOf(level.name);
}

QString numbersText(const AspectNumbers& numbers, Aspect aspect)
{
    const bool isClimate =
        aspect == Aspect::Temperature || aspect == Aspect::Vpd || aspect == Aspect::DailyLight;
    const int ends = aspect == Aspect::Vpd ? 2 : isClimate ? 1 : 0;
    const bool isOne = numbers.high - numbers.low < (aspect == Aspect::Vpd ? 0.005 : 0.05);
    if (isOne) {
        return numberText(numbers.mean, ends);
    }
    return ReportTr::tr("%1 (%2 to %3)")
        .arg(numberText(numbers.mean, std::max(1, ends)), numberText(numbers.low, ends),
             numberText(numbers.high, ends));
}

QString conditionText(const AspectOfMedium& aspect, Aspect which)
{
    QStringList parts;
    if (aspect.numbers) {
        parts << numbersText(*aspect.numbers, which);
    }
    constexpr std::size_t kMost = 5;
    for (std::size_t i = 0; i < std::min(kMost, aspect.levels.size()); ++i) {
        const AspectLevel& level = aspect.levels[i];
        parts << (aspect.levels.size() == 1
                      ? levelName(level)
                      : QStringLiteral("%1 (%2)").arg(levelName(level)).arg(level.trays));
    }
    if (aspect.levels.size() > kMost) {
        parts << ReportTr::tr("%1 more").arg(aspect.levels.size() - kMost);
    }
    if (aspect.unknown > 0) {
        parts << ReportTr::tr("%1 not on record").arg(aspect.unknown);
    }
    return parts.isEmpty() ? kNoFigure : parts.join(", ");
}

QString lengthText(int minutes)
{
    const double days = minutes / double(kMinutesPerDay);
    if (minutes % kMinutesPerDay == 0 || minutes > 3 * kMinutesPerDay) {
        return ReportTr::tr("%1 d").arg(numberText(days, minutes % kMinutesPerDay == 0 ? 0 : 1));
    }
    return ReportTr::tr("%1 h").arg(numberText(minutes / 60.0, minutes % 60 == 0 ? 0 : 1));
}

QString waterText(const ProtocolStage& stage)
{
    if (stage.method == WateringMethod::None) {
        return {};
    }
    QString text =
        stage.method == WateringMethod::Mist ? ReportTr::tr("misted") : ReportTr::tr("watered");
    text +=
        ' ' + (stage.wateringsPerDay == 0 ? ReportTr::tr("as needed")
                                          : ReportTr::tr("%1× a day").arg(stage.wateringsPerDay));
    if (stage.amount) {
        text += QStringLiteral(", %1 mL").arg(numberText(inMillilitres(*stage.amount), 0));
    }
    return text + ", " + nameOf(stage.water);
}

using CostPart = std::pair<const char*, std::optional<double> TrayCost::*>;
constexpr std::array<CostPart, 9> kCostParts{
    {{QT_TRANSLATE_NOOP("Report", "Seed"), &TrayCost::seed},
     {QT_TRANSLATE_NOOP("Report", "Medium"), &TrayCost::medium},
     {QT_TRANSLATE_NOOP("Report", "Washing of pieces"), &TrayCost::washing},
     {QT_TRANSLATE_NOOP("Report", "Nutrient"), &TrayCost::nutrient},
     {QT_TRANSLATE_NOOP("Report", "Water"), &TrayCost::water},
     {QT_TRANSLATE_NOOP("Report", "Light"), &TrayCost::light},
     {QT_TRANSLATE_NOOP("Report", "Work"), &TrayCost::labour},
     {QT_TRANSLATE_NOOP("Report", "Packaging"), &TrayCost::packaging},
     {QT_TRANSLATE_NOOP("Report", "Waste"), &TrayCost::waste}}};

struct CostRow
{
    QString name;
    int decimals = 0;
    std::function<std::optional<double>(const MediumSeason&)> read;
};

std::vector<CostRow> costRows()
{
    std::vector<CostRow> rows;
    rows.reserve(std::size(kCostParts));
    for (const auto& [name, part] : kCostParts) {
        rows.push_back({ReportTr::tr(name), 3, [part = part](const MediumSeason& season) {
                            return season.meanCost.*part;
                        }});
    }
    rows.push_back({ReportTr::tr("All that is known"), 2, [](const MediumSeason& season) {
                        const double total = season.meanCost.total();
                        return total > 0 ? std::optional(total) : std::nullopt;
                    }});
    rows.push_back({ReportTr::tr("Cost of a gram"), 4,
                    [](const MediumSeason& season) { return season.costPerGram; }});
    rows.push_back({ReportTr::tr("Pays back at use"), 0, [](const MediumSeason& season) {
                        return season.paysBackAt ? std::optional<double>(*season.paysBackAt)
                                                 : std::nullopt;
                    }});
    return rows;
}

} // namespace

QString figureText(std::optional<double> value, int decimals)
{
    return value && std::isfinite(*value) ? numberText(*value, decimals) : kNoFigure;
}

QString rangeText(std::optional<double> low, std::optional<double> high, int decimals)
{
    return low && high ? ReportTr::tr("%1 to %2")
                             .arg(numberText(*low, decimals), numberText(*high, decimals))
                       : kNoFigure;
}

ReportTable conditionsTable(const SeasonComparison& comparison)
{
    ReportTable table;
    table.header = {QString()};
    for (const ComparedMedium& mean : comparison.means) {
        table.header << textOf(mean.medium.name);
    }
    table.rightFrom = 1000;
    QStringList counts{ReportTr::tr("Trays")};
    for (const ComparedMedium& mean : comparison.means) {
        counts << QString::number(mean.trays);
    }
    table.rows.push_back(counts);
    for (const Finding& finding : comparison.fairness) {
        QStringList row{conditionName(finding.aspect)};
        for (std::size_t medium = 0; medium < comparison.means.size(); ++medium) {
            const auto found =
                std::find_if(finding.media.begin(), finding.media.end(),
                             [&](const AspectOfMedium& each) { return each.medium == medium; });
            row << (found == finding.media.end() ? kNoFigure
                                                 : conditionText(*found, finding.aspect));
        }
        table.rows.push_back(row);
    }
    return table;
}

ReportTable costTable(const SeasonReview& review)
{
    ReportTable table;
    const QString currency = textOf(review.currency);
    table.caption =
        ReportTr::tr("Where a tray's cost comes from, %1, the mean of its trays").arg(currency);
    table.header = {ReportTr::tr("Part")};
    for (const MediumSeason& season : review.media) {
        table.header << textOf(season.medium.name);
    }
    for (const CostRow& cost : costRows()) {
        QStringList row{cost.name};
        bool hasAny = false;
        for (const MediumSeason& season : review.media) {
            const std::optional<double> value = cost.read(season);
            hasAny = hasAny || value.has_value();
            row << figureText(value, cost.decimals);
        }
        if (hasAny) {
            table.rows.push_back(row);
        }
    }
    return table;
}

ReportTable heightTable(const std::vector<HeightFit>& fits)
{
    ReportTable table;
    table.caption = ReportTr::tr(
        "Growth curves, with 95% intervals over trays, from three sowings on over sowings");
    table.header = {ReportTr::tr("Variety, medium"),
                    ReportTr::tr("Trays, sowings"),
                    ReportTr::tr("Curve"),
                    ReportTr::tr("Full height, mm"),
                    ReportTr::tr("Top rate, mm a day"),
                    ReportTr::tr("Day of 90%"),
                    ReportTr::tr("Day of a height all reach")};
    for (const HeightFit& fit : fits) {
        const QString name =
            QStringLiteral("%1, %2").arg(textOf(fit.variety), textOf(fit.medium.name));
        const QString counts = QStringLiteral("%1, %2").arg(fit.trays).arg(fit.sowings);
        if (fit.curve.empty()) {
            table.rows.push_back({name, counts, ReportTr::tr("none fits"), kNoFigure, kNoFigure,
                                  kNoFigure, kNoFigure});
            continue;
        }
        const QString later = ReportTr::tr("after the last reading");
        const auto number = [](const FittedNumber& value, int decimals) {
            const QString text = numberText(value.value, decimals);
            return value.lower ? QStringLiteral("%1 (%2)").arg(
                                     text, rangeText(*value.lower, *value.upper, decimals))
                               : text;
        };
        const QString shared = fit.sharedHeight ? ReportTr::tr("%1 mm: %2")
                                                      .arg(numberText(fit.sharedHeight->height, 0),
                                                           number(fit.sharedHeight->day, 1))
                                                : kNoFigure;
        table.rows.push_back(
            {name, counts, textOf(fit.curve), fit.fullHeight ? number(*fit.fullHeight, 0) : later,
             number(fit.topRate, 1), fit.dayAt90 ? number(*fit.dayAt90, 1) : later, shared});
    }
    return table;
}

ReportTable protocolTable(const std::vector<Protocol>& protocols)
{
    ReportTable table;
    table.caption = ReportTr::tr("Protocols as they stand now");
    table.header = {ReportTr::tr("Variety"), ReportTr::tr("Seed a tray"), ReportTr::tr("Stages")};
    table.leftFrom = 2;
    for (const Protocol& protocol : protocols) {
        QStringList stages;
        for (const ProtocolStage& stage : protocol.stages) {
            const QString water = waterText(stage);
            stages << QStringLiteral("%1 %2%3").arg(
                nameOf(stage.stage), lengthText(stage.lengthMinutes),
                water.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(water));
        }
        table.rows.push_back(
            {textOf(protocol.variety.name),
             protocol.variety.seedPerTray
                 ? ReportTr::tr("%1 g").arg(numberText(inGrams(*protocol.variety.seedPerTray), 0))
                 : kNoFigure,
             stages.join(QStringLiteral(" · "))});
    }
    return table;
}

ReportTable trayTable(const SeasonReview& review)
{
    ReportTable table;
    table.header = {ReportTr::tr("Tray"),
                    ReportTr::tr("Medium"),
                    ReportTr::tr("Variety"),
                    ReportTr::tr("Trial"),
                    ReportTr::tr("Cut on"),
                    ReportTr::tr("Day"),
                    ReportTr::tr("Yield, g"),
                    ReportTr::tr("Residue, g"),
                    ReportTr::tr("Cost, %1").arg(textOf(review.currency))};
    table.rightFrom = 5;
    table.isDense = true;
    for (const MediumSeason& season : review.media) {
        for (const SeasonTray& tray : season.trays) {
            table.rows.push_back({textOf(tray.code), textOf(season.medium.name),
                                  textOf(tray.variety), textOf(tray.trial.value_or("")),
                                  longDateText(tray.harvestedOn), QString::number(tray.days),
                                  figureText(tray.yieldGrams, 1), figureText(tray.residueGrams, 0),
                                  figureText(tray.cost, 2)});
        }
    }
    return table;
}

} // namespace plumule::ui
