#include "app/commands/table_input.h"

#include "core/base/number_text.h"
#include "ui/text/text.h"

#include <QFileInfo>
#include <QRegularExpression>

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

QString faultOf(const TableFile& file, const Error& error, const std::vector<std::size_t>& rows)
{
    const QString subject = QString::fromStdString(error.subject);
    if (error.kind == ErrorKind::NotFound) {
        return QStringLiteral("%1 has no column \"%2\"; it has %3.")
            .arg(file.name, subject, columnNames(file.table));
    }
    static const QRegularExpression kCell(QStringLiteral("^row (\\d+): (.*)$"),
                                          QRegularExpression::DotMatchesEverythingOption);
    const auto cell = kCell.match(subject);
    if (!cell.hasMatch()) {
        return QStringLiteral("%1: \"%2\" is named twice.").arg(file.name, subject);
    }
    std::size_t row = cell.captured(1).toULongLong() - 1;
    row = row < rows.size() ? rows[row] : row;
    return QStringLiteral("%1, row %2 (line %3): %4 wants a number, not \"%5\".")
        .arg(file.name)
        .arg(row + 1)
        .arg(file.table.lines.at(row))
        .arg(cell.captured(2), QString::fromStdString(error.detail));
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
