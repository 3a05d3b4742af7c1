#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "ui/report/report.h"

#include <QPageSize>

class QPagedPaintDevice;

namespace plumule::ui {

// Sets the report on pages with a running foot. `charts` are chartsOf() the report. May run off the
// window's thread. NotWritable; Cancelled when stopped: then what stood there before still stands.
[[nodiscard]] Done writeReportPdf(const QString& path, const Report& report,
                                  const std::vector<DrawnChart>& charts,
                                  QPageSize::PageSizeId size = QPageSize::A4,
                                  const Progress& progress = {});

// The same on a printer that has been set up.
[[nodiscard]] Done printReport(QPagedPaintDevice& printer, const Report& report,
                               const std::vector<DrawnChart>& charts,
                               const Progress& progress = {});

} // namespace plumule::ui
