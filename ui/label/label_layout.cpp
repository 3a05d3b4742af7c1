#include "ui/label/label_layout.h"

#include "ui/label/label_code.h"
#include "ui/paper/paper.h"

#include <QFontMetricsF>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr double kCodeCap = 6;         // mm, the cap height that is read at arm's length
constexpr double kLargestModule = 1.1; // mm
constexpr double kStackedWords = 11;   // mm between code and QR code that hold the words

double mm(double points)
{
    return points / kPointsPerMillimetre;
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

} // namespace

double capShare(const PaperPen& pen)
{
    const QFontMetricsF metrics(pen.font(100, QFont::Bold));
    return metrics.capHeight() / (100 * pen.scale());
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

} // namespace plumule::ui
