#include "app/commands/report_output.h"

#include "app/commands/command.h"
#include "ui/report/report_html.h"
#include "ui/report/report_pdf.h"

namespace plumule::app {

void addReportOptions(QCommandLineParser& parser)
{
    parser.addOption({"json", ""});
    parser.addOption({"pdf", "", "file"});
    parser.addOption({"html", "", "file"});
}

std::optional<int> clashOfReportOptions(const QCommandLineParser& parser)
{
    QStringList given;
    for (const char* option : {"json", "pdf", "html"}) {
        if (parser.isSet(QLatin1String(option))) {
            given << QStringLiteral("--") + QLatin1String(option);
        }
    }
    if (given.size() > 1) {
        return badCall(QStringLiteral("%1 do not go together.").arg(given.join(" and ")));
    }
    return std::nullopt;
}

QString reportFile(const QCommandLineParser& parser)
{
    return parser.isSet("pdf") ? parser.value("pdf") : parser.value("html");
}

int writeAskedReport(const QCommandLineParser& parser, const ui::Report& report, UnitSystem units)
{
    const auto charts = ui::chartsOf(report);
    const QString file = reportFile(parser);
    const Done written =
        parser.isSet("html")
            ? ui::writeReportHtml(file, report, charts)
            : ui::writeReportPdf(file, report, charts,
                                 units == UnitSystem::Metric ? QPageSize::A4 : QPageSize::Letter);
    return written ? kDone : refused(written.error());
}

} // namespace plumule::app
