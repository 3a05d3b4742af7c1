#include "ui/chart/chart_text.h"

#include "ui/shared/text.h"

#include <QCoreApplication>
#include <QHash>

namespace plumule::ui {
namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Charts", text);
}

QString lookUp(const QHash<QString, const char*>& table, const std::string& key)
{
    const QString plain = QString::fromStdString(key);
    const auto found = table.constFind(plain);
    return found == table.cend() ? QString(plain).replace('_', ' ') : words(found.value());
}

} // namespace

QString chartTitle(const ChartSpec& spec)
{
    static const QHash<QString, const char*> kTitles = {
        {"yield_by_medium", QT_TRANSLATE_NOOP("Charts", "Yield by medium, each dot a tray")},
        {"yield_adjusted",
         QT_TRANSLATE_NOOP("Charts", "Yield by medium, each dot a tray; adjusted means")},
        {"cost_per_gram_adjusted",
         QT_TRANSLATE_NOOP("Charts", "Cost per gram by medium, each dot a tray")},
        {"height_adjusted",
         QT_TRANSLATE_NOOP("Charts", "Height by medium, each dot a tray; adjusted means")},
        {"height_curves", QT_TRANSLATE_NOOP("Charts", "Height by day, with fitted curves")},
        {"cost_by_medium", QT_TRANSLATE_NOOP("Charts", "Cost per gram by medium, each dot a tray")},
        {"height_by_day",
         QT_TRANSLATE_NOOP("Charts", "Height above the medium, mean of the trays")},
        {"cost_by_uses", QT_TRANSLATE_NOOP("Charts", "Cost per gram as a piece is used again")},
        {"trial_so_far", QT_TRANSLATE_NOOP("Charts", "This trial so far")},
        {"tray_heights", QT_TRANSLATE_NOOP("Charts", "Height above the medium")},
    };
    return lookUp(kTitles, spec.key);
}

QString axisTitle(const ChartAxis& axis)
{
    static const QHash<QString, const char*> kTitles = {
        {"yield", QT_TRANSLATE_NOOP("Charts", "%1 per tray")},
        {"day", QT_TRANSLATE_NOOP("Charts", "day of growth")},
        {"height", QT_TRANSLATE_NOOP("Charts", "height, %1")},
        {"cost_per_gram", QT_TRANSLATE_NOOP("Charts", "cost, %1")},
        {"uses", QT_TRANSLATE_NOOP("Charts", "uses of the piece")},
    };
    const QString title = lookUp(kTitles, axis.key);
    return title.contains("%1") ? title.arg(QString::fromStdString(axis.unit)) : title;
}

QString markText(const ChartMark& mark)
{
    if (mark.key == "pays_back") {
        return words("%1 pays back at use %2")
            .arg(QString::fromStdString(mark.name))
            .arg(qRound(mark.at));
    }
    return QString::fromStdString(mark.name);
}

QString chartDescription(const ChartSpec& spec)
{
    QStringList parts{chartTitle(spec) + '.'};
    for (const ChartSeries& series : spec.series) {
        if (spec.form == ChartForm::DotRows && series.form == SeriesForm::Intervals &&
            !series.intervals.empty()) {
            const ChartInterval& mean = series.intervals.front();
            parts << words("%1: mean %2, %3 to %4.")
                         .arg(QString::fromStdString(series.name), numberText(mean.mid, 2),
                              numberText(mean.low, 2), numberText(mean.high, 2));
        }
    }
    for (const ChartMark& mark : spec.marks) {
        parts << markText(mark) + '.';
    }
    return parts.join(' ');
}

} // namespace plumule::ui
