#include "ui/report/report_task.h"

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
        job.services.messages.tell(inReport("The report was saved as %1.").arg(job.path));
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
        inReport("Writing the report"),
        [path = job.path, units = job.units, report, charts](const Progress& progress) {
            return writeReport(path, *report, *charts, units, progress);
        },
        parent, [job](const Done& done) { tellDone(job, done); });
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
                ReportContent content)
{
    const bool isHtml = preset.endsWith(".html");
    const auto layout = journal.room().layout();
    services.ask.fileToSave(
        parent, inReport("Save the report"), preset,
        isHtml ? inReport("Web page (*.html)") : inReport("PDF (*.pdf)"),
        [=, &clock = journal.clock(), journalPath = journal.path()](const QString& path) {
            const ReportJob job{services, path, layout ? layout->room.units : UnitSystem::Metric};
            services.tasks.run(
                inReport("Making the report"),
                [journalPath, &clock, content](const Progress& progress) -> Result<Report> {
                    const auto opened = Journal::open(journalPath, clock, Access::ReadOnly);
                    if (!opened) {
                        return tl::unexpected<Error>(opened.error());
                    }
                    return content(**opened, progress);
                },
                parent,
                [job, parent](const Result<Report>& report) {
                    writeInBackground(job, report, parent);
                });
        });
}

} // namespace plumule::ui
