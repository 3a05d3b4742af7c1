#pragma once

#include "core/trace/trace.h"
#include "ui/text/text.h"

class QPagedPaintDevice;

namespace plumule {
class Journal;
} // namespace plumule

namespace plumule::ui {

// A trace on paper: whole, with every sowing. False where it can't be read, or the device begun.
[[nodiscard]] bool printTraceSheet(Journal& journal, const TraceFrom& from, const UnitText& units,
                                   QPagedPaintDevice& paper);

} // namespace plumule::ui
