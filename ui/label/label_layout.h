#pragma once

#include <QRectF>
#include <QString>

namespace plumule::ui {

class PaperPen;

// How a label is laid out, in mm within itself. The QR code's square holds its quiet zone. Without
// a QR code (`module` 0) the tray's code is too long for one on that size.
struct LabelLayout
{
    QRectF qr;
    double module = 0;    // side of one, mm
    QRectF code;          // the tray's code
    double capHeight = 0; // of the code's letters, mm
    QRectF words;         // all else
};
inline constexpr double kLeastModule = 0.4; // mm, to be read from paper at arm's length
[[nodiscard]] LabelLayout layOutLabel(const PaperPen& pen, QSizeF label, const QString& code);

// The height of capitals in the label's bold letters, as a share of their size.
[[nodiscard]] double capShare(const PaperPen& pen);

} // namespace plumule::ui
