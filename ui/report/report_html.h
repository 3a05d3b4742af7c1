#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "ui/report/report.h"

namespace plumule::ui {

// The report as one file that needs nothing else: charts and pictures are within, light or dark as
// the reader's machine has it, no script, no outside address. Well-formed XML. `charts` are
// chartsOf() the report. May run off the window's thread.
[[nodiscard]] QByteArray reportHtml(const Report& report, const std::vector<DrawnChart>& charts,
                                    const Progress& progress = {});

// NotWritable; Cancelled when stopped: then what stood there before still stands.
[[nodiscard]] Done writeReportHtml(const QString& path, const Report& report,
                                   const std::vector<DrawnChart>& charts,
                                   const Progress& progress = {});

} // namespace plumule::ui
