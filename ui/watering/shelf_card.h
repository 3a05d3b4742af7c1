#pragma once

#include "ui/watering/tray_row.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

class KeyButton;

// The trays of one shelf, with a button that ticks them all.
class ShelfCard : public Card
{
    Q_OBJECT

public:
    ShelfCard(const Round& round, const ShelfGroup& shelf, const RowFrame& frame,
              QWidget* parent = nullptr);

    // Shows the same trays again.
    void setShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame);
    [[nodiscard]] const std::vector<TrayRow*>& rows() const { return m_rows; }
    [[nodiscard]] std::vector<TrayId> openTrays() const;
    // Shows the letter on its button: its shelf would be ticked.
    void setCurrent(bool isCurrent);
    // Under that row.
    void insertUnder(const TrayRow* row, QWidget* panel);

Q_SIGNALS:
    void shelfAsked();

private:
    QLabel* m_work = nullptr;
    KeyButton* m_tickAll = nullptr;
    std::vector<TrayRow*> m_rows;
};

} // namespace plumule::ui
