#include "ui/chart/part_colours.h"

#include "ui/widget/theme.h"

#include <QPainter>
#include <QPixmap>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

// From what is paid for work through what grows to what is lost.
constexpr std::array kOnLight = {0x2f4f45u, 0x527d69u, 0x9dc0aeu, 0xcfe0d6u, 0xe4d49cu,
                                 0xc49c4eu, 0x8b6a2eu, 0xb5322bu, 0x8d938cu};
constexpr std::array kOnDark = {0x4f8673u, 0x7db39bu, 0xaed3bfu, 0xd8e8dfu, 0xe9dba9u,
                                0xcfa961u, 0xa5813fu, 0xd9584fu, 0xa3a9a2u};
constexpr int kIconSide = 14;

QPixmap blank()
{
    QPixmap pixmap(scaled(kIconSide), scaled(kIconSide));
    pixmap.fill(Qt::transparent);
    return pixmap;
}

} // namespace

QColor partColour(int part)
{
    const auto& shades = palette().ground == Ground::Dark ? kOnDark : kOnLight;
    const auto index = static_cast<std::size_t>(std::clamp(part, 0, int(shades.size()) - 1));
    return QColor::fromRgb(shades[index]);
}

QColor inkOnPart(int part)
{
    return partColour(part).lightnessF() < 0.55F ? QColor(Qt::white) : QColor(0x1d2a25);
}

QIcon partIcon(int part)
{
    QPixmap pixmap = blank();
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(partColour(part));
    painter.drawRoundedRect(QRectF(pixmap.rect()).adjusted(1, 1, -1, -1), 2, 2);
    painter.end();
    return {pixmap};
}

QIcon leftOutIcon()
{
    QPixmap pixmap = blank();
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette().warning, 1, Qt::DashLine));
    painter.drawRoundedRect(QRectF(pixmap.rect()).adjusted(1.5, 1.5, -1.5, -1.5), 2, 2);
    painter.end();
    return {pixmap};
}

} // namespace plumule::ui
