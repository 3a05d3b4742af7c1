#pragma once

#include "core/chart/chart_spec.h"

#include <QWidget>

namespace plumule::ui {

// A chart's first line without axes, as high as a line of text: for a row of a table. Without a
// line it is dashed.
class StepLine : public QWidget
{
    Q_OBJECT

public:
    explicit StepLine(QWidget* parent = nullptr);

    void draw(const ChartSpec& spec);
    [[nodiscard]] const ChartSpec& spec() const { return m_spec; }
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    ChartSpec m_spec;
};

} // namespace plumule::ui
