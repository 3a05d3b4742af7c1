#include "app/commands/import_options.h"

#include <algorithm>

namespace plumule::app {
namespace {

template <class Word>
QString allWords(std::initializer_list<Word> words)
{
    QStringList names;
    for (const Word word : words) {
        names << QString::fromUtf8(toText(word));
    }
    return names.join(QStringLiteral(", "));
}

template <class Word>
bool takeWord(const QCommandLineParser& parser, const char* option, const QString& wanted,
              std::optional<Word>& value)
{
    if (!parser.isSet(option)) {
        return true;
    }
    Word word{};
    if (!fromText(parser.value(option).toStdString(), word)) {
        badCall(QStringLiteral("--%1 wants one of %2, not \"%3\".")
                    .arg(option, wanted, parser.value(option)));
        return false;
    }
    value = word;
    return true;
}

QString kindNames()
{
    QStringList names;
    for (const TableKind kind : allTableKinds()) {
        names << QString::fromUtf8(toText(kind));
    }
    return names.join(QStringLiteral(", "));
}

const TableColumn* columnNamed(TableKind kind, const std::string& name)
{
    const auto& columns = columnsOf(kind);
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const TableColumn& each) { return each.name == name; });
    return found == columns.end() ? nullptr : &*found;
}

// "OURS=…": our column, and what follows.
std::optional<std::pair<const TableColumn*, std::string>>
pairIn(const QString& option, const QString& given, TableKind kind)
{
    const QString name = given.section('=', 0, 0).trimmed();
    const TableColumn* column = columnNamed(kind, name.toStdString());
    if (column == nullptr || !given.contains('=')) {
        badCall(QStringLiteral("--%1 wants COLUMN=…, with a column of %2, not \"%3\".")
                    .arg(option, QString::fromUtf8(toText(kind)), given));
        return std::nullopt;
    }
    return std::pair(column, given.section('=', 1).trimmed().toStdString());
}

NamedMatch& matchOf(TableAsk& ask, const TableColumn& column)
{
    for (NamedMatch& match : ask.columns) {
        if (match.column == column.name) {
            return match;
        }
    }
    ask.columns.push_back({std::string(column.name), "", ""});
    return ask.columns.back();
}

bool takeColumns(const QCommandLineParser& parser, TableAsk& ask)
{
    for (const QString& given : parser.values("column")) {
        const auto pair = pairIn("column", given, ask.kind);
        if (!pair) {
            return false;
        }
        matchOf(ask, *pair->first).header = pair->second;
    }
    for (const QString& given : parser.values("unit")) {
        const auto pair = pairIn("unit", given, ask.kind);
        if (!pair) {
            return false;
        }
        const auto& units = unitsOf(pair->first->kind);
        if (std::find(units.begin(), units.end(), pair->second) == units.end()) {
            badCall(QStringLiteral("--unit: no %1 is in \"%2\".")
                        .arg(QString::fromUtf8(pair->first->name.data()),
                             QString::fromStdString(pair->second)));
            return false;
        }
        const auto match =
            std::find_if(ask.columns.begin(), ask.columns.end(),
                         [&](const NamedMatch& each) { return each.column == pair->first->name; });
        if (match == ask.columns.end()) {
            badCall(QStringLiteral("--unit %1 wants --column %2=… beside it.")
                        .arg(given, given.section('=', 0, 0)));
            return false;
        }
        match->unit = pair->second;
    }
    return true;
}

bool takeDecimals(const QCommandLineParser& parser, TableAsk& ask)
{
    const QString given = parser.value("decimals");
    if (parser.isSet("decimals") && given != QStringLiteral("point") &&
        given != QStringLiteral("comma")) {
        badCall(QStringLiteral("--decimals wants point or comma, not \"%1\".").arg(given));
        return false;
    }
    if (parser.isSet("decimals")) {
        ask.decimalMark =
            given == QStringLiteral("point") ? DecimalMark::Point : DecimalMark::Comma;
    }
    return true;
}

} // namespace

void addReadingOptions(QCommandLineParser& parser)
{
    for (const char* name : {"as", "column", "unit", "dates", "decimals", "encoding"}) {
        parser.addOption({QString::fromUtf8(name), QString(), QStringLiteral("value")});
    }
}

std::optional<TableAsk> readingAsked(const QCommandLineParser& parser)
{
    TableAsk ask;
    std::optional<TableKind> kind;
    const bool isRead = takeWord(parser, "as", kindNames(), kind) &&
                        takeWord(parser, "dates",
                                 allWords({DateOrder::YearMonthDay, DateOrder::DayMonthYear,
                                           DateOrder::MonthDayYear}),
                                 ask.dateOrder) &&
                        takeWord(parser, "encoding",
                                 allWords({TextEncoding::Utf8, TextEncoding::Utf16Little,
                                           TextEncoding::Utf16Big, TextEncoding::Latin1}),
                                 ask.encoding) &&
                        takeDecimals(parser, ask);
    ask.kind = kind.value_or(TableKind::Trays);
    return isRead && takeColumns(parser, ask) ? std::optional(ask) : std::nullopt;
}

} // namespace plumule::app
