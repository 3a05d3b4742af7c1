#include "tests/ui/label/scanned.h"

#include <zbar.h>

namespace plumule::ui {

QStringList qrCodesIn(const QImage& image)
{
    const QImage grey = image.convertToFormat(QImage::Format_Grayscale8);
    QByteArray pixels;
    for (int row = 0; row < grey.height(); ++row) {
        pixels.append(reinterpret_cast<const char*>(grey.constScanLine(row)), grey.width());
    }
    zbar::ImageScanner scanner;
    scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    zbar::Image picture(static_cast<unsigned>(grey.width()), static_cast<unsigned>(grey.height()),
                        "Y800", pixels.constData(), static_cast<unsigned long>(pixels.size()));
    scanner.scan(picture);
    QStringList found;
    for (auto symbol = picture.symbol_begin(); symbol != picture.symbol_end(); ++symbol) {
        found << QString::fromStdString(symbol->get_data());
    }
    found.sort();
    return found;
}

} // namespace plumule::ui
