#pragma once

#include "core/harvest/expected_range.h"
#include "core/harvest/scale_text.h"

#include <QWidget>

class QPainter;

namespace plumule::ui {

// The weights that an expected range is worked out from, a mark a tray; the range as a band; and
// the weight that stands on the scale as a line across.
class RangeStrip : public QWidget
{
    Q_OBJECT

public:
    explicit RangeStrip(QWidget* parent = nullptr);

    void show(const ExpectedRange& range, MassUnit unit);
    // None: nothing is on the scale.
    void setOnScale(std::optional<Mass> net);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    struct Mark
    {
        QPointF at;
        const PastWeight* weight = nullptr;
    };

    [[nodiscard]] QRectF field() const;
    [[nodiscard]] double xOf(Mass net) const;
    void setSpan();
    void describe();
    [[nodiscard]] std::vector<Mark> marks() const;
    void paintScale(QPainter& painter) const;
    void paintBand(QPainter& painter) const;
    void paintOnScale(QPainter& painter) const;

    ExpectedRange m_range;
    MassUnit m_unit = MassUnit::Gram;
    std::optional<Mass> m_onScale;
    double m_low = 0; // of the scale drawn, in the unit
    double m_high = 1;
    double m_step = 1;
};

} // namespace plumule::ui
