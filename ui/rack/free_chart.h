#pragma once

#include "core/rack/free_places.h"

#include <QWidget>

namespace plumule::ui {

// A bar an evening: places that are free, and above them, hatched, those that planned sowings take.
class FreeChart : public QWidget
{
    Q_OBJECT

public:
    explicit FreeChart(QWidget* parent = nullptr);

    void show(const std::vector<FreeEvening>& evenings, int places);
    // "Sat 28 Nov: 10 free", as the pointer and a screen reader are told.
    [[nodiscard]] static QString wordsOf(const FreeEvening& evening);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QRectF plot() const;
    [[nodiscard]] QRectF slot(std::size_t evening) const;
    void paintScale(QPainter& painter) const;
    void paintBar(QPainter& painter, std::size_t evening) const;
    void paintDay(QPainter& painter, std::size_t evening) const;

    std::vector<FreeEvening> m_evenings;
    int m_places = 0;
};

} // namespace plumule::ui
