#pragma once

#include "core/chart/chart_spec.h"

#include <QGraphicsObject>

class QChart;

namespace plumule::ui {

// What stands above a plot needs, in pixels.
[[nodiscard]] int heightOfHeadings(const ChartSpec& spec);
// How wide the columns beside a plot are together, in pixels.
[[nodiscard]] int widthOfColumns(const ChartSpec& spec);

// Over a chart's plot: dots with their medium's shape, interval bars, marks and names at line ends.
// It places itself anew whenever the plot area changes.
class ChartLayer : public QGraphicsObject
{
    Q_OBJECT

public:
    // How a dot is drawn, wherever it stands.
    struct DotLook
    {
        QRgb colour = 0;
        int marker = 0;
        bool isHollow = false;
        bool isFaded = false;
        auto operator<=>(const DotLook&) const = default;
    };

    explicit ChartLayer(QChart* chart);

    void show(const ChartSpec& spec);
    // The dot at a place of the scene; null where there is none.
    [[nodiscard]] const ChartPoint* pointAt(const QPointF& scenePlace) const;

    [[nodiscard]] QRectF boundingRect() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    struct Dot
    {
        const ChartPoint* point = nullptr;
        QPointF place;
        int marker = 0;
        bool isFaded = false;
    };

    void placeAll();
    void placeRowDots(const ChartSeries& series);
    [[nodiscard]] QPointF placeOf(double x, double y) const;
    [[nodiscard]] double rowPlace(double row) const;
    [[nodiscard]] DotLook lookOf(const Dot& dot) const;
    void paintDots(QPainter& painter) const;
    void paintBars(QPainter& painter) const;
    void paintIntervals(QPainter& painter) const;
    void paintMarks(QPainter& painter) const;
    void paintMargin(QPainter& painter) const;
    void paintPooled(QPainter& painter, const ChartSeries& series) const;
    void paintColumns(QPainter& painter) const;
    void paintParts(QPainter& painter) const; // chart_layer_parts.cpp
    void paintNames(QPainter& painter) const;

    QChart* m_chart;
    ChartSpec m_spec;
    std::vector<double> m_columnWidths;
    int m_besideWidth = 0; // of all columns
    std::vector<Dot> m_dots;
};

} // namespace plumule::ui
