#pragma once

#include "core/room/room.h"

#include <QCommandLineParser>

namespace plumule::ui {
struct Report;
}

namespace plumule::app {

// --json, --pdf FILE and --html FILE.
void addReportOptions(QCommandLineParser& parser);
// nullopt where none or one of them is given, else the answer to a bad call.
[[nodiscard]] std::optional<int> clashOfReportOptions(const QCommandLineParser& parser);
// The file of --pdf or --html; empty where neither is given.
[[nodiscard]] QString reportFile(const QCommandLineParser& parser);
// As pages or as HTML, by the option, whatever the file's ending.
[[nodiscard]] int writeAskedReport(const QCommandLineParser& parser, const ui::Report& report,
                                   UnitSystem units);

} // namespace plumule::app
