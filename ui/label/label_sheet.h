#pragma once

#include "core/base/date.h"
#include "core/tray/tray_id.h"
#include "ui/label/label_paper.h"

#include <QString>

#include <optional>
#include <vector>

class QPagedPaintDevice;

namespace plumule {
class Journal;
}

namespace plumule::ui {

class PaperPen;

// What a tray's label says.
struct LabelTray
{
    QString code; // large, and alone in the QR code
    QString variety;
    QString medium;
    int marker = 0;
    Date sown;
    std::optional<Date> due;
    QString place; // may be empty, as the next
    QString trial;
};

// Those of the trays that are stored, in the order asked for.
[[nodiscard]] Result<std::vector<LabelTray>> labelsFor(Journal& journal,
                                                       const std::vector<TrayId>& trays);

// Draws one label into a rectangle of that size in points.
void drawLabel(const PaperPen& pen, QRectF at, const LabelTray& tray);
// Draws one page (from 0) of labels; the pen's origin is the corner of the page.
void drawLabelPage(const PaperPen& pen, const std::vector<LabelTray>& trays,
                   const LabelPaper& paper, int page);

// As a PDF. NotWritable; errors as labelSizeOf().
[[nodiscard]] Done writeLabels(const QString& path, const std::vector<LabelTray>& trays,
                               const LabelPaper& paper);
// On a printer, whose page is set here.
[[nodiscard]] Done printLabels(QPagedPaintDevice& printer, const std::vector<LabelTray>& trays,
                               const LabelPaper& paper);

} // namespace plumule::ui
