#pragma once

#include "app/commands/command.h"
#include "core/exchange/table_form.h"

namespace plumule::app {

// The options that say how a table is read.
void addReadingOptions(QCommandLineParser& parser);
// What they say; none, and a line said, where one of them is off.
[[nodiscard]] std::optional<TableAsk> readingAsked(const QCommandLineParser& parser);

} // namespace plumule::app
