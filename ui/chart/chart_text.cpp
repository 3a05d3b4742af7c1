#include "ui/chart/chart_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>
#include <QHash>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

class ChartTr
{
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

QString lookUp(const QHash<QString, const char*>& table, const std::string& key)
{
    const QString plain = QString::fromStdString(key);
    const auto found = table.constFind(plain);
    return found == table.cend() ? QString(plain).replace('_', ' ') : ChartTr::tr(found.value());
}

// By the key of a spec.
const QHash<QString, const char*> kChartTitles = {
    {"yield_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Yield by medium, each dot a tray; adjusted means")},
    {"yield_per_sown_adjusted",
     QT_TRANSLATE_NOOP("Charts",
                       "Yield by medium, each dot a harvested tray; the mean a tray sown")},
    {"cost_adjusted", QT_TRANSLATE_NOOP("Charts", "Cost per gram by medium, each dot a tray")},
    {"height_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Height by medium, each dot a tray; adjusted means")},
    {"height_curves", QT_TRANSLATE_NOOP("Charts", "Height by day, with fitted curves")},
    {"height_by_day", QT_TRANSLATE_NOOP("Charts", "Height above the medium, mean of the trays")},
    {"cost_by_uses", QT_TRANSLATE_NOOP("Charts", "Cost per gram as a piece is used again")},
    {"cost_parts", QT_TRANSLATE_NOOP("Charts", "Where the cost of a gram comes from")},
    {"price_history", QT_TRANSLATE_NOOP("Charts", "Price from day to day")},
    {"trial_so_far", QT_TRANSLATE_NOOP("Charts", "This trial so far")},
    {"tray_heights", QT_TRANSLATE_NOOP("Charts", "Height above the medium")},
    {"ratings_by_medium",
     QT_TRANSLATE_NOOP("Charts", "Ratings by medium, each dot a taster; the mean marked")},
    {"yield_per_area_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Yield per area by medium, each dot a tray; adjusted means")},
    {"yield_per_seed_adjusted",
     QT_TRANSLATE_NOOP("Charts",
                       "Yield per gram of seed by medium, each dot a tray; adjusted means")},
    {"yield_per_day_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Yield per day by medium, each dot a tray; adjusted means")},
    {"days_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Days to harvest by medium, each dot a tray; adjusted means")},
    {"residue_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Residue by medium, each dot a tray; adjusted means")},
    {"evenness_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Variation of height within a tray, by medium; adjusted means")},
    {"work_adjusted",
     QT_TRANSLATE_NOOP("Charts", "Work by medium, each dot a tray; adjusted means")},
    {"chance_by_trays", QT_TRANSLATE_NOOP("Charts", "Chance that the promise is met")},
    {"power_curve", QT_TRANSLATE_NOOP("Charts", "Chance of telling two media apart")},
    {"yield_by_uses",
     QT_TRANSLATE_NOOP("Charts", "Yield as pieces are used again, each dot a tray")},
    {"climate_temperature", QT_TRANSLATE_NOOP("Charts", "Temperature by day of growth")},
    {"climate_humidity", QT_TRANSLATE_NOOP("Charts", "Relative humidity by day of growth")},
    {"climate_vpd", QT_TRANSLATE_NOOP("Charts", "Vapour pressure deficit by day of growth")},
    {"climate_dli", QT_TRANSLATE_NOOP("Charts", "Light by day of growth")},
    {"forecast_coverage", QT_TRANSLATE_NOOP("Charts", "Weighed, in percent of what was foretold")},
    {"seasons_beside", QT_TRANSLATE_NOOP("Charts", "Yield by medium, season by season")},
};

} // namespace

QString chartTitle(const ChartSpec& spec)
{
    const QString key = QString::fromStdString(spec.key);
    if (key.endsWith("_differences")) {
        return ChartTr::tr("Differences between media, with their intervals and the margin");
    }
    if (key.endsWith("_by_trial")) {
        return ChartTr::tr("Do the trials agree?");
    }
    if (key.endsWith("_by_variety")) {
        return ChartTr::tr("By variety, in percent of the trial's mean; each dot a tray");
    }
    if (key.endsWith("_by_block")) {
        return ChartTr::tr("Block by block, each dot a tray");
    }
    return lookUp(kChartTitles, spec.key);
}

QString axisTitle(const ChartAxis& axis)
{
    static const QHash<QString, const char*> kTitles = {
        {"yield", QT_TRANSLATE_NOOP("Charts", "%1 per tray")},
        {"day", QT_TRANSLATE_NOOP("Charts", "day of growth")},
        {"height", QT_TRANSLATE_NOOP("Charts", "height, %1")},
        {"cost_per_gram", QT_TRANSLATE_NOOP("Charts", "cost, %1")},
        {"cost", QT_TRANSLATE_NOOP("Charts", "cost, %1")},
        {"price", QT_TRANSLATE_NOOP("Charts", "price, %1")},
        {"date", QT_TRANSLATE_NOOP("Charts", "day")},
        {"difference", QT_TRANSLATE_NOOP("Charts", "difference, %1")},
        {"percent_of_trial", QT_TRANSLATE_NOOP("Charts", "%1 of the trial's mean")},
        {"yield_per_sown", QT_TRANSLATE_NOOP("Charts", "%1 per tray sown")},
        {"uses", QT_TRANSLATE_NOOP("Charts", "uses of the piece")},
        {"score", QT_TRANSLATE_NOOP("Charts", "score, 9 is the best")},
        {"rank", QT_TRANSLATE_NOOP("Charts", "rank, 1 is the best")},
        {"yield_per_area", QT_TRANSLATE_NOOP("Charts", "yield, %1")},
        {"yield_per_seed", QT_TRANSLATE_NOOP("Charts", "yield per seed, %1")},
        {"yield_per_day", QT_TRANSLATE_NOOP("Charts", "yield, %1")},
        {"days", QT_TRANSLATE_NOOP("Charts", "days to harvest")},
        {"residue", QT_TRANSLATE_NOOP("Charts", "residue, %1")},
        {"evenness", QT_TRANSLATE_NOOP("Charts", "variation within a tray, %1")},
        {"work", QT_TRANSLATE_NOOP("Charts", "work per tray, %1")},
        {"trays_each", QT_TRANSLATE_NOOP("Charts", "trays of each medium")},
        {"trays_sown", QT_TRANSLATE_NOOP("Charts", "trays sown")},
        {"chance_met", QT_TRANSLATE_NOOP("Charts", "met, %1")},
        {"power", QT_TRANSLATE_NOOP("Charts", "chance, %1")},
        {"temperature", QT_TRANSLATE_NOOP("Charts", "temperature, %1")},
        {"humidity", QT_TRANSLATE_NOOP("Charts", "humidity, %1")},
        {"vpd", QT_TRANSLATE_NOOP("Charts", "deficit, %1")},
        {"dli", QT_TRANSLATE_NOOP("Charts", "light a day, %1")},
        {"harvests", QT_TRANSLATE_NOOP("Charts", "the latest harvests, in order")},
        {"weighed", QT_TRANSLATE_NOOP("Charts", "weighed, %1")},
    };
    const QString title = lookUp(kTitles, axis.key);
    return title.contains("%1") ? title.arg(QString::fromStdString(axis.unit)) : title;
}

QString markText(const ChartMark& mark)
{
    if (mark.key == "pays_back") {
        return ChartTr::tr("%1 pays back at use %2")
            .arg(QString::fromStdString(mark.name))
            .arg(qRound(mark.at));
    }
    if (mark.key == "power_wanted") {
        return ChartTr::tr("%1%, four times in five").arg(qRound(mark.at));
    }
    if (mark.key == "chance_wanted") {
        return ChartTr::tr("9 times in 10");
    }
    // The lower end is the same margin the other way.
    if (mark.key == "margin") {
        const int decimals = std::abs(mark.at - std::round(mark.at)) < 0.05 ? 0 : 1;
        return mark.at > 0 ? ChartTr::tr("your margin, ±%1 %").arg(numberText(mark.at, decimals))
                           : QString();
    }
    return QString::fromStdString(mark.name);
}

namespace {

// How long each row's bar is.
QStringList barsDescription(const ChartSpec& spec)
{
    QStringList lines;
    for (std::size_t row = 0; row < spec.rows.size(); ++row) {
        double end = 0;
        for (const ChartSeries& series : spec.series) {
            for (const ChartInterval& interval : series.intervals) {
                if (series.form == SeriesForm::Parts && interval.x == double(row)) {
                    end = std::max(end, interval.high);
                }
            }
        }
        if (end > 0) {
            lines << ChartTr::tr("%1: %2.").arg(QString::fromStdString(spec.rows[row]),
                                                numberText(end, 2));
        }
    }
    return lines;
}

} // namespace

QString chartDescription(const ChartSpec& spec)
{
    QStringList parts{chartTitle(spec) + '.'};
    for (const ChartSeries& series : spec.series) {
        const bool isInterval =
            series.form == SeriesForm::Intervals || series.form == SeriesForm::Pooled;
        if (spec.form == ChartForm::DotRows && isInterval && !series.intervals.empty()) {
            const ChartInterval& mean = series.intervals.front();
            const QString name = QString::fromStdString(series.name);
            parts << (mean.low == mean.high
                          ? ChartTr::tr("%1: mean %2.").arg(name, numberText(mean.mid, 2))
                          : ChartTr::tr("%1: mean %2, %3 to %4.")
                                .arg(name, numberText(mean.mid, 2), numberText(mean.low, 2),
                                     numberText(mean.high, 2)));
        }
    }
    parts << barsDescription(spec);
    for (const ChartMark& mark : spec.marks) {
        const QString text = markText(mark);
        if (!text.isEmpty()) {
            parts << text + '.';
        }
    }
    return parts.join(' ');
}

} // namespace plumule::ui
