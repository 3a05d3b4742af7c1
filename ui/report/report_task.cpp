#include "ui/report/report_task.h"

#include "core/journal/room/room_entries.h"
#include "ui/page/aside.h"
#include "ui/paper/printing.h"
#include "ui/report/report_html.h"
#include "ui/report/report_pdf.h"
#include "ui/report/report_text.h"

#include <memory>

namespace plumule::ui {
namespace {

struct ReportJob
{
    Services services;
    QString path;
    UnitSystem units = UnitSystem::Metric;
};

void tellDone(const ReportJob& job, const Done& done)
{
    if (done) {
        job.services.messages.tell(ReportTr::tr("The report was saved as %1.").arg(job.path));
    } else {
        job.services.messages.refuse(sentence(done.error()));
    }
}

// Charts are drawn on this thread, the rest is written on another.
void writeInBackground(const ReportJob& job, const Result<Report>& content, QWidget* parent)
{
    if (!content) {
        job.services.messages.refuse(sentence(content.error()));
        return;
    }
    const auto report = std::make_shared<const Report>(*content);
    const auto charts = std::make_shared<const std::vector<DrawnChart>>(chartsOf(*report));
    job.services.tasks.run(
        ReportTr::tr("Writing the report"),
        [path = job.path, units = job.units, report, charts](const Progress& progress) {
            return writeReport(path, *report, *charts, units, progress);
        },
        parent, [job](const Done& done) { tellDone(job, done); });
}

void makeContent(QWidget* parent, const Services& services, Journal& journal, ReportContent content,
                 std::function<void(const Result<Report>&)> then)
{
    askAside(services.tasks, ReportTr::tr("Making the report"), journal, std::move(content), parent,
             std::move(then));
}

} // namespace

Done writeReport(const QString& path, const Report& report, const std::vector<DrawnChart>& charts,
                 UnitSystem units, const Progress& progress)
{
    if (path.endsWith(".html", Qt::CaseInsensitive) || path.endsWith(".htm", Qt::CaseInsensitive)) {
        return writeReportHtml(path, report, charts, progress);
    }
    return writeReportPdf(path, report, charts,
                          units == UnitSystem::Metric ? QPageSize::A4 : QPageSize::Letter,
                          progress);
}

void makeReport(QWidget* parent, const Services& services, Journal& journal, const QString& preset,
                const ReportContent& content)
{
    const bool isHtml = preset.endsWith(".html");
    const auto layout = journal.room().layout();
    const UnitSystem units = layout ? layout->room.units : UnitSystem::Metric;
    services.ask.fileToSave(parent, ReportTr::tr("Save the report"), preset,
                            isHtml ? ReportTr::tr("Web page (*.html)")
                                   : ReportTr::tr("PDF (*.pdf)"),
                            [=, &journal](const QString& path) {
                                const ReportJob job{services, path, units};
                                makeContent(parent, services, journal, content,
                                            [job, parent](const Result<Report>& report) {
                                                writeInBackground(job, report, parent);
                                            });
                            });
}

void printReport(QWidget* parent, const Services& services, Journal& journal, ReportContent content)
{
    makeContent(parent, services, journal, std::move(content),
                [parent, services](const Result<Report>& report) {
                    if (!report) {
                        services.messages.refuse(sentence(report.error()));
                        return;
                    }
                    askPrinter(parent, [services, report = *report](QPagedPaintDevice& printer) {
                        if (!printReport(printer, report, chartsOf(report))) {
                            services.messages.refuse(
                                ReportTr::tr("The printer did not take the report."));
                        }
                    });
                });
}

} // namespace plumule::ui
