#include "ui/report/report_pdf.h"

#include "core/base/work_reason.h"
#include "ui/report/report_blocks.h"
#include "ui/text/paper_reason.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

PaperSheet sheetOfReport(const Report& report, const std::vector<DrawnChart>& charts,
                         const Progress& progress)
{
    PaperSheet sheet;
    sheet.margin = 50;
    sheet.blocks = [&report, &charts](const PaperPen& pen, double wide) {
        return paperBlocks(report, charts, pen, wide);
    };
    sheet.foot = [&report, &progress](std::size_t page, std::size_t pages) {
        progress.report(double(page) / double(pages));
        return PaperFoot{
            report.foot,
            QCoreApplication::translate("Report", "page %1 of %2").arg(page).arg(pages)};
    };
    sheet.isStopped = [&progress] { return progress.isStopped(); };
    return sheet;
}

} // namespace

Done printReport(QPagedPaintDevice& printer, const Report& report,
                 const std::vector<DrawnChart>& charts, const Progress& progress)
{
    if (printSheet(printer, sheetOfReport(report, charts, progress))) {
        return {};
    }
    return progress.isStopped() ? fail(ErrorKind::Cancelled, WorkReason::Stopped)
                                : fail(ErrorKind::NotWritable, PaperReason::PrinterRefused);
}

Done writeReportPdf(const QString& path, const Report& report,
                    const std::vector<DrawnChart>& charts, QPageSize::PageSizeId size,
                    const Progress& progress)
{
    Done printed;
    const Done saved = writePdf(path, report.title, QPageSize(size), [&](QPagedPaintDevice& paper) {
        printed = printReport(paper, report, charts, progress);
        return printed.has_value();
    });
    const bool isStopped = !printed && printed.error().kind == ErrorKind::Cancelled;
    return isStopped ? printed : saved;
}

} // namespace plumule::ui
