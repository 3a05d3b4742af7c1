#pragma once

#include "ui/watering/round_text.h"

#include <QFrame>

class QBoxLayout;
class QLabel;
class QPushButton;

namespace plumule::ui {

class KeyButton;

// Trays of one shelf of whose next stage, or harvest, the same is asked: what to look for, and
// Ready or Not yet for all of them, or one by one.
class DecisionRow : public QFrame
{
    Q_OBJECT

public:
    explicit DecisionRow(std::vector<StageDecision> decisions, QWidget* parent = nullptr);

    // The same trays again.
    void setDecisions(std::vector<StageDecision> decisions);
    [[nodiscard]] const StageDecision& decision() const { return m_decisions.front(); }
    [[nodiscard]] std::vector<TrayId> trays() const;
    [[nodiscard]] bool isAbout(TrayId tray) const;
    // "RC083–086".
    [[nodiscard]] QString codes() const;
    [[nodiscard]] QString readyText() const;
    // Shows the letters on the buttons of the one that they would press.
    void setKeysShown(bool isShown);

Q_SIGNALS:
    void readyAsked();
    void notYetAsked();
    void oneByOneAsked();
    void stepAsked(int step);
    void skipAsked(); // to the next thing that is open
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

    std::vector<StageDecision> m_decisions;
    QBoxLayout* m_line = nullptr;
    QLabel* m_cue = nullptr;
    QLabel* m_about = nullptr;
    QPushButton* m_oneByOne = nullptr; // only of several
    KeyButton* m_ready = nullptr;
    KeyButton* m_notYet = nullptr;
};

} // namespace plumule::ui
