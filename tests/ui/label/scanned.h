#pragma once

#include "ui/label/label_sheet.h"
#include "ui/paper/paper.h"

#include <QImage>
#include <QPainter>
#include <QStringList>

namespace plumule::ui {

// One page of labels as a scanner sees it.
[[nodiscard]] inline QImage pageImage(const std::vector<LabelTray>& trays, const LabelPaper& paper,
                                      int page, int dpi = 200)
{
    const QSizeF size = paper.pageSize() / 25.4 * dpi;
    QImage image(size.toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    drawLabelPage(PaperPen(painter, dpi / 72.0), trays, paper, page);
    return image;
}

// The texts of all QR codes in it, read by zbar: a decoder that shares nothing with the encoder.
[[nodiscard]] QStringList qrCodesIn(const QImage& image);

} // namespace plumule::ui
