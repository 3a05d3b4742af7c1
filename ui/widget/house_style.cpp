#include "ui/widget/house_style.h"

#include "ui/widget/theme.h"

#include <QStyleFactory>

namespace plumule::ui {

HouseStyle::HouseStyle()
    : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion")))
{}

int HouseStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                            const QWidget* widget) const
{
    const int usual = QProxyStyle::pixelMetric(metric, option, widget);
    switch (metric) {
    case PM_SmallIconSize:
    case PM_LineEditIconSize:
    case PM_ButtonIconSize:
    case PM_ListViewIconSize:
    case PM_ToolBarIconSize:
        return scaled(usual);
    default:
        return usual;
    }
}

} // namespace plumule::ui

#include "moc_house_style.cpp"
