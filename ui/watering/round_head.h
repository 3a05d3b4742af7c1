#pragma once

#include "core/watering/round.h"
#include "core/watering/round_key.h"

#include <QWidget>

class QBoxLayout;
class QLabel;
class QProgressBar;
class QPushButton;

namespace plumule::ui {

class FlowLayout;
class KeyButton;
class Segmented;

// The page's head: which round it is, how far it has come, and what is done with it as a whole.
class RoundHead : public QWidget
{
    Q_OBJECT

public:
    explicit RoundHead(QWidget* parent = nullptr);

    // `secondsATray` is the labour of one watering; none or 0: the time left is not told.
    void showRound(const Round& round, RoundKey present, std::optional<int> secondsATray);
    // `undoes` says what Undo would take back; empty: nothing.
    void setUndo(const QString& undoes);
    [[nodiscard]] QWidget* printButton() const;
    // After the others; the head owns it.
    void addControl(QWidget* control);
    // As if it were pressed.
    void toggleDecisions();
    // Not decisions alone.
    void showAll();

Q_SIGNALS:
    void slotChosen(plumule::Slot slot);
    void dayStepped(int days);
    void presentAsked(); // back to the round of now
    void printAsked();
    void undoAsked();
    void decisionsAlone(bool isAlone);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] QWidget* buildTitle();
    [[nodiscard]] QWidget* buildControls();

    QBoxLayout* m_row = nullptr;
    FlowLayout* m_controls = nullptr;
    QLabel* m_title = nullptr;
    QLabel* m_subtitle = nullptr;
    QPushButton* m_before = nullptr;
    QPushButton* m_after = nullptr;
    QPushButton* m_present = nullptr;
    Segmented* m_slots = nullptr;
    KeyButton* m_decisions = nullptr;
    KeyButton* m_print = nullptr;
    KeyButton* m_undo = nullptr;
    QProgressBar* m_progress = nullptr;
};

} // namespace plumule::ui
