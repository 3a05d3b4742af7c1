#pragma once

#include "ui/watering/decision_row.h"
#include "ui/watering/tray_row.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

class KeyButton;

// One shelf: what is to be decided on it, then its trays, with a button that ticks them all, or
// where all are watered as needed says that none needs it.
class ShelfCard : public Card
{
    Q_OBJECT

public:
    ShelfCard(const Round& round, const ShelfGroup& shelf, const RowFrame& frame,
              QWidget* parent = nullptr);

    // Shows the same trays again.
    void setShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame);
    [[nodiscard]] const std::vector<TrayRow*>& rows() const { return m_rows; }
    [[nodiscard]] const std::vector<DecisionRow*>& decisions() const { return m_decisions; }
    // What the button answers for: trays to tick, else those that may need nothing.
    [[nodiscard]] std::vector<TrayId> openTrays() const;
    // Whether openTrays() are those that may need nothing.
    [[nodiscard]] bool isAsNeeded() const;
    // Words the button by what stands in the rows.
    void showOpen();
    // Shows the letter on its button: its shelf would be ticked.
    void setCurrent(bool isCurrent);
    // Under that row.
    void insertUnder(const TrayRow* row, QWidget* panel);

Q_SIGNALS:
    void shelfAsked();

private:
    void addRows(const Round& round, const ShelfGroup& shelf, const RowFrame& frame);

    QLabel* m_work = nullptr;
    KeyButton* m_tickAll = nullptr;
    std::vector<TrayRow*> m_rows;
    std::vector<DecisionRow*> m_decisions;
};

} // namespace plumule::ui
