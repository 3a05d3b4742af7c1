#pragma once

#include "core/journal/journal.h"
#include "ui/page/page.h"
#include "ui/report/report.h"

#include <functional>

namespace plumule::ui {

// What the report says, from a journal opened to read on the worker's thread.
using ReportContent = std::function<Result<Report>(Journal&, const Progress&)>;

// Writes PDF pages or one HTML file, by the ending; A4, or Letter where the room shows US customary
// units. `charts` are chartsOf() the report. May run off the window's thread.
[[nodiscard]] Done writeReport(const QString& path, const Report& report,
                               const std::vector<DrawnChart>& charts, UnitSystem units,
                               const Progress& progress = {});

// Asks for a file (`preset` gives name and ending), makes the report off the window's thread with a
// bar that can be stopped, and tells. `parent` may be gone by then.
void makeReport(QWidget* parent, const Services& services, Journal& journal, const QString& preset,
                const ReportContent& content);
// Makes it the same way, and then asks for a printer.
void printReport(QWidget* parent, const Services& services, Journal& journal,
                 ReportContent content);

} // namespace plumule::ui
