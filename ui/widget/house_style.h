#pragma once

#include <QProxyStyle>

namespace plumule::ui {

// Fusion, whose icons grow with the type beside them.
class HouseStyle : public QProxyStyle
{
    Q_OBJECT

public:
    HouseStyle();

    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                                  const QWidget* widget = nullptr) const override;
};

} // namespace plumule::ui
