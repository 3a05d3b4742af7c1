#pragma once

#include "ui/paper/paper.h"
#include "ui/report/report.h"

namespace plumule::ui {

// A report as pieces of paper of that width, in points. The pieces keep what they draw.
[[nodiscard]] std::vector<PaperBlock> paperBlocks(const Report& report,
                                                  const std::vector<DrawnChart>& charts,
                                                  const PaperPen& pen, double wide);

// A table's pieces: head and rows. Columns are as wide as they need; where that is too much the
// columns of words are wrapped.
[[nodiscard]] std::vector<PaperBlock> paperTable(const ReportTable& table, const PaperPen& pen,
                                                 double wide);

} // namespace plumule::ui
