#pragma once

#include "ui/watering/tray_panel.h"

#include <QFrame>

class QBoxLayout;
class QLabel;

namespace plumule::ui {

class DecisionRow;
class FlowLayout;
class KeyButton;
class MarkerDot;
class TrayRow;

// The tray or the decision in hand, and what may be done with it at a touch. It stands at the foot
// of the round whether its row is in view or not.
class HandBar : public QFrame
{
    Q_OBJECT

public:
    explicit HandBar(QWidget* parent = nullptr);

    enum class TakenBy
    {
        Hand,
        Label // it was scanned
    };
    // A row and the decision about its tray, or one of them, or none.
    void show(const TrayRow* row, const DecisionRow* decision, TakenBy takenBy);

Q_SIGNALS:
    void tickAsked();
    void notNeededAsked();
    void readyAsked();
    void notYetAsked();
    void partAsked(plumule::ui::TrayPanel::Part part);
    void photoAsked();
    void putDownAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] KeyButton* add(const QString& text, const QString& key, const char* objectName,
                                 const char* role = "");
    void buildButtons();
    void wordRow(const TrayRow& row);
    void arrange();

    QBoxLayout* m_row = nullptr;
    FlowLayout* m_buttons = nullptr;
    QLabel* m_state = nullptr;
    QLabel* m_code = nullptr;
    MarkerDot* m_marker = nullptr;
    QLabel* m_medium = nullptr;
    QLabel* m_where = nullptr;
    KeyButton* m_tick = nullptr;
    KeyButton* m_notNeeded = nullptr;
    KeyButton* m_ready = nullptr;
    KeyButton* m_notYet = nullptr;
    KeyButton* m_note = nullptr;
    KeyButton* m_height = nullptr;
    KeyButton* m_water = nullptr;
    KeyButton* m_photo = nullptr;
    KeyButton* m_putDown = nullptr;
};

} // namespace plumule::ui
