#include "app/commands/growth_answer.h"
#include "app/commands/table_input.h"
#include "core/stats/model/data_table.h"

#include <algorithm>
#include <map>

namespace plumule::app {
namespace {

using stats::GrowthCurve;

// What is asked of the table.
struct GrowthRequest
{
    std::string x;
    std::string y;
    std::optional<std::string> tray; // columns; without the first every reading is a tray's own
    std::optional<std::string> trial;
    std::vector<std::pair<std::string, std::string>> where; // column, value
    stats::GrowthAsk growth;
};

// The readings of the rows that are asked for and have both numbers.
struct Readings
{
    std::vector<stats::TrayReading> readings;
    std::size_t leftOut = 0;
};

std::optional<GrowthCurve> curveNamed(const QString& name)
{
    for (const GrowthCurve curve :
         {GrowthCurve::Logistic, GrowthCurve::Gompertz, GrowthCurve::Richards}) {
        if (name.toStdString() == stats::growthModel(curve)->name) {
            return curve;
        }
    }
    return std::nullopt;
}

bool takeWhere(const QCommandLineParser& parser, GrowthRequest& request)
{
    for (const QString& text : parser.values("where")) {
        const auto sign = text.indexOf('=');
        if (sign < 1) {
            badCall(QStringLiteral("--where wants COLUMN=VALUE, not \"%1\".").arg(text));
            return false;
        }
        request.where.emplace_back(text.left(sign).toStdString(), text.mid(sign + 1).toStdString());
    }
    return true;
}

bool takeNumbers(const QCommandLineParser& parser, const QString& option,
                 std::vector<double>& numbers)
{
    for (const QString& text : parser.values(option)) {
        const auto number = numberFrom(text);
        if (!number) {
            badCall(QStringLiteral("--%1 wants a number, not \"%2\".").arg(option, text));
            return false;
        }
        numbers.push_back(*number);
    }
    return true;
}

std::optional<GrowthRequest> growthRequestOf(const QCommandLineParser& parser)
{
    const auto x = neededOption(parser, "x");
    const auto y = x ? neededOption(parser, "y") : std::nullopt;
    if (!y) {
        return std::nullopt;
    }
    GrowthRequest request{*x, *y, {}, {}, {}, {}};
    if (parser.isSet("tray")) {
        request.tray = parser.value("tray").toStdString();
    }
    if (parser.isSet("trial")) {
        request.trial = parser.value("trial").toStdString();
    }
    if (request.trial && !request.tray) {
        badCall("--trial wants --tray beside it.");
        return std::nullopt;
    }
    if (*x == *y) {
        badCall("--x and --y are the same column.");
        return std::nullopt;
    }
    const QString curve = parser.isSet("curve") ? parser.value("curve") : QStringLiteral("best");
    request.growth.curve = curveNamed(curve);
    if (!request.growth.curve && curve != QLatin1String("best")) {
        badCall(QStringLiteral("--curve wants logistic, gompertz, richards or best, not \"%1\".")
                    .arg(curve));
        return std::nullopt;
    }
    if (!takeWhere(parser, request) || !takeNumbers(parser, "at", request.growth.at) ||
        !takeNumbers(parser, "to-height", request.growth.heights)) {
        return std::nullopt;
    }
    return request;
}

Result<std::size_t> columnNumber(const CsvTable& table, const std::string& name)
{
    const auto found = std::find(table.header.begin(), table.header.end(), name);
    if (found == table.header.end()) {
        return fail(ErrorKind::NotFound, stats::ModelReason::ColumnUnknown, name);
    }
    return static_cast<std::size_t>(found - table.header.begin());
}

// The rows that are asked for, by number.
Result<std::vector<std::size_t>> rowsWhere(const CsvTable& table, const GrowthRequest& request)
{
    std::vector<std::size_t> rows;
    std::vector<std::pair<std::size_t, std::string>> conditions;
    for (const auto& [name, value] : request.where) {
        const auto column = columnNumber(table, name);
        if (!column) {
            return passOn(column);
        }
        conditions.emplace_back(*column, value);
    }
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        if (std::all_of(conditions.begin(), conditions.end(), [&](const auto& condition) {
                return table.rows[row][condition.first] == condition.second;
            })) {
            rows.push_back(row);
        }
    }
    return rows;
}

// The names of a column numbered from 0; all alike without a column.
Result<std::vector<std::size_t>> numbersOfNames(const CsvTable& table,
                                                const std::optional<std::string>& name,
                                                const std::vector<std::size_t>& rows)
{
    std::vector<std::size_t> numbers(rows.size());
    if (!name) {
        return numbers;
    }
    const auto column = columnNumber(table, *name);
    if (!column) {
        return passOn(column);
    }
    std::map<std::string, std::size_t> known;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        numbers[row] =
            known.try_emplace(table.rows[rows[row]][*column], known.size()).first->second;
    }
    return numbers;
}

Result<GrowthAnswer> answerOf(const Readings& readings, const GrowthRequest& request)
{
    if (request.tray) {
        const auto growth = stats::trayGrowth(readings.readings, request.growth);
        return growth ? Result<GrowthAnswer>(GrowthAnswer{growth->report, *growth})
                      : passOn(growth);
    }
    std::vector<double> x;
    std::vector<double> y;
    for (const stats::TrayReading& reading : readings.readings) {
        x.push_back(reading.x);
        y.push_back(reading.y);
    }
    const auto report = stats::growthReport(x, y, request.growth);
    return report ? Result<GrowthAnswer>(GrowthAnswer{*report, std::nullopt}) : passOn(report);
}

Result<Readings> readingsOf(const CsvTable& table, const GrowthRequest& request,
                            const std::vector<std::size_t>& rows)
{
    stats::DataTable numbers;
    for (const std::string& name : {request.x, request.y}) {
        const auto column = columnNumber(table, name);
        if (!column) {
            return passOn(column);
        }
        std::vector<std::string> cells;
        cells.reserve(rows.size());
        for (const std::size_t row : rows) {
            cells.push_back(table.rows[row][*column]);
        }
        if (const Done added = numbers.addNumbersFromText(name, cells); !added) {
            return passOn(added);
        }
    }
    const auto trials = numbersOfNames(table, request.trial, rows);
    const auto trays = numbersOfNames(table, request.tray, rows);
    if (!trials || !trays) {
        return trials ? passOn(trays) : passOn(trials);
    }
    Readings readings;
    // Trays of two trials may have the same name.
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> trayNumbers;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const auto& x = numbers.numbers(request.x)->values[row];
        const auto& y = numbers.numbers(request.y)->values[row];
        if (x && y) {
            const std::pair key((*trials)[row], (*trays)[row]);
            const std::size_t tray = trayNumbers.try_emplace(key, trayNumbers.size()).first->second;
            readings.readings.push_back({*x, *y, tray, (*trials)[row]});
        }
    }
    readings.leftOut = rows.size() - readings.readings.size();
    return readings;
}

} // namespace

int runGrowth(const QStringList& arguments)
{
    QCommandLineParser parser;
    for (const char* option : {"x", "y", "tray", "trial", "where", "curve", "at", "to-height"}) {
        parser.addOption({option, "", "value"});
    }
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"FILE.csv"});
    const auto request = given ? growthRequestOf(parser) : std::nullopt;
    const auto file = request ? readTable(given->front()) : std::nullopt;
    if (!file) {
        return kBadCall;
    }
    const auto rows = rowsWhere(file->table, *request);
    if (!rows) {
        return refusedFor(*file, rows.error());
    }
    if (rows->empty()) {
        return badCall(QStringLiteral("%1 has no row that --where asks for.").arg(file->name));
    }
    const auto readings = readingsOf(file->table, *request, *rows);
    if (!readings) {
        return refusedFor(*file, readings.error(), *rows);
    }
    const auto answer = answerOf(*readings, *request);
    if (!answer) {
        return refusedFor(*file, answer.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*answer));
    } else {
        printGrowth(*answer, request->x, request->y, readings->leftOut);
    }
    return kDone;
}

} // namespace plumule::app
