#pragma once

#include "core/stock/stock.h"
#include "ui/text/text.h"

class QPagedPaintDevice;

namespace plumule::ui {

// What is on the shelf on paper, with a line to count it on. False where the printer can't be
// begun.
[[nodiscard]] bool printStockSheet(const Stock& stock, const UnitText& units,
                                   QPagedPaintDevice& paper);

} // namespace plumule::ui
