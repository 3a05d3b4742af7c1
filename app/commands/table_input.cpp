#include "app/commands/table_input.h"

#include "core/base/number_text.h"
#include "core/stats/model/model_reason.h"
#include "ui/text/text.h"

#include <QFileInfo>

#include <algorithm>
#include <cmath>

namespace plumule::app {
namespace {

QString columnNames(const CsvTable& table)
{
    QStringList names;
    for (const std::string& name : table.header) {
        names << QString::fromStdString(name);
    }
    return names.join(QStringLiteral(", "));
}

} // namespace

std::optional<TableFile> readTable(const QString& path)
{
    const QString name = QFileInfo(path).fileName();
    const auto text = textOfFile(path.toStdString());
    if (!text || QFileInfo(path).isDir()) {
        badCall(QStringLiteral("%1 can't be read.").arg(path));
        return std::nullopt;
    }
    auto table = csvFrom(*text);
    if (!table) {
        badCall(QStringLiteral("%1: %2").arg(name, ui::sentence(table.error())));
        return std::nullopt;
    }
    if (table->rows.empty()) {
        badCall(QStringLiteral("%1 has no rows under its header.").arg(name));
        return std::nullopt;
    }
    return TableFile{name, std::move(*table)};
}

int refusedFor(const TableFile& file, const Error& error, const std::vector<std::size_t>& rows)
{
    QString place = file.name;
    QString words = ui::sentence(error);
    if (error.row) {
        auto row = static_cast<std::size_t>(error.row->number) - 1;
        row = row < rows.size() ? rows[row] : row;
        place += QStringLiteral(", row %1 (line %2)").arg(row + 1).arg(file.table.lines.at(row));
    } else if (error.is(stats::ModelReason::ColumnUnknown)) {
        words += QStringLiteral(" The file has %1.").arg(columnNames(file.table));
    }
    const bool isOfTheNumbers =
        error.kind == ErrorKind::NotEstimable || error.kind == ErrorKind::NoConvergence;
    const QString said = QStringLiteral("%1: %2").arg(place, words);
    return isOfTheNumbers ? noAnswer(said) : badCall(said);
}

std::optional<std::string> neededOption(const QCommandLineParser& parser, const QString& name)
{
    if (parser.value(name).isEmpty()) {
        badCall(QStringLiteral("--%1 is missing.").arg(name));
        return std::nullopt;
    }
    return parser.value(name).toStdString();
}

std::optional<double> numberFrom(const QString& text)
{
    if (const auto value = decimalFromText(text.toStdString())) {
        return *value;
    }
    // Scripts write 1e-9 too; a power of ten has no commas to mistake.
    bool isNumber = false;
    const double value = QLocale::c().toDouble(text.trimmed(), &isNumber);
    const bool isPower = text.contains('e', Qt::CaseInsensitive) && !text.contains(',');
    return isNumber && isPower && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

bool takeNumber(const QCommandLineParser& parser, const QString& name, const QString& wanted,
                bool (*isGood)(double), std::optional<double>& value)
{
    if (!parser.isSet(name)) {
        return true;
    }
    const auto number = numberFrom(parser.value(name));
    if (!number || !isGood(*number)) {
        badCall(QStringLiteral("--%1 wants %2, not \"%3\".").arg(name, wanted, parser.value(name)));
        return false;
    }
    value = number;
    return true;
}

QString shortNumber(std::optional<double> value)
{
    return value && std::isfinite(*value) ? QString::number(*value, 'g', 5) : QStringLiteral("-");
}

QString pText(std::optional<double> p)
{
    if (!p) {
        return QStringLiteral("p unknown");
    }
    return *p < 0.0001 ? QStringLiteral("p < 0.0001")
                       : QStringLiteral("p %1").arg(QString::number(*p, 'f', 4));
}

} // namespace plumule::app
