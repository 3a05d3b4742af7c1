#pragma once

#include <QWidget>

#include <vector>

namespace plumule::ui {

// A dot a promise, the oldest at the left: filled where it was kept, hollow where it was short.
class KeptDots : public QWidget
{
    Q_OBJECT

public:
    explicit KeptDots(QWidget* parent = nullptr);

    void show(std::vector<bool> kept);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::vector<bool> m_kept;
};

} // namespace plumule::ui
