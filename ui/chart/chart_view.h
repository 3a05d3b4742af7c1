#pragma once

#include "core/chart/chart_spec.h"
#include "core/room/room.h"

#include <QPicture>
#include <QtCharts/QChartView>

namespace plumule::ui {

class ChartLayer;

// Draws a ChartSpec: axes and lines by Qt Charts, markers and intervals by a layer of our own, so
// that each medium keeps its shape. Follows the palette. The table beside a chart says the same in
// text.
class ChartView : public QChartView
{
    Q_OBJECT

public:
    explicit ChartView(QWidget* parent = nullptr);
    ~ChartView() override;

    // Which units every chart is drawn in; metric unless set.
    static void showUnits(UnitSystem units);

    void draw(const ChartSpec& spec);
    // As it was given, in SI; and as it is drawn.
    [[nodiscard]] const ChartSpec& spec() const { return m_spec; }
    [[nodiscard]] const ChartSpec& drawn() const { return m_drawn; }

    // By the ending: .png (three times the screen's size), .svg or .pdf. As saveFile().
    [[nodiscard]] Done saveTo(const QString& path);
    // As SVG of that size, in the colours and sizes of paper whatever the theme. Needs no window.
    [[nodiscard]] QByteArray toSvg(QSize size);
    // The same as a recording of vectors, to be played on any device and thread.
    [[nodiscard]] QPicture toPicture(QSize size);

Q_SIGNALS:
    void pointChosen(qint64 target);

protected:
    void changeEvent(QEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    [[nodiscard]] QSize sizeHint() const override;

private:
    void redraw();
    void drawRows();
    void drawCurves();
    void layOutAt(QSize size);
    void paintForPaper(QPaintDevice& device, QSize size);
    void paintAll(QPainter& painter, const QRectF& target);
    [[nodiscard]] bool writeSvg(QIODevice& file, QSizeF area);
    [[nodiscard]] bool writePdf(QIODevice& file, QSizeF area);
    [[nodiscard]] bool writeImage(QIODevice& file, QSizeF area, const QString& format);

    ChartSpec m_spec;
    ChartSpec m_drawn; // the same in the room's units
    ChartLayer* m_layer = nullptr;
};

} // namespace plumule::ui
