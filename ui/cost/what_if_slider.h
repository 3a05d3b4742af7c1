#pragma once

#include <QSlider>

namespace plumule::ui {

// How much more or less than today, in percent: −50 to 100. A stroke stands where today is,
// whatever the handle says.
class WhatIfSlider : public QSlider
{
    Q_OBJECT

public:
    explicit WhatIfSlider(QWidget* parent = nullptr);

    [[nodiscard]] double factor() const { return 1 + value() / 100.0; }
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
};

} // namespace plumule::ui
