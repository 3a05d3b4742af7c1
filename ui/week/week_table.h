#pragma once

#include "core/week/week.h"
#include "ui/text/text.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace plumule::ui {

// Fourteen days, a row each: a column a task where there is room, else what is to be done below one
// another.
class WeekTable : public QWidget
{
    Q_OBJECT

public:
    explicit WeekTable(QWidget* parent = nullptr);

    void show(const Week& week, const UnitText& units);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    void buildWide();
    void buildNarrow();
    void addHeader();
    void addWideDay(const WeekDay& day, int row);
    void addTotals(int row);
    void put(QLabel* words, int row, int column, Qt::Alignment side = Qt::AlignLeft);
    [[nodiscard]] bool hasExpected() const;
    [[nodiscard]] QLabel* dayLabel(const WeekDay& day) const;
    [[nodiscard]] QRect rowRect(int row) const;
    void paintBar(QPainter& painter, const ExpectedGrams& grams, const QRect& cell) const;

    QGridLayout* m_grid = nullptr;
    std::vector<QLabel*> m_firsts; // the first of each row
    QLabel* m_bar = nullptr;       // above the bars
    Week m_week;
    UnitText m_units;
    bool m_isWide = true;
};

} // namespace plumule::ui
