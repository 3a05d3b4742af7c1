#include "ui/tray/label_sheet.h"

#include "core/journal/journal.h"
#include "ui/medium/paper_marker.h"
#include "ui/shared/paper.h"
#include "ui/shared/text.h"
#include "ui/tray/label_code.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule::ui {
namespace {

constexpr double kCodeCap = 6;         // mm, the cap height that is read at arm's length
constexpr double kLargestModule = 1.1; // mm
constexpr double kLineShare = 1.32;    // a line's height over its letters' size
constexpr double kStackedWords = 11;   // mm between code and QR code that hold the words
constexpr double kMarkerRoom = 1.15;   // of a line's size
constexpr double kLeastWords = 4.5;    // points
constexpr double kMostWords = 5;       // mm, the size of the other lines' letters

QString onLabel(const char* text)
{
    return QCoreApplication::translate("Labels", text);
}

double mm(double points)
{
    return points / kPointsPerMillimetre;
}

// Of the interface font, as a share of its size.
double capShare(const PaperPen& pen)
{
    const QFontMetricsF metrics(pen.font(100, QFont::Bold));
    return metrics.capHeight() / (100 * pen.scale());
}

// The largest size in mm at which the code fits a box.
double codeSize(const PaperPen& pen, const QString& code, QSizeF box)
{
    const double wideAt100 = mm(pen.wideOf(code, 100, QFont::Bold));
    const double byWidth = wideAt100 > 0 ? box.width() / wideAt100 * mm(100) : box.height();
    // Of a code's letters only those with tails leave the caps' height.
    return std::min(byWidth * 0.98, box.height() / (capShare(pen) + 0.28));
}

struct Shape
{
    double inset = 0; // of everything
    double quiet = 0; // the code's quiet zone may come this near the edge
    int modules = 0;  // of the QR code's side with its quiet zone; 0: none
};

double moduleFor(const Shape& shape, double side)
{
    const double module = shape.modules > 0 ? std::min(side / shape.modules, kLargestModule) : 0;
    return module < kLeastModule - 1e-6 ? 0 : module;
}

// The QR code takes the right end, the words stand beside it.
LabelLayout besideQr(const PaperPen& pen, QSizeF label, const QString& code, const Shape& shape)
{
    LabelLayout layout;
    const double share = std::max(label.width() * 0.46, shape.modules * kLeastModule);
    const double room = std::min(label.height() - 2 * shape.quiet, share);
    layout.module = moduleFor(shape, room);
    const double side = layout.module * shape.modules;
    layout.qr = {label.width() - shape.quiet - side, (label.height() - side) / 2, side, side};
    const double wide =
        layout.module > 0 ? layout.qr.left() - shape.inset : label.width() - 2 * shape.inset;
    const double high = label.height() - 2 * shape.inset;
    const double size = codeSize(pen, code, {wide, high * 0.42});
    layout.capHeight = size * capShare(pen);
    const double line = size * (capShare(pen) + 0.28);
    layout.code = {shape.inset, shape.inset, wide, line};
    layout.words = {shape.inset, shape.inset + line, wide, high - line};
    return layout;
}

// The code runs over the whole width, the QR code and the words stand below it.
LabelLayout belowCode(const PaperPen& pen, QSizeF label, const QString& code, const Shape& shape)
{
    LabelLayout layout;
    const double wide = label.width() - 2 * shape.inset;
    const double leastSide = shape.modules * kLeastModule;
    const double most = label.height() - shape.inset - shape.quiet - leastSide;
    const double size = codeSize(pen, code, {wide, std::clamp(most, 0.0, label.height() * 0.36)});
    layout.capHeight = size * capShare(pen);
    const double line = size * (capShare(pen) + 0.28);
    layout.code = {shape.inset, shape.inset, wide, line};
    const double top = layout.code.bottom();
    layout.module =
        moduleFor(shape, std::min(label.height() - top - shape.quiet, label.width() * 0.6));
    const double side = layout.module * shape.modules;
    layout.qr = {label.width() - shape.quiet - side, label.height() - shape.quiet - side, side,
                 side};
    if (layout.module > 0 && layout.qr.top() - top >= kStackedWords) {
        layout.words = {shape.inset, top, wide, layout.qr.top() - top};
        return layout;
    }
    const double wordsWide = layout.module > 0 ? layout.qr.left() - shape.inset : wide;
    layout.words = {shape.inset, top, wordsWide, label.height() - shape.inset - top};
    return layout;
}

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
    QStringList dates{onLabel("sown %1").arg(shortDayText(tray.sown))};
    if (tray.due) {
        dates << onLabel("due %1").arg(shortDayText(*tray.due));
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
        return fail(ErrorKind::NotWritable, "printer");
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const PaperPen pen(painter, device.logicalDpiX() / 72.0);
    const int pages = labelPages(paper, static_cast<int>(trays.size()));
    for (int page = 0; page < pages; ++page) {
        if (page > 0 && !device.newPage()) {
            return fail(ErrorKind::NotWritable, "printer");
        }
        drawLabelPage(pen, trays, paper, page);
    }
    return painter.end() ? Done() : fail(ErrorKind::NotWritable, "printer");
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
            label.trial = onLabel("%1 block %2").arg(label.trial).arg(*record.tray.block);
        }
    }
    return label;
}

} // namespace

Result<std::vector<LabelTray>> labelsFor(Journal& journal, const std::vector<TrayId>& trays)
{
    const auto rows = journal.trays().list({});
    if (!rows) {
        return tl::unexpected<Error>(rows.error());
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

LabelLayout layOutLabel(const PaperPen& pen, QSizeF label, const QString& code)
{
    Shape shape;
    shape.inset = std::clamp(label.height() * 0.07, 0.8, 2.5);
    shape.quiet = std::min(shape.inset, 1.0);
    if (const auto modules = labelCode(code)) {
        shape.modules = modules->sideWithQuiet();
    }
    const LabelLayout beside = besideQr(pen, label, code, shape);
    if (beside.capHeight >= kCodeCap && beside.module > 0) {
        return beside;
    }
    const LabelLayout below = belowCode(pen, label, code, shape);
    if ((below.module > 0) != (beside.module > 0)) {
        return below.module > 0 ? below : beside;
    }
    return below.capHeight > beside.capHeight ? below : beside;
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
        return tl::unexpected<Error>(size.error());
    }
    const bool isWritten =
        writePdf(path, onLabel("Labels"), pageSizeOf(paper), [&](QPagedPaintDevice& device) {
            return drawAll(device, trays, paper).has_value();
        });
    return isWritten ? Done() : fail(ErrorKind::NotWritable, "file", path.toStdString());
}

Done printLabels(QPagedPaintDevice& printer, const std::vector<LabelTray>& trays,
                 const LabelPaper& paper)
{
    if (const auto size = labelSizeOf(paper); !size) {
        return tl::unexpected<Error>(size.error());
    }
    printer.setPageSize(pageSizeOf(paper));
    printer.setPageMargins(QMarginsF());
    return drawAll(printer, trays, paper);
}

} // namespace plumule::ui
