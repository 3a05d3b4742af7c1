#include "ui/label/label_sheet.h"

#include "core/journal/journal.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/label/label_code.h"
#include "ui/label/label_layout.h"
#include "ui/medium/paper_marker.h"
#include "ui/paper/paper.h"
#include "ui/text/paper_reason.h"
#include "ui/text/text.h"

#include <QCoreApplication>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule::ui {
namespace {

constexpr double kLineShare = 1.32;  // a line's height over its letters' size
constexpr double kMarkerRoom = 1.15; // of a line's size
constexpr double kLeastWords = 4.5;  // points
constexpr double kMostWords = 5;     // mm, the size of the other lines' letters

class LabelTr
{
    Q_DECLARE_TR_FUNCTIONS(Labels)
};

// In device pixels: whole ones where that keeps a module readable, since modules of unlike widths
// are harder to read than slightly smaller ones.
double modulePixels(const PaperPen& pen, double module)
{
    const double perMillimetre = pen.scale() * kPointsPerMillimetre;
    const double whole = std::floor(module * perMillimetre + 1e-6);
    return whole / perMillimetre >= kLeastModule ? whole : module * perMillimetre;
}

// Into a square in points that holds the quiet zone.
void drawQr(const PaperPen& pen, QRectF square, const LabelCode& code, double module)
{
    const double pixels = modulePixels(pen, module);
    const QPointF centre = square.center() * pen.scale();
    const QPointF corner(std::round(centre.x() - code.side * pixels / 2),
                         std::round(centre.y() - code.side * pixels / 2));
    // One path, so that no light seam stands between neighbours.
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (int row = 0; row < code.side; ++row) {
        for (int column = 0; column < code.side; ++column) {
            int end = column;
            while (end < code.side && code.isDark(row, end)) {
                ++end;
            }
            if (end > column) {
                path.addRect(QRectF(corner.x() + column * pixels, corner.y() + row * pixels,
                                    (end - column) * pixels, pixels));
                column = end;
            }
        }
    }
    QPainter& painter = pen.painter();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.fillPath(path, Qt::black);
    painter.restore();
}

struct Line
{
    QString text;
    double share = 1; // of the largest line's size
    QFont::Weight weight = QFont::Normal;
    bool hasMarker = false;
    bool isDate = false;
};

// With sowing and harvest on a line each, or both on one.
std::vector<Line> linesOf(const LabelTray& tray, bool isDateSplit)
{
    QStringList dates{LabelTr::tr("sown %1").arg(shortDayText(tray.sown))};
    if (tray.due) {
        dates << LabelTr::tr("due %1").arg(shortDayText(*tray.due));
    }
    QStringList last{tray.place, tray.trial};
    last.removeAll(QString());
    std::vector<Line> lines{{tray.variety, 1, QFont::DemiBold},
                            {tray.medium, 1, QFont::Normal, true}};
    if (!isDateSplit) {
        dates = {dates.join(QStringLiteral(" · "))};
    }
    for (const QString& each : dates) {
        lines.push_back({each, 0.9, QFont::Normal, false, true});
    }
    lines.push_back({last.join(QStringLiteral("  ·  ")), 0.78});
    lines.erase(std::remove_if(lines.begin(), lines.end(),
                               [](const Line& line) { return line.text.isEmpty(); }),
                lines.end());
    return lines;
}

// The size in points that fills the height.
double sizeOf(const std::vector<Line>& lines, double high)
{
    double shares = 0;
    for (const Line& line : lines) {
        shares += line.share;
    }
    return shares > 0 ? std::min(high / (shares * kLineShare), kMostWords * kPointsPerMillimetre)
                      : 0;
}

// A line that is too long is set smaller, and only then cut short.
double fittedSize(const PaperPen& pen, const Line& line, double points, double wide)
{
    const double marker = line.hasMarker ? kMarkerRoom : 0;
    const double wideAtOne = pen.wideOf(line.text, 100, line.weight) / 100 + marker;
    const double fitting = wide / wideAtOne * 0.97;
    return std::clamp(fitting, std::min(points, kLeastWords), points);
}

// Both dates on one line where they can be read there.
std::vector<Line> linesFor(const PaperPen& pen, QSizeF room, const LabelTray& tray)
{
    std::vector<Line> lines = linesOf(tray, false);
    const double size = sizeOf(lines, room.height());
    const bool isSmall = std::any_of(lines.begin(), lines.end(), [&](const Line& line) {
        const double wanted = size * line.share;
        return line.isDate && fittedSize(pen, line, wanted, room.width()) < wanted * 0.75;
    });
    return isSmall ? linesOf(tray, true) : lines;
}

void drawWords(const PaperPen& pen, QRectF at, const LabelTray& tray)
{
    const std::vector<Line> lines = linesFor(pen, at.size(), tray);
    const double size = sizeOf(lines, at.height());
    double needed = 0;
    for (const Line& line : lines) {
        needed += size * line.share * kLineShare;
    }
    double y = at.y() + std::max(0.0, at.height() - needed);
    for (const Line& line : lines) {
        const double points = fittedSize(pen, line, size * line.share, at.width());
        QRectF cell(at.x(), y, at.width(), size * line.share * kLineShare);
        if (line.hasMarker) {
            drawMarker(pen, {cell.x() + points * 0.42, cell.center().y()}, tray.marker,
                       points * 0.8, Qt::black);
            cell.adjust(points * kMarkerRoom, 0, 0, 0);
        }
        pen.text(cell, line.text, points, line.weight, Qt::black);
        y += size * line.share * kLineShare;
    }
}

QRectF inPoints(QRectF millimetres)
{
    return {millimetres.topLeft() * kPointsPerMillimetre,
            millimetres.size() * kPointsPerMillimetre};
}

Done drawAll(QPagedPaintDevice& device, const std::vector<LabelTray>& trays,
             const LabelPaper& paper)
{
    QPainter painter;
    if (!painter.begin(&device)) {
        return fail(ErrorKind::NotWritable, PaperReason::PrinterRefused);
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const PaperPen pen(painter, device.logicalDpiX() / 72.0);
    const int pages = labelPages(paper, static_cast<int>(trays.size()));
    for (int page = 0; page < pages; ++page) {
        if (page > 0 && !device.newPage()) {
            return fail(ErrorKind::NotWritable, PaperReason::PrinterRefused);
        }
        drawLabelPage(pen, trays, paper, page);
    }
    return painter.end() ? Done() : fail(ErrorKind::NotWritable, PaperReason::PrinterRefused);
}

QPageSize pageSizeOf(const LabelPaper& paper)
{
    switch (paper.stock) {
    case LabelStock::A4:
        return QPageSize(QPageSize::A4);
    case LabelStock::Letter:
        return QPageSize(QPageSize::Letter);
    case LabelStock::Roll:
        break;
    }
    return QPageSize(paper.pageSize(), QPageSize::Millimeter, {}, QPageSize::ExactMatch);
}

LabelTray labelOf(const TrayListRow& row)
{
    LabelTray label;
    const TrayRecord& record = row.record;
    label.code = QString::fromStdString(record.tray.code);
    label.variety = QString::fromStdString(record.variety);
    label.medium = QString::fromStdString(record.medium.name);
    label.marker = record.medium.marker;
    label.sown = record.tray.sownOn;
    label.due = record.tray.endedOn ? record.tray.endedOn : row.plan.harvest.date;
    label.place = row.spot ? nameOf(row.spot) : QString();
    if (record.trialCode) {
        label.trial = QString::fromStdString(*record.trialCode);
        if (record.tray.block) {
            label.trial = LabelTr::tr("%1 block %2").arg(label.trial).arg(*record.tray.block);
        }
    }
    return label;
}

} // namespace

Result<std::vector<LabelTray>> labelsFor(Journal& journal, const std::vector<TrayId>& trays)
{
    const auto rows = journal.trays().list({});
    if (!rows) {
        return passOn(rows);
    }
    std::map<TrayId, const TrayListRow*> byId;
    for (const TrayListRow& row : *rows) {
        byId[row.record.tray.id] = &row;
    }
    std::vector<LabelTray> labels;
    for (const TrayId tray : trays) {
        if (const auto found = byId.find(tray); found != byId.end()) {
            labels.push_back(labelOf(*found->second));
        }
    }
    return labels;
}

void drawLabel(const PaperPen& pen, QRectF at, const LabelTray& tray)
{
    const LabelLayout layout = layOutLabel(pen, at.size() / kPointsPerMillimetre, tray.code);
    if (layout.module > 0) {
        drawQr(pen, inPoints(layout.qr).translated(at.topLeft()), *labelCode(tray.code),
               layout.module);
    }
    const double size = layout.capHeight / capShare(pen) * kPointsPerMillimetre;
    QPainter& painter = pen.painter();
    painter.setFont(pen.font(size, QFont::Bold));
    painter.setPen(Qt::black);
    painter.drawText(pen.onDevice(inPoints(layout.code).translated(at.topLeft())),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, tray.code);
    drawWords(pen, inPoints(layout.words).translated(at.topLeft()), tray);
}

void drawLabelPage(const PaperPen& pen, const std::vector<LabelTray>& trays,
                   const LabelPaper& paper, int page)
{
    const int onPage = paper.labelsOnPage();
    const int skipped = paper.stock == LabelStock::Roll ? 0 : paper.skip;
    for (int number = 0; number < onPage; ++number) {
        const int tray = page * onPage + number - skipped;
        if (tray >= 0 && tray < static_cast<int>(trays.size())) {
            drawLabel(pen, inPoints(labelPlace(paper, number)),
                      trays[static_cast<std::size_t>(tray)]);
        }
    }
}

Done writeLabels(const QString& path, const std::vector<LabelTray>& trays, const LabelPaper& paper)
{
    if (const auto size = labelSizeOf(paper); !size) {
        return passOn(size);
    }
    return writePdf(path, LabelTr::tr("Labels"), pageSizeOf(paper), [&](QPagedPaintDevice& device) {
        return drawAll(device, trays, paper).has_value();
    });
}

Done printLabels(QPagedPaintDevice& printer, const std::vector<LabelTray>& trays,
                 const LabelPaper& paper)
{
    if (const auto size = labelSizeOf(paper); !size) {
        return passOn(size);
    }
    printer.setPageSize(pageSizeOf(paper));
    printer.setPageMargins(QMarginsF());
    return drawAll(printer, trays, paper);
}

} // namespace plumule::ui
