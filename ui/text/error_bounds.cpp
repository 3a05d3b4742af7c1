// Part of ui/text/error_words.h: what no journal holds, journals that are not as Plumule makes
// them, and backups.
#include "ui/text/error_words.h"

#include "core/base/quantity.h"
#include "ui/text/table_text.h"

#include <QLocale>

#include <cmath>

namespace plumule::ui {

namespace {

// Three figures, thousands set apart.
QString shownNumber(double value)
{
    const double size = std::abs(value);
    if (size >= 1e15) {
        return Errors::tr("more than can be counted");
    }
    const int decimals = size >= 100 || size == 0 ? 0 : size >= 10 ? 1 : 2;
    QString text = QLocale::c().toString(value, 'f', decimals).replace('-', QChar(0x2212));
    while (text.contains('.') && (text.endsWith('0') || text.endsWith('.'))) {
        text.chop(1);
    }
    return text;
}

// A number of a column in the units that growers reckon in: what one is in another system stands
// beside it.
QString numberWords(const QString& column, double value)
{
    const auto both = [&](double metric, const char* metricUnit, double customary,
                          const char* customaryUnit) {
        return QStringLiteral("%1 %2 (%3 %4)")
            .arg(shownNumber(metric), QLatin1String(metricUnit), shownNumber(customary),
                 QLatin1String(customaryUnit));
    };
    if (column.endsWith(QLatin1String("_mg"))) {
        return both(value / 1e6, "kg", value / 1e3 / kGramsPerPound, "lb");
    }
    if (column.endsWith(QLatin1String("_ul"))) {
        return both(value / 1e6, "L", value / 1e3 / kMillilitresPerUsGallon, "gal");
    }
    if (column.endsWith(QLatin1String("_um"))) {
        return both(value / 1e3, "mm", value / 1e3 / kMillimetresPerInch, "in");
    }
    if (column.endsWith(QLatin1String("_min"))) {
        return Errors::tr("%1 days").arg(shownNumber(value / 1440));
    }
    if (column == QLatin1String("seconds")) {
        return Errors::tr("%1 minutes").arg(shownNumber(value / 60));
    }
    if (column.endsWith(QLatin1String("_mw"))) {
        return QStringLiteral("%1 W").arg(shownNumber(value / 1e3));
    }
    return shownNumber(column == QLatin1String("amount") || column == QLatin1String("price")
                           ? value / 1e4
                           : value);
}

} // namespace

QString words(BoundsReason reason, const Error& error)
{
    const ErrorValues value(error);
    const QString field =
        fieldName(error.row ? error.row->table : std::string(), value[1].toStdString());
    switch (reason) {
    case BoundsReason::Day:
        return Errors::tr("“%1”: the day %2 lies beyond 1990 to 2100: correct it.")
            .arg(field, value.day(0));
    case BoundsReason::TimeOfDay:
        return Errors::tr("“%1”: there is no such time of day: correct it.").arg(field);
    case BoundsReason::Amount:
        return Errors::tr(
                   "“%1” is %2, beyond what a grow room has, from %3 to %4: check its digits "
                   "and its unit.")
            .arg(field, numberWords(value[1], value[0].toDouble()),
                 numberWords(value[1], value[2].toDouble()),
                 numberWords(value[1], value[3].toDouble()));
    case BoundsReason::TextLength:
        return Errors::tr("“%2”: the text that begins with “%1” is too long: leave it under %n "
                          "letters.",
                          nullptr, value.number(2))
            .arg(value[0], field);
    case BoundsReason::TextCharacters:
        return Errors::tr("“%1” has characters that can't be kept: enter it again, or save the "
                          "table it comes from as UTF-8.")
            .arg(field);
    }
    return {};
}

QString words(SchemaReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case SchemaReason::Foreign:
        return Errors::tr("This journal holds the %1 “%2”, which Plumule never makes, so it was "
                          "not opened: open a backup instead.")
            .arg(value[0], value[1]);
    case SchemaReason::Altered:
        return Errors::tr("The %1 “%2” of this journal is not as Plumule makes it, so it was not "
                          "opened: open a backup instead.")
            .arg(value[0], value[1]);
    case SchemaReason::Missing:
        return Errors::tr("The %1 “%2” is missing from this journal, so it was not opened: open a "
                          "backup instead.")
            .arg(value[0], value[1]);
    }
    return {};
}

QString words(BackupReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case BackupReason::FolderGone:
        return Errors::tr("The folder for backups, %1, is not there: put its disk in, or choose "
                          "another folder.")
            .arg(value[0]);
    case BackupReason::Altered:
        return Errors::tr("The backup %1 is no longer as it was written: choose an older one.")
            .arg(value[0]);
    case BackupReason::PhotoAltered:
        return Errors::tr("The photograph %1 of this backup can't be read: choose another backup.")
            .arg(value[0]);
    case BackupReason::TargetTaken:
        return Errors::tr("There is a file or folder %1 already: choose another name.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
