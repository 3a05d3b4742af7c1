#pragma once

#include "core/medium/medium_rules.h"
#include "ui/widget/theme.h"

#include <QColor>
#include <QIcon>
#include <QPainterPath>
#include <QWidget>

namespace plumule::ui {

// Each medium has a marker of its own, a colour and a shape together, in every list and chart; so
// it is told apart without colour too. There are kMarkers of them: eight colours after Okabe and
// Ito's set for colour-blind readers, and eight outlines, each whole, with a hole or with a slit.
inline constexpr int kMarkerColours = 8;

[[nodiscard]] QColor markerColour(int marker);
// The same whatever the theme.
[[nodiscard]] QColor markerColourOn(Ground ground, int marker);
// The shape within a square of that side, centred on the origin.
[[nodiscard]] QPainterPath markerShape(int marker, double side);
[[nodiscard]] QIcon markerIcon(int marker);

// A small painted marker, to stand before a medium's name.
class MarkerDot : public QWidget
{
    Q_OBJECT

public:
    explicit MarkerDot(int marker, QWidget* parent = nullptr);
    void setMarker(int marker);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int m_marker;
};

} // namespace plumule::ui
