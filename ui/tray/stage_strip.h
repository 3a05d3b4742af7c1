#pragma once

#include "core/tray/stage_plan.h"

#include <QWidget>

namespace plumule::ui {

// A tray's stages as two bars over the days: what was planned at sowing above, what came of it
// below, with the part that is still to come paler.
class StageStrip : public QWidget
{
    Q_OBJECT

public:
    explicit StageStrip(QWidget* parent = nullptr);

    // `ended`: when the tray was harvested or discarded.
    void show(const StagePlan& plan, Moment sown, std::optional<Moment> ended, Moment now);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintBar(QPainter& painter, const QRectF& bar, bool isPlan) const;
    void paintDays(QPainter& painter, const QRectF& area) const;
    [[nodiscard]] double placeOf(Moment moment, const QRectF& area) const;
    [[nodiscard]] Moment first() const;
    [[nodiscard]] Moment last() const;

    StagePlan m_plan;
    Moment m_sown;
    std::optional<Moment> m_ended;
    Moment m_now;
};

// The colour of a stage in strips.
[[nodiscard]] QColor stageColour(Stage stage);

} // namespace plumule::ui
