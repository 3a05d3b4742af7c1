#pragma once

#include "ui/widget/widgets.h"

class QGridLayout;

namespace plumule::ui {

class FlowLayout;
class KeyButton;
class RackView;

// What is carried: where it comes from and would land, what stands there, which light it leaves and
// gets, and what may be done.
class MoveCard : public Card
{
    Q_OBJECT

public:
    explicit MoveCard(QWidget* parent = nullptr);

    void show(const RackView& view);
    // Words and buttons beside each other, or below.
    void setBeside(bool isBeside);

Q_SIGNALS:
    void putAsked();
    void leaveAsked();
    void swapAsked();
    void takeOffAsked();

private:
    void buildButtons(FlowLayout& row);
    void addRow(const QString& name, const QString& value);
    void showCarried(const RackView& view);
    void showIdle(const RackView& view);

    QBoxLayout* m_row = nullptr;
    QLabel* m_codes = nullptr;
    QGridLayout* m_rows = nullptr;
    QLabel* m_note = nullptr;
    QWidget* m_buttons = nullptr;
    KeyButton* m_put = nullptr;
    KeyButton* m_leave = nullptr;
    KeyButton* m_swap = nullptr;
    KeyButton* m_takeOff = nullptr;
};

} // namespace plumule::ui
