#pragma once

#include "ui/forecast/growing_table.h"

#include <QHeaderView>
#include <QStyledItemDelegate>

namespace plumule::ui {

enum GrowingColumn
{
    TrayColumn,
    AgeColumn,
    DayColumn,
    YieldColumn,
    MiddleColumn,
    RangeColumn
};

// What the days and yields of all rows are drawn along.
class ForecastScale
{
public:
    ForecastScale(const std::vector<GrowingRow>& rows, Date today, const UnitText& units);

    // Across a cell, in pixels; the middle of that day.
    [[nodiscard]] double placeOf(Date day, const QRectF& cell) const;
    [[nodiscard]] double placeOf(double mass, const QRectF& cell) const; // in shown units
    [[nodiscard]] double dayWide(const QRectF& cell) const;

    [[nodiscard]] Date today() const { return m_today; }
    [[nodiscard]] int days() const { return m_days; }
    [[nodiscard]] Date firstDay() const { return m_first; }
    [[nodiscard]] std::vector<double> masses() const; // where lines stand
    [[nodiscard]] const UnitText& units() const { return m_units; }

private:
    Date m_today;
    Date m_first;
    int m_days = 1;
    double m_low = 0;
    double m_high = 1;
    double m_step = 1;
    UnitText m_units;
};

// Draws the two columns of scales; the others as tables draw them.
class ScaleDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    ScaleDelegate(const RowsModel<GrowingRow>& model, const std::unique_ptr<ForecastScale>& scale,
                  QObject* parent);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

private:
    void paintDay(QPainter& painter, const QRectF& cell, const GrowingRow& row) const;
    void paintYield(QPainter& painter, const QRectF& cell, const GrowingRow& row) const;

    const RowsModel<GrowingRow>& m_model;
    const std::unique_ptr<ForecastScale>& m_scale;
};

// The scales' numbers stand in the head of their columns.
class ScaleHeader : public QHeaderView
{
    Q_OBJECT

public:
    ScaleHeader(const std::unique_ptr<ForecastScale>& scale, QWidget* parent);

    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& cell, int section) const override;

private:
    void paintDays(QPainter& painter, const QRectF& cell) const;
    void paintMasses(QPainter& painter, const QRectF& cell) const;

    const std::unique_ptr<ForecastScale>& m_scale;
};

} // namespace plumule::ui
