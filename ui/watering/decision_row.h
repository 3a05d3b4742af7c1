#pragma once

#include "ui/watering/round_text.h"

#include <QFrame>

class QBoxLayout;
class QLabel;

namespace plumule::ui {

class KeyButton;

// A tray whose next stage is due: what to look for, and Ready or Not yet.
class DecisionRow : public QFrame
{
    Q_OBJECT

public:
    explicit DecisionRow(const StageDecision& decision, QWidget* parent = nullptr);

    void setDecision(const StageDecision& decision);
    [[nodiscard]] const StageDecision& decision() const { return m_decision; }
    // Shows the letters on the buttons of the one that they would press.
    void setKeysShown(bool isShown);

Q_SIGNALS:
    void readyAsked();
    void notYetAsked();
    void stepAsked(int step);
    void focused();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void build();
    void word();

    StageDecision m_decision;
    QBoxLayout* m_line = nullptr;
    QWidget* m_names = nullptr;
    QLabel* m_code = nullptr;
    QLabel* m_variety = nullptr;
    QLabel* m_where = nullptr;
    QLabel* m_late = nullptr;
    QLabel* m_cue = nullptr;
    KeyButton* m_ready = nullptr;
    KeyButton* m_notYet = nullptr;
};

} // namespace plumule::ui
