#include "app/commands/table_input.h"
#include "core/stats/growth/growth_report.h"
#include "core/stats/model/data_table.h"

#include <algorithm>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;
using stats::CurveEstimate;
using stats::GrowthCurve;
using stats::GrowthReport;

// What is asked of the table.
struct GrowthRequest
{
    std::string x;
    std::string y;
    std::vector<std::pair<std::string, std::string>> where; // column, value
    stats::GrowthAsk growth;
};

// The readings of the rows that are asked for and have both numbers.
struct Readings
{
    std::vector<double> x;
    std::vector<double> y;
    std::size_t leftOut = 0;
};

ordered_json jsonOf(const CurveEstimate& value)
{
    return {{"estimate", jsonNumber(value.estimate)},
            {"se", jsonNumber(value.se)},
            {"lower", jsonNumber(value.lower)},
            {"upper", jsonNumber(value.upper)}};
}

ordered_json jsonOf(const GrowthReport& report)
{
    ordered_json json;
    json["curve"] = report.curveName;
    json["n"] = report.n;
    json["df"] = report.df;
    json["rss"] = jsonNumber(report.rss);
    json["residual_sd"] = jsonNumber(report.residualSd);
    json["aicc"] = jsonNumber(report.aicc);
    json["parameters"] = ordered_json::array();
    for (const GrowthReport::Parameter& parameter : report.parameters) {
        ordered_json row{{"name", parameter.name}};
        row.update(jsonOf(parameter.value));
        json["parameters"].push_back(std::move(row));
    }
    json["at"] = ordered_json::array();
    for (const stats::CurvePoint& point : report.at) {
        json["at"].push_back({{"x", jsonNumber(point.x)},
                              {"fit", jsonNumber(point.fit)},
                              {"se", jsonNumber(point.se)},
                              {"lower", jsonNumber(point.lower)},
                              {"upper", jsonNumber(point.upper)}});
    }
    json["to_height"] = ordered_json::array();
    for (const stats::TimeToHeight& time : report.toHeight) {
        json["to_height"].push_back({{"height", jsonNumber(time.height)},
                                     {"x", time.x ? jsonOf(*time.x) : ordered_json(nullptr)}});
    }
    json["top_rate"] = jsonOf(report.topRate);
    json["x_at_90pct"] = jsonOf(report.xAt90pct);
    return json;
}

QString estimateText(const CurveEstimate& value)
{
    return QStringLiteral("%1 (%2 to %3)")
        .arg(shortNumber(value.estimate), shortNumber(value.lower), shortNumber(value.upper));
}

void printGrowth(const GrowthReport& report, const GrowthRequest& request, std::size_t leftOut)
{
    print(QStringLiteral("%1 over %2: %3 curve, %4 readings, spread left over (sd) %5")
              .arg(QString::fromStdString(request.y), QString::fromStdString(request.x),
                   QString::fromStdString(report.curveName), QString::number(report.n),
                   shortNumber(report.residualSd)));
    for (const GrowthReport::Parameter& parameter : report.parameters) {
        print(QStringLiteral("  %1: %2")
                  .arg(QString::fromStdString(parameter.name), estimateText(parameter.value)));
    }
    print(QStringLiteral("  top growth rate: %1").arg(estimateText(report.topRate)));
    print(QStringLiteral("  90% of full height at: %1").arg(estimateText(report.xAt90pct)));
    for (const stats::CurvePoint& point : report.at) {
        print(QStringLiteral("  at %1: %2 (%3 to %4)")
                  .arg(shortNumber(point.x), shortNumber(point.fit), shortNumber(point.lower),
                       shortNumber(point.upper)));
    }
    for (const stats::TimeToHeight& time : report.toHeight) {
        print(QStringLiteral("  %1 is reached at: %2")
                  .arg(shortNumber(time.height),
                       time.x ? estimateText(*time.x) : QStringLiteral("never, by this curve")));
    }
    if (!report.fullHeightSeen) {
        print(QStringLiteral("Mind: the last reading lies before 90% of full height, which is "
                             "foretold rather than seen."));
    }
    if (leftOut > 0) {
        print(QStringLiteral("Mind: rows with an empty %2 or %3, left out: %1.")
                  .arg(QString::number(leftOut), QString::fromStdString(request.x),
                       QString::fromStdString(request.y)));
    }
}

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
    GrowthRequest request{*x, *y, {}, {}};
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
        for (const std::size_t row : rows) {
            cells.push_back(table.rows[row][*column]);
        }
        if (const Done added = numbers.addNumbersFromText(name, cells); !added) {
            return passOn(added);
        }
    }
    Readings readings;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const auto& x = numbers.numbers(request.x)->values[row];
        const auto& y = numbers.numbers(request.y)->values[row];
        if (x && y) {
            readings.x.push_back(*x);
            readings.y.push_back(*y);
        }
    }
    readings.leftOut = rows.size() - readings.x.size();
    return readings;
}

} // namespace

int runGrowth(const QStringList& arguments)
{
    QCommandLineParser parser;
    for (const char* option : {"x", "y", "where", "curve", "at", "to-height"}) {
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
    const auto report = stats::growthReport(readings->x, readings->y, request->growth);
    if (!report) {
        return refusedFor(*file, report.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*report));
    } else {
        printGrowth(*report, *request, readings->leftOut);
    }
    return kDone;
}

} // namespace plumule::app
