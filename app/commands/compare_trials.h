#pragma once

#include "app/commands/table_input.h"

namespace plumule::app {

// `compare --trial`: the verdict of the season's page on any table, a row a tray, trials as what
// repeats. The response has to be above 0; rows without one count as missing.
int runCompareTrials(const QCommandLineParser& parser, const TableFile& file);

} // namespace plumule::app
