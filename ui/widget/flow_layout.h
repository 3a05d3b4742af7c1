#pragma once

#include <QLayout>

namespace plumule::ui {

// Puts widgets side by side and goes on in a new row where there is no more room, so that a row of
// controls never makes a page wider than its window.
class FlowLayout : public QLayout
{
    Q_OBJECT

public:
    explicit FlowLayout(QWidget* parent = nullptr);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] Qt::Orientations expandingDirections() const override;
    [[nodiscard]] bool hasHeightForWidth() const override;
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect& area) override;

private:
    // Places the items within the area, or only measures; returns the height needed.
    int arrange(const QRect& area, bool isMeasuring) const;

    QList<QLayoutItem*> m_items;
};

} // namespace plumule::ui
