#include "ui/medium/marker.h"

#include "ui/widget/theme.h"

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

QImage drawnShape(int marker)
{
    QImage image(64, 64, QImage::Format_ARGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.translate(32, 32);
    painter.fillPath(markerShape(marker, 40), Qt::black);
    return image;
}

// The share of the square's pixels in which two shapes differ.
double differenceOf(const QImage& a, const QImage& b)
{
    int differing = 0;
    int covered = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            const bool isInA = a.pixel(x, y) != qRgb(255, 255, 255);
            const bool isInB = b.pixel(x, y) != qRgb(255, 255, 255);
            differing += isInA != isInB ? 1 : 0;
            covered += isInA || isInB ? 1 : 0;
        }
    }
    return covered == 0 ? 0 : double(differing) / covered;
}

TEST(Markers, AreToldApartByShapeAlone)
{
    for (int a = 0; a < kMarkers; ++a) {
        for (int b = a + 1; b < kMarkers; ++b) {
            EXPECT_GT(differenceOf(drawnShape(a), drawnShape(b)), 0.05) << a << " and " << b;
        }
    }
}

TEST(Markers, AreToldApartByColourInBothLooks)
{
    for (const Ground ground : {Ground::Light, Ground::Dark}) {
        applyTheme(*qApp, ground);
        for (int a = 0; a < kMarkers; ++a) {
            for (int b = a + 1; b < kMarkers && b / kMarkerColours == a / kMarkerColours; ++b) {
                EXPECT_NE(markerColour(a), markerColour(b)) << a << " and " << b;
            }
        }
    }
    applyTheme(*qApp, Ground::Light);
}

TEST(Markers, StandInTheMiddleAndKeepToTheirSquare)
{
    for (int marker = 0; marker < kMarkers; ++marker) {
        const QRectF bounds = markerShape(marker, 20).boundingRect();
        EXPECT_LE(bounds.width(), 24) << marker;
        EXPECT_GE(bounds.width(), 16) << marker;
        EXPECT_LE(bounds.height(), 24) << marker;
        EXPECT_GE(bounds.height(), 16) << marker;
        EXPECT_NEAR(bounds.center().x(), 0, 1) << marker;
        EXPECT_NEAR(bounds.center().y(), 0, 2) << marker;
    }
}

TEST(Markers, GoRoundForANumberBeyondTheLast)
{
    EXPECT_EQ(markerColour(kMarkers), markerColour(0));
    EXPECT_EQ(markerShape(kMarkers + 3, 20), markerShape(3, 20));
    EXPECT_EQ(markerShape(-1, 20), markerShape(kMarkers - 1, 20));
}

TEST(Markers, HaveAnIconInTheirColour)
{
    for (int marker = 0; marker < kMarkers; ++marker) {
        const QImage icon = markerIcon(marker).pixmap(32, 32).toImage();
        ASSERT_FALSE(icon.isNull());
        int inItsColour = 0;
        for (int y = 0; y < icon.height(); ++y) {
            for (int x = 0; x < icon.width(); ++x) {
                inItsColour += icon.pixelColor(x, y) == markerColour(marker) ? 1 : 0;
            }
        }
        EXPECT_GT(inItsColour, icon.width() * icon.height() / 10) << marker;
        EXPECT_EQ(icon.pixelColor(0, 0).alpha(), 0);
    }
}

TEST(MarkerDot, IsOfItsMarkersColour)
{
    MarkerDot dot(0);
    dot.resize(dot.sizeHint());
    const auto middle = [&dot] {
        const QImage image = dot.grab().toImage();
        return image.pixelColor(image.width() / 2, image.height() / 2);
    };
    EXPECT_EQ(middle(), markerColour(0));
    dot.setMarker(1);
    EXPECT_EQ(middle(), markerColour(1));
}

} // namespace
} // namespace plumule::ui
